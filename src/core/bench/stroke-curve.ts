/** Width against strokes for one facet in one pass: the plot that shows how depth grows ever slower. */
import type { SolvedPlan } from "../plan/solved.ts";
import { type Depths, removedBy, sizeAt } from "./half-cut.ts";
import { type Removal, strokesFor } from "./strokes.ts";

export interface CurvePoint {
  readonly strokes: number;
  readonly depthMm: number;
  readonly widthMm: number;
}

/**
 * Points from the facet's depth in `depths` to `depthMm`, both ends included.
 * @param points at least 2; evenly spaced in the square of depth, so evenly in strokes for a first cut
 */
export function strokeCurve(
  solved: SolvedPlan,
  depths: Depths,
  k: number,
  depthMm: number,
  removal: Removal,
  contactRadiusMm: number | null,
  points: number,
): readonly CurvePoint[] {
  const from = depths[k];
  return Array.from({ length: points }, (_, i) => {
    const at = Math.sqrt(from ** 2 + ((depthMm ** 2 - from ** 2) * i) / (points - 1));
    const volume = removedBy(solved, depths, k, at);
    return {
      strokes: strokesFor(volume, removal, contactRadiusMm),
      depthMm: at,
      widthMm: at > 0 ? sizeAt(solved, depths.with(k, at), k).widthMm : 0,
    };
  });
}
