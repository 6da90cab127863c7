/**
 * The tiers of a plan tried at other arm angles, quickly: depths by their rules, and by how much each thing that is to be
 * kept is kept. Tiers are cut in order, so what the first ones give is remembered while only later ones turn.
 */

import { gapBetween, isCovered, meetingPoint } from "../geometry/circles.ts";
import { unlessInexact } from "../geometry/inexact-cut.ts";
import { facetFrame, type Plane } from "../geometry/plane.ts";
import { dot, type Vec3 } from "../geometry/vec.ts";
import type { Plan } from "../plan/document.ts";
import type { Unmet } from "../plan/finding.ts";
import { depthByRule, RULES } from "../plan/rules/records.ts";
import { type Answer, neighbourPairs, type TierContext, type TierRange } from "../plan/rules/tier-context.ts";
import { toleranceOf } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import type { Item } from "./kept.ts";
import { cornerMargin, edgeBetween, pairMargin } from "./margins.ts";
import type { AlikeItems } from "./turns.ts";

/** The piece after one more tier. */
interface Cut {
  readonly angleDeg: number;
  readonly planes: readonly Plane[];
  readonly ranges: readonly TierRange[];
  readonly unmetMm: number | null;
}

export interface Margins {
  /**
   * For each item, then for each tier whose depth a rule finds, by how much it is kept, mm, below 0 where it isn't; null where
   * its tiers can't be cut.
   */
  readonly kept: readonly (number | null)[];
  /** The first tier whose rule can't be met, and by how much it is missed, mm (below 0). */
  readonly broken: { readonly tier: number; readonly byMm: number } | null;
  /** Kept edges, all together, mm. */
  readonly edgesMm: number;
}

export interface Trial {
  /** @param angles one for each tier */
  at(angles: readonly number[]): Margins;
  /** Tiers solved so far, rules that cost much counted by what they cost: the same on every machine. */
  readonly work: number;
}

/** Nearer to nothing than this, mm, an item stands by the rules themselves: tiers that come to its very point. */
const BY_RULE_MM = 1e-6;
/** What rounding may take from such an item, mm. */
const SPARED_MM = 3e-4;
/** Missed by this much where nobody can say by how much, mm. */
const UNKNOWN_MISS_MM = 1;

/** Corners of an earlier tier, as its rule takes them: ends of the edges between its neighbours, or where they touch. */
function cornersOf(of: TierRange, cut: readonly Plane[], tolerance: number): Vec3[] {
  const count = of.first + of.count;
  const planes = cut.slice(0, count);
  const normals = planes.slice(of.first).map((p) => p.n);
  return neighbourPairs(normals).flatMap((pair): Vec3[] => {
    const [a, b] = [pair.a + of.first, pair.b + of.first];
    const edge = edgeBetween(a, b, planes);
    if (edge.length > tolerance) return [edge.from, edge.to];
    if (Math.abs(gapBetween(planes[a], planes[b])) > tolerance) return [];
    const at = meetingPoint(planes[a], planes[b]);
    return isCovered(at, a, b, planes) ? [] : [at];
  });
}

function depthAtCorners({ normals, earlier, tolerance }: TierContext, of: TierRange): Answer {
  const corners = cornersOf(of, earlier, tolerance);
  if (corners.length === 0) return { depth: 0, unmet: { why: "no-corners", other: of.tier.id } };
  const own = normals.map((n) => 1 - corners.reduce((most, c) => Math.max(most, dot(n, c)), -1));
  return { depth: Math.max(...own) };
}

/** A cut that reads as 0.00 mm: no lap stops there. Common practice, no source. */
const NOTHING_MM = 0.005;

/** What a tier has to be deep, mm, to count as cut; one that was hardly deeper than nothing, half of that. */
export const leastDepthsOf = (was: SolvedPlan): number[] =>
  was.tiers.map(({ depthMm }) => Math.min(NOTHING_MM, depthMm / 2));

/** By how much a rule is not met, mm. */
function missedMm(unmet: Unmet, radiusMm: number): number {
  if (!("got" in unmet)) return UNKNOWN_MISS_MM;
  const asked = "asked" in unmet ? unmet.asked : 0;
  return Math.max(Math.abs(asked - unmet.got) * radiusMm, 1e-3);
}

/**
 * @param was the plan in which all items were kept
 * @param base the plan with tiers that are cut as they were cut; where its facets stand doesn't change
 * @param wasMet tiers whose rule is to be met
 */
