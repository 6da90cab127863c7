/**
 * Solves a plan: every facet on its stop, every tier at the least depth that does what its rule asks.
 * Tiers are solved in cutting order; a rule sees earlier tiers final and later ones uncut.
 */
import type { Plane } from "../geometry/plane.ts";
import { DEFAULT_TOLERANCE_MM } from "../geometry/tolerance.ts";
import type { DepthRule, Plan } from "./document.ts";
import type { PlanFinding } from "./finding.ts";
import { placeFacets } from "./place.ts";
import { depthToClose } from "./rules/close-rule.ts";
import { depthForCorners } from "./rules/corners-rule.ts";
import { depthForEdge } from "./rules/edge-rule.ts";
import { depthForGap } from "./rules/gap-rule.ts";
import type { Answer, TierContext, TierRange } from "./rules/tier-context.ts";
import { depthForWidth } from "./rules/width-rule.ts";
import { overshootFinding, ruleUnmetFinding } from "./solve-findings.ts";
import type { SolvedPlan, SolvedTier } from "./solved.ts";

export const toleranceOf = (plan: Plan): number => plan.toleranceMm ?? DEFAULT_TOLERANCE_MM;

/** The earlier tier that a rule names; the file format guarantees that there is one. */
function namedTier(context: TierContext, id: string): TierRange {
  const found = context.earlierTiers.find((t) => t.tier.id === id);
  if (!found) throw new Error(`tier ${context.tier.id} refers to ${id}, which is not an earlier tier`);
  return found;
}

/** Depth by one rule, as a fraction of the radius. */
export function depthByRule(context: TierContext, rule: DepthRule): Answer {
  const R = context.radiusMm;
  switch (rule.rule) {
    case "depth":
      return { depth: rule.mm / R };
    case "width":
      return depthForWidth(context, rule.mm / R);
    case "gap":
      return depthForGap(context, rule.mm / R);
    case "touch":
      return depthForGap(context, 0);
    case "edge":
      return depthForEdge(context, rule.mm / R);
    case "close":
      return depthToClose(context, namedTier(context, rule.to));
    case "corners":
      return depthForCorners(context, namedTier(context, rule.of));
  }
}

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
    const asked = tier.depth.rule === "depth" ? tier.depth.mm : answer.depth * radiusMm;
    const depthMm = known ?? asked;
    const h = 1 - depthMm / radiusMm;
    planes.push(...own.map((f) => ({ n: f.frame.n, h })));
    ranges.push({ tier, first, count: tier.count });
    tiers.push({ tierId: tier.id, depthMm, first, count: tier.count, met: !answer.unmet });
  }
  return { plan, radiusMm, tiers, facets, planes, findings };
}
