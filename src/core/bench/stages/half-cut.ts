/**
 * The piece while it is being cut: every facet stands at a depth of its own, 0 for those not yet begun. Answers how wide
 * a facet is then and how much glass one more pass takes, exactly. Depths in mm, indices as in `SolvedPlan.facets`.
 */
import { gapBetween as circleGap } from "../../geometry/circles.ts";
import type { Plane } from "../../geometry/plane.ts";
import { extentOf, sliceFacet } from "../../geometry/slice.ts";
import { dot } from "../../geometry/vec.ts";
import type { SolvedPlan, SolvedTier } from "../../plan/solved.ts";
import { removedVolume } from "./removed-volume.ts";

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

/** The plane of facet k at a depth, on the unit sphere. */
export const planeAtDepth = (solved: SolvedPlan, k: number, depthMm: number): Plane => ({
  n: solved.planes[k].n,
  h: 1 - depthMm / solved.radiusMm,
});

export const planesAt = (solved: SolvedPlan, depths: Depths): Plane[] =>
  depths.map((depthMm, k) => planeAtDepth(solved, k, depthMm));

/**
 * Whether the caps that two planes take overlap; if not, neither changes the other's outline. delta < rho_a + rho_b, by cosines:
 * n_a.n_b > h_a h_b - sqrt((1 - h_a^2)(1 - h_b^2)); always when the caps together are more than the sphere.
 */
export function overlaps(a: Plane, b: Plane): boolean {
  if (a.h + b.h <= 0) return true;
  if (a.h >= 1 || b.h >= 1) return false;
  return dot(a.n, b.n) > a.h * b.h - Math.sqrt((1 - a.h * a.h) * (1 - b.h * b.h));
}

/** One facet with the planes that bear on it, in plan order: all that its size and what it loses depend on. */
interface Situation {
  readonly planes: readonly Plane[];
  /** Position of the facet itself in `planes`. */
  readonly own: number;
  /** Equal for situations that are the same but for a turn of the whole. */
  readonly key: string;
}

/** Two situations that agree to this share of the radius are the same. */
const KEY_GRAIN = 1e9;
/** Added zero: there is no -0 among keys. */
const keyPart = (x: number): string => `${Math.round(x * KEY_GRAIN) + 0}`;

function situationOf(solved: SolvedPlan, depths: Depths, k: number, depthMm: number): Situation {
  const plane = planeAtDepth(solved, k, depthMm);
  const { n, across, meridian } = solved.facets[k].frame;
  const planes: Plane[] = [];
  const parts: string[] = [keyPart(plane.h)];
  let own = 0;
  depths.forEach((depth, j) => {
    if (j === k) {
      own = planes.length;
      planes.push(plane);
      parts.push("own");
      return;
    }
    if (depth <= UNCUT) return;
    const other = planeAtDepth(solved, j, depth);
    if (!overlaps(plane, other)) return;
    planes.push(other);
    const seen = [dot(other.n, n), dot(other.n, across), dot(other.n, meridian), other.h];
    parts.push(seen.map(keyPart).join(" "));
  });
  return { planes, own, key: parts.join(";") };
}

/** Rings repeat themselves: what was found for one facet holds for all that stand alike. One table a solved plan. */
const known = new WeakMap<SolvedPlan, Map<string, unknown>>();

function once<T>(solved: SolvedPlan, key: string, find: () => T): T {
  const table = known.get(solved) ?? new Map<string, unknown>();
  known.set(solved, table);
  if (!table.has(key)) table.set(key, find());
  return table.get(key) as T;
}

export interface FacetSize {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Extent along the meridian from the facet's foot, [away from its own pole, towards it], mm. */
  readonly polewardMm: readonly [number, number];
}

/** Size of facet k with the others at these depths; zeros when it is uncut or swallowed. */
export function sizeAt(solved: SolvedPlan, depths: Depths, k: number): FacetSize {
  const isFront = solved.plan.tiers[solved.facets[k].tierIndex].side === "front";
  const { planes, own, key } = situationOf(solved, depths, k, depths[k]);
  return once(solved, `size ${isFront} ${key}`, () => {
    const [xMin, xMax, yMin, yMax] = extentOf(sliceFacet(own, planes)).map((x) => x * solved.radiusMm);
    return {
      widthMm: xMax - xMin,
      heightMm: yMax - yMin,
      polewardMm: isFront ? [yMin, yMax] : [-yMax, -yMin],
    };
  });
}

/**
 * Volume that deepening facet k from its depth in `depths` to `depthMm` takes, mm3; 0 when it is not deeper. Only planes
 * whose caps overlap the facet's new cap can have a part in it, so only those are asked.
 */
export function removedBy(solved: SolvedPlan, depths: Depths, k: number, depthMm: number): number {
  if (depthMm <= depths[k]) return 0;
  const { planes, own, key } = situationOf(solved, depths, k, depthMm);
  return once(solved, `removed ${keyPart(depths[k])} ${key}`, () => {
    const before = depths[k] > UNCUT ? planeAtDepth(solved, k, depths[k]) : null;
    return removedVolume(planes, own, before) * solved.radiusMm ** 3;
  });
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
