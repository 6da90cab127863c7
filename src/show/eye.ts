/** From where a customer looks: round the piece about the vertical, beginning at its front, and somewhat from above or below. */
import { DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, type View } from "../render/view.ts";

export interface Eye {
  /** Counter-clockwise seen from above, degrees, 0 .. 360. */
  readonly turnDeg: number;
  /** Above the level, degrees. */
  readonly leanDeg: number;
}

/** Beyond that the picture would turn over. */
const MOST_LEAN = 85;
const RAD = Math.PI / 180;

export const turned = (eye: Eye, deg: number): Eye => ({
  ...eye,
  turnDeg: (((eye.turnDeg + deg) % 360) + 360) % 360,
});

export const leant = (eye: Eye, deg: number): Eye => ({
  ...eye,
  leanDeg: Math.min(MOST_LEAN, Math.max(-MOST_LEAN, eye.leanDeg + deg)),
});

/** Field in which the piece has the same room to both sides of a tall picture as it has above and below it in a wide one. */
const fieldOf = (aspect: number): number =>
  aspect >= 1 ? DEFAULT_FIELD_DEG : (2 * Math.atan(Math.tan((DEFAULT_FIELD_DEG * RAD) / 2) / aspect)) / RAD;

/** +y is up; the turn begins at +z and goes towards +x. @param aspect width / height of the picture */
export function viewOfEye({ turnDeg, leanDeg }: Eye, aspect = 1): View {
  const [st, ct] = [Math.sin(turnDeg * RAD), Math.cos(turnDeg * RAD)];
  const [sl, cl] = [Math.sin(leanDeg * RAD), Math.cos(leanDeg * RAD)];
  const back = [st * cl, sl, ct * cl] as const;
  return {
    eye: [back[0] * DEFAULT_DISTANCE, back[1] * DEFAULT_DISTANCE, back[2] * DEFAULT_DISTANCE],
    right: [ct, 0, -st],
    up: [-st * sl, cl, -ct * sl],
    back,
    fieldDeg: fieldOf(aspect),
  };
}
