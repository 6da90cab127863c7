/**
 * The piece while it is being cut: every facet stands at a depth of its own, 0 for those not yet begun. Answers how wide
 * a facet is then and how much glass one more pass takes, exactly. Depths in mm, indices as in `SolvedPlan.facets`.
 */
import { gapBetween as circleGap } from "../geometry/circles.ts";
import type { Plane } from "../geometry/plane.ts";
import { extentOf, type Slice, sliceFacet } from "../geometry/slice.ts";
import { cutBall } from "../geometry/solid.ts";
import type { SolvedPlan, SolvedTier } from "../plan/solved.ts";

/** Depth of every facet, mm; 0 = uncut. */
export type Depths = readonly number[];

export const UNCUT = 0;

export const tierFacets = (tier: SolvedTier): readonly number[] =>
  Array.from({ length: tier.count }, (_, i) => tier.first + i);

/** All facets of tiers before this one final, the rest uncut. */
export function depthsBefore(solved: SolvedPlan, tierIndex: number): number[] {
  const before = solved.tiers.slice(0, tierIndex);
  const depths = solved.facets.map(() => UNCUT);
  for (const tier of before) for (const k of tierFacets(tier)) depths[k] = tier.depthMm;
  return depths;
}

/** Every facet at its final depth. */
export const finalDepths = (solved: SolvedPlan): number[] =>
  solved.facets.map((facet) => solved.tiers[facet.tierIndex].depthMm);

/** The plane of facet k at a depth, on the unit sphere. */
export const planeAtDepth = (solved: SolvedPlan, k: number, depthMm: number): Plane => ({
  n: solved.planes[k].n,
  h: 1 - depthMm / solved.radiusMm,
});

export const planesAt = (solved: SolvedPlan, depths: Depths): Plane[] =>
  depths.map((depthMm, k) => planeAtDepth(solved, k, depthMm));

/** Outline of facet k with the others at these depths, on the unit sphere. */
export const sliceAt = (solved: SolvedPlan, depths: Depths, k: number): Slice =>
  sliceFacet(k, planesAt(solved, depths), (j) => depths[j] <= UNCUT);

export interface FacetSize {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Extent along the meridian from the facet's foot, [away from its own pole, towards it], mm. */
  readonly polewardMm: readonly [number, number];
}

/** Size of facet k with the others at these depths; zeros when it is uncut or swallowed. */
export function sizeAt(solved: SolvedPlan, depths: Depths, k: number): FacetSize {
  const [xMin, xMax, yMin, yMax] = extentOf(sliceAt(solved, depths, k)).map((x) => x * solved.radiusMm);
  const isFront = solved.plan.tiers[solved.facets[k].tierIndex].side === "front";
  return {
    widthMm: xMax - xMin,
    heightMm: yMax - yMin,
    polewardMm: isFront ? [yMin, yMax] : [-yMax, -yMin],
  };
}

/** Whether the caps of two planes overlap: otherwise neither changes what the other takes. */
const overlaps = (a: Plane, b: Plane): boolean => circleGap(a, b) < 0;

/**
 * Volume that deepening facet k from its depth in `depths` to `depthMm` takes, mm3; 0 when it is not deeper. Only planes whose caps
 * overlap the facet's new cap can have a part in it, so only those are cut.
 */
export function removedBy(solved: SolvedPlan, depths: Depths, k: number, depthMm: number): number {
  if (depthMm <= depths[k]) return 0;
  const deeper = planeAtDepth(solved, k, depthMm);
  const others = depths.flatMap((depth, j) => {
    if (j === k || depth <= UNCUT) return [];
    const plane = planeAtDepth(solved, j, depth);
    return overlaps(plane, deeper) ? [plane] : [];
  });
  const before = depths[k] > UNCUT ? [planeAtDepth(solved, k, depths[k])] : [];
  const volume = cutBall([...others, ...before]).volume - cutBall([...others, deeper]).volume;
  return Math.max(0, volume) * solved.radiusMm ** 3;
}

/** Neighbours within a tier, as positions 0 .. n-1: n pairs for n >= 3, one for 2, none for 1. */
export function neighbourPairs(count: number): readonly (readonly [number, number])[] {
  if (count < 2) return [];
  if (count === 2) return [[0, 1]];
  return Array.from({ length: count }, (_, i) => [i, (i + 1) % count] as const);
}

/** Signed distance along the surface between the uncut circles of facets a and b at these depths, mm. */
export const gapBetween = (
  solved: SolvedPlan,
  a: number,
  b: number,
  depthA: number,
  depthB: number,
): number => solved.radiusMm * circleGap(planeAtDepth(solved, a, depthA), planeAtDepth(solved, b, depthB));

/** The widest gap between neighbours of a tier at a common depth; null for a facet alone. */
export function widestGap(solved: SolvedPlan, tier: SolvedTier, depthMm: number): number | null {
  const gaps = neighbourPairs(tier.count).map(([a, b]) =>
    gapBetween(solved, tier.first + a, tier.first + b, depthMm, depthMm),
  );
  return gaps.length ? Math.max(...gaps) : null;
}
