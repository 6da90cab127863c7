/** What meets in a plan, and what of it another plan of the same tiers keeps: judged by the exact solid. */
import { meetCorners } from "../check/corners.ts";
import { meetingPairs } from "../check/pairs.ts";
import { cutBall } from "../geometry/solid.ts";
import type { Plan } from "../plan/document.ts";
import { solvePlan, toleranceOf } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";

/** Facets by their positions in plan order. */
export interface Meets {
  readonly solved: SolvedPlan;
  /** Pairs that share an edge or touch. */
  readonly pairs: readonly { readonly a: number; readonly b: number; readonly edgeMm: number }[];
  /** Facets of each corner, ascending. */
  readonly corners: readonly (readonly number[])[];
  readonly swallowed: readonly boolean[];
}

/** One thing that met: the facets of a pair or of a corner, or one facet that anything was left of. */
export type Item = readonly number[];

/** Solves, cuts and lists. @throws what the exact solid throws where it can't reckon the cut */
export function meetsOf(plan: Plan, solved: SolvedPlan = solvePlan(plan)): Meets {
  const solid = cutBall(solved.planes);
  const R = solved.radiusMm;
  const tolerance = toleranceOf(plan) / R;
  return {
    solved,
    pairs: meetingPairs(solved, solid, tolerance)
      .filter(({ state }) => state !== "gap")
      .map(({ a, b, edge }) => ({ a, b, edgeMm: edge * R })),
    corners: meetCorners(solid.vertices, solved.planes, tolerance).map(({ facets }) => facets),
    swallowed: solid.facets.map((facet) => facet.swallowed),
  };
}

/**
 * Everything that is to be kept: pairs, corners, and facets. A facet that is in a pair is kept with it, so only those by
 * themselves are listed.
 */
export function itemsOf({ pairs, corners, swallowed }: Meets): Item[] {
  const paired = new Set(pairs.flatMap(({ a, b }) => [a, b]));
  const alone = swallowed.flatMap((gone, k) => (gone || paired.has(k) ? [] : [[k]]));
  return [...pairs.map(({ a, b }) => [a, b]), ...corners, ...alone];
}

/**
 * What of `items` is not there. A corner is kept where all its planes come to one corner, be it with others.
 */
export function lostOf(items: readonly Item[], now: Meets): Item[] {
  const pairs = new Set(now.pairs.map(({ a, b }) => `${a} ${b}`));
  const cornersAt = new Map<number, Set<number>[]>();
  for (const facets of now.corners) {
    const corner = new Set(facets);
    for (const k of facets) cornersAt.set(k, [...(cornersAt.get(k) ?? []), corner]);
  }
  const isKept = (item: Item): boolean => {
    if (item.length === 1) return !now.swallowed[item[0]];
    if (item.length === 2) return pairs.has(`${item[0]} ${item[1]}`);
    return (cornersAt.get(item[0]) ?? []).some((corner) => item.every((k) => corner.has(k)));
  };
  return items.filter((item) => !isKept(item));
}
