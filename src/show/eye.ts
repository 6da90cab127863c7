/** From where a customer looks: round the piece about the vertical, beginning at its front, and somewhat from above or below. */
import { addScaled, scale } from "../core/geometry/vec.ts";
import type { Tabletop } from "../core/optics/tabletop.ts";
import { SEEN_ON_TABLE } from "../core/show/show-piece.ts";
import { DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, type View } from "../render/view.ts";

export interface Eye {
  /** Counter-clockwise seen from above, degrees, 0 .. 360. */
  readonly turnDeg: number;
  /** Above the level, degrees. */
  readonly leanDeg: number;
}

/** Beyond that the picture would turn over; over a table the eye stays above its level. Degrees. */
const MOST_LEAN = 85;
const LEAST_LEAN_ON_TABLE = 6;
const RAD = Math.PI / 180;

export const turned = (eye: Eye, deg: number): Eye => ({
  ...eye,
  turnDeg: (((eye.turnDeg + deg) % 360) + 360) % 360,
});

export const leant = (eye: Eye, deg: number, onTable = false): Eye => ({
  ...eye,
  leanDeg: Math.min(MOST_LEAN, Math.max(onTable ? LEAST_LEAN_ON_TABLE : -MOST_LEAN, eye.leanDeg + deg)),
});

/** Where the turn begins, to its right, and up: right-handed as (across, up, along). */
export type Level = Pick<Tabletop, "up" | "across" | "along">;

/** In the hand. */
const IN_HAND: Level = { up: [0, 1, 0], across: [1, 0, 0], along: [0, 0, 1] };

/** Field in which the piece has the same room to both sides of a tall picture as it has above and below it in a wide one. */
const fieldOf = (aspect: number, room: number): number =>
  (2 * Math.atan((room * Math.tan((DEFAULT_FIELD_DEG * RAD) / 2)) / Math.min(1, aspect))) / RAD;

/**
 * The turn begins at +z and goes towards +x with +y up, or as the table has them.
 * @param aspect width / height of the picture
 * @param table of the piece that lies on one
 */
export function viewOfEye({ turnDeg, leanDeg }: Eye, aspect = 1, table: Level | null = null): View {
  const { up, across, along } = table ?? IN_HAND;
  const [st, ct] = [Math.sin(turnDeg * RAD), Math.cos(turnDeg * RAD)];
  const [sl, cl] = [Math.sin(leanDeg * RAD), Math.cos(leanDeg * RAD)];
  const level = addScaled(scale(along, ct), across, st);
  const back = addScaled(scale(level, cl), up, sl);
  const upwards = addScaled(scale(up, cl), level, -sl);
  return {
    eye: addScaled(scale(back, DEFAULT_DISTANCE), upwards, table ? SEEN_ON_TABLE.belowMiddle : 0),
    right: addScaled(scale(across, ct), along, -st),
    up: upwards,
    back,
    fieldDeg: fieldOf(aspect, table ? SEEN_ON_TABLE.room : 1),
  };
}
