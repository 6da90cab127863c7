/** The loops of a film: from where each picture is seen, and how much of the work is done in it. Each ends one step before it began. */

export const LOOPS = ["turn", "walk", "work"] as const;
export type Loop = (typeof LOOPS)[number];

export interface LoopPicture {
  /** Counter-clockwise about the vertical seen from above, degrees; 0 is the front. */
  readonly turnDeg: number;
  /** Above the level, degrees. */
  readonly leanDeg: number;
  /** Tiers cut so far, in cutting order; null where the piece is finished. */
  readonly cut: number | null;
}

const LEAN_DEG = 15;
/** So far to either side one walks past. */
const WALK_DEG = 40;
/** Uncut, each tier, each as long, and for the last third the finished piece. Whole numbers: no rounding puts a picture elsewhere. */
const cutIn = (k: number, pictures: number, tiers: number): number | null =>
  3 * k >= 2 * pictures ? null : Math.floor((3 * k * (tiers + 1)) / (2 * pictures));

/**
 * @param pictures how many, at least 1
 * @param tiers of the plan
 */
export function loopPictures(loop: Loop, pictures: number, tiers: number): readonly LoopPicture[] {
  return Array.from({ length: pictures }, (_, k) => {
    const at = k / pictures;
    const turnDeg = loop === "walk" ? WALK_DEG * Math.sin(2 * Math.PI * at) : 360 * at;
    return { turnDeg, leanDeg: LEAN_DEG, cut: loop === "work" ? cutIn(k, pictures, tiers) : null };
  });
}
