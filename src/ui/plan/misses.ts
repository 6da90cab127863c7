/** Corners that nearly come to a point: where, by how much, and which way; what both the piece and its skin mark with a tail. */
import { nearMisses } from "../../core/check/findings-meets.ts";
import type { Solid } from "../../core/geometry/solid-types.ts";
import { addScaled, sub, type Vec3 } from "../../core/geometry/vec.ts";
import { toleranceOf } from "../../core/plan/solve.ts";
import type { SolvedPlan } from "../../core/plan/solved.ts";

/** A miss is too small to see at its size; the tail shows it so many times longer. */
const MISS_ENLARGED = 8;

export interface MissedCorner {
  /** One end of the short edge or bit of skin, on the unit sphere or inside it. */
  readonly at: Vec3;
  /** End of the tail: as far as the miss, enlarged. */
  readonly tail: Vec3;
  readonly mm: number;
  /** The facets that nearly meet, positions in the solid. */
  readonly facets: readonly number[];
}

export const missedCorners = (solved: SolvedPlan, solid: Solid): MissedCorner[] =>
  nearMisses({ solved, solid }, toleranceOf(solved.plan)).map(({ from, to, mm, facets }) => ({
    at: from,
    tail: addScaled(from, sub(to, from), MISS_ENLARGED),
    mm,
    facets,
  }));
