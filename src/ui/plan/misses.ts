/** Corners that nearly come to a point: where, by how much, and which way; what both the piece and its skin mark with a tail. */
import { NEAR_MISS_TOLERANCES } from "../../core/check/findings-meets.ts";
import type { Solid } from "../../core/geometry/solid-types.ts";
import { addScaled, sub, type Vec3 } from "../../core/geometry/vec.ts";

/** A miss is too small to see at its size; the tail shows it so many times longer. */
const MISS_ENLARGED = 8;

export interface MissedCorner {
  /** One end of the short edge, on the unit sphere or inside it. */
  readonly at: Vec3;
  /** End of the tail: as far as the miss, enlarged. */
  readonly tail: Vec3;
  readonly mm: number;
  /** The two facets that share the edge, positions in the solid. */
  readonly facets: readonly [number, number];
}

/** Shared edges longer than the tolerance and short enough to read as a corner that was missed. */
export function missedCorners(solid: Solid, radiusMm: number, toleranceMm: number): MissedCorner[] {
  return solid.edges.flatMap(({ a, b, from, to, length }): MissedCorner[] => {
    const mm = length * radiusMm;
    if (mm <= toleranceMm || mm > NEAR_MISS_TOLERANCES * toleranceMm) return [];
    return [{ at: from, tail: addScaled(from, sub(to, from), MISS_ENLARGED), mm, facets: [a, b] }];
  });
}