export function createTrial(
  was: SolvedPlan,
  base: SolvedPlan,
  items: readonly AlikeItems[],
  wasMet: readonly boolean[],
): Trial {
  const { plan, radiusMm: R, facets, tiers } = base;
  const tolerance = toleranceOf(plan) / R;
  const lastTier = items.map(({ item }) => Math.max(...item.map((k) => facets[k].tierIndex)));
  const marginOf = (item: Item, planes: readonly Plane[]): number => {
    if (item.length === 1) return tolerance * R;
    if (item.length > 2) return cornerMargin(item, planes, tolerance) * R;
    const areNext = facets[item[0]].tierIndex === facets[item[1]].tierIndex;
    return pairMargin(item[0], item[1], planes, tolerance, areNext) * R;
  };
  const leastMm = leastDepthsOf(was);
  // what was cut by a slip stands as it does
  const ruled = plan.tiers.flatMap(({ depth }, i) => (wasMet[i] && depth.rule !== "depth" ? [i] : []));
  const spared = items.map(({ item }) => (Math.abs(marginOf(item, was.planes)) < BY_RULE_MM ? SPARED_MM : 0));
  let known: Cut[] = [];
  let work = 0;

  function depthOf(context: TierContext): Answer {
    const { depth: rule } = context.tier;
    if (rule.rule !== "corners")
      // what can't be reckoned is not met, by nobody knows how much
      return unlessInexact(() => depthByRule(context, rule)) ?? { depth: 0, unmet: { why: "covered" } };
    return depthAtCorners(context, context.earlierTiers.find((t) => t.tier.id === rule.of)!);
  }

  function next(before: Cut | null, i: number, angleDeg: number): Cut {
    const tier = { ...plan.tiers[i], armAngleDeg: angleDeg };
    const { first, count } = tiers[i];
    const normals = facets
      .slice(first, first + count)
      .map(({ azimuthDeg }) => facetFrame(angleDeg, azimuthDeg, tier.side).n);
    const earlier = before?.planes ?? [];
    const earlierTiers = before?.ranges ?? [];
    const context: TierContext = { tier, normals, earlier, earlierTiers, radiusMm: R, tolerance };
    const { depth, unmet } = depthOf(context);
    work += RULES[tier.depth.rule].cost;
    return {
      angleDeg,
      planes: [...earlier, ...normals.map((n) => ({ n, h: 1 - depth }))],
      ranges: [...earlierTiers, { tier, first, count }],
      unmetMm: unmet && wasMet[i] ? -missedMm(unmet, R) : null,
    };
  }

  /** The piece after each tier, up to the first that can't be cut as its rule says. */
  function cutsAt(angles: readonly number[]): Cut[] {
    const cuts: Cut[] = [];
    let isKnown = true;
    for (const [i, angle] of angles.entries()) {
      isKnown &&= known[i]?.angleDeg === angle;
      cuts.push(isKnown ? known[i] : next(cuts[i - 1] ?? null, i, angle));
      if (cuts[i].unmetMm !== null) break;
    }
    known = cuts;
    return cuts;
  }

  return {
    at: (angles) => {
      const cuts = cutsAt(angles);
      const end = cuts[cuts.length - 1];
      const isBroken = end?.unmetMm != null;
      const reach = isBroken ? cuts.length - 1 : cuts.length;
      const planes = isBroken ? (cuts[reach - 1]?.planes ?? []) : (end?.planes ?? []);
      let edges = 0;
      const kept = items.map(({ item, all }, i) => {
        if (lastTier[i] >= reach) return null;
        const margin = marginOf(item, planes) + spared[i];
        if (item.length === 2) edges += all.length * Math.max(0, margin);
        return margin;
      });
      const deep = ruled.map((i) => (i < reach ? (1 - planes[tiers[i].first].h) * R - leastMm[i] : null));
      return {
        kept: [...kept, ...deep],
        broken: isBroken ? { tier: reach, byMm: end.unmetMm ?? 0 } : null,
        edgesMm: edges,
      };
    },
    get work() {
      return work;
    },
  };
}

/** The plan with its tiers at other arm angles. */
export const withAngles = (plan: Plan, angles: readonly number[]): Plan => ({
  ...plan,
  tiers: plan.tiers.map((tier, i) =>
    tier.armAngleDeg === angles[i] ? tier : { ...tier, armAngleDeg: angles[i] },
  ),
});
