/**
 * Solves a plan: every facet on its stop, every tier at the least depth that does what its rule asks.
 * Tiers are solved in cutting order; a rule sees earlier tiers final and later ones uncut.
 */
import type { Plane } from "../geometry/plane.ts";
import { DEFAULT_TOLERANCE_MM } from "../geometry/tolerance.ts";
import type { Plan } from "./document.ts";
import type { PlanFinding } from "./finding.ts";
import { placeFacets } from "./place.ts";
import { depthByRule } from "./rules/records.ts";
import type { Answer, TierContext, TierRange } from "./rules/tier-context.ts";
import { overshootFinding, ruleUnmetFinding } from "./solve-findings.ts";
import type { SolvedPlan, SolvedTier } from "./solved.ts";

export const toleranceOf = (plan: Plan): number => plan.toleranceMm ?? DEFAULT_TOLERANCE_MM;

/**
 * @param depthsMm depths that are already known, by tier id; those tiers' rules are not asked
 */
export function solvePlan(plan: Plan, depthsMm: Readonly<Record<string, number>> = {}): SolvedPlan {
  const radiusMm = plan.piece.diameterMm / 2;
  const facets = placeFacets(plan);
  const planes: Plane[] = [];
  const ranges: TierRange[] = [];
  const tiers: SolvedTier[] = [];
  const findings: PlanFinding[] = [];
  for (const tier of plan.tiers) {
    const first = planes.length;
    const own = facets.slice(first, first + tier.count);
    const context: TierContext = {
      tier,
      normals: own.map((f) => f.frame.n),
      earlier: [...planes],
      earlierTiers: [...ranges],
      radiusMm,
      tolerance: toleranceOf(plan) / radiusMm,
    };
    const known = Object.hasOwn(depthsMm, tier.id) ? depthsMm[tier.id] : undefined;
    const answer: Answer =
      known === undefined ? depthByRule(context, tier.depth) : { depth: known / radiusMm };
    if (answer.unmet) findings.push(ruleUnmetFinding(context, answer.depth, answer.unmet));
    if (answer.overshoot) findings.push(...overshootFinding(context, answer.overshoot, own));
    // the plan's own number, without a round trip
    const asked = tier.depth.rule === "depth" ? tier.depth.mm : answer.depth * radiusMm;
    const depthMm = known ?? asked;
    const h = 1 - depthMm / radiusMm;
    planes.push(...own.map((f) => ({ n: f.frame.n, h })));
    ranges.push({ tier, first, count: tier.count });
    tiers.push({ tierId: tier.id, depthMm, first, count: tier.count, met: !answer.unmet });
  }
  return { plan, radiusMm, tiers, facets, planes, findings };
}
