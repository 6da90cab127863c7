/** How the piece lies on a table, and from where it is looked at then. The piece's own axes. */
import { cosDeg, sinDeg } from "../geometry/plane.ts";
import { addScaled, scale, type Vec3 } from "../geometry/vec.ts";
import { cameraFrom } from "./camera.ts";
import { tableFrame } from "./tabletop.ts";

export interface Rest {
  /** Unit direction in which the piece's lowest point touches the table. */
  readonly down: Vec3;
  /** Azimuth and elevation of the usual view, degrees. */
  readonly from: readonly [number, number];
  /** On a small ring, see `ring.ts`, in place of the table itself. */
  readonly onRing?: boolean;
}

/** The usual view of a piece on a facet: so far round from where its front looks, and so far above the table. Degrees. */
const [ROUND, ABOVE] = [30, 25];

/** On a facet, by its outward normal. */
export function restOnFacet(n: Vec3): Rest {
  const { up, across, along } = tableFrame(scale(n, -1));
  const inFrame = cameraFrom(ROUND, ABOVE, 1, 90).at;
  const level = addScaled(scale(along, inFrame[0]), across, inFrame[1]);
  const [x, y, z] = addScaled(level, up, inFrame[2]);
  const degrees = 180 / Math.PI;
  return { down: n, from: [Math.atan2(y, x) * degrees, Math.atan2(z, Math.hypot(x, y)) * degrees] };
}

/** A ring holds a piece at any lean: its front looks up by so much, as towards somebody who sits before it. Degrees. */
const FRONT_RAISED = 30;

export const RESTS = {
  side: { down: [0, -1, 0], from: [25, 60] },
  back: { down: [0, 0, -1], from: [30, 25] },
  front: { down: [0, 0, 1], from: [30, -25] },
  ring: { ...restOnFacet([0, -cosDeg(FRONT_RAISED), -sinDeg(FRONT_RAISED)]), onRing: true },
} as const satisfies Record<string, Rest>;
