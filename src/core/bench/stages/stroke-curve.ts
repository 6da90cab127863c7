/** Width against strokes for one facet in one pass: the plot that shows how depth grows ever slower. */
import type { SolvedPlan } from "../../plan/solved.ts";
import { type Depths, removedBy, sizeAt } from "./half-cut.ts";
import { type Removal, strokesFor } from "./strokes.ts";

export interface CurvePoint {
  readonly strokes: number;
  readonly depthMm: number;
  readonly widthMm: number;
}

/** Crowds the points towards the start. */
const EARLY = 3;

/**
 * Points from the facet's depth in `depths` to `depthMm`, both ends included.
 * @param points at least 2; closer at the start, where width grows fastest (strokes go with the fourth power of width)
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
    const at = Math.sqrt(from ** 2 + (depthMm ** 2 - from ** 2) * (i / (points - 1)) ** EARLY);
    const volume = removedBy(solved, depths, k, at);
    return {
      strokes: strokesFor(volume, removal, contactRadiusMm),
      depthMm: at,
      widthMm: at > 0 ? sizeAt(solved, depths.with(k, at), k).widthMm : 0,
    };
  });
}
