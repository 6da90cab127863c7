/** What solving has to say: a rule that can't be met and the nearest that can, facets that pass their corner. */

import type { DepthRule } from "./document.ts";
import type { PlanFinding, Unmet } from "./finding.ts";
import { amountOf, namedTierOf } from "./rules/amounts.ts";
import type { Overshoot, TierContext } from "./rules/tier-context.ts";
import type { PlacedFacet } from "./solved.ts";

/** The plan's own number; touching is a gap of none, null for rules without a size. */
const askedMm = (rule: DepthRule): number | null => (rule.rule === "touch" ? 0 : amountOf(rule));

/** @param depth of the nearest that can be done, as a fraction of the radius */
export function ruleUnmetFinding(
  context: TierContext,
  depth: number,
  unmet: Unmet,
): PlanFinding<"rule-unmet"> {
  const { tier, radiusMm } = context;
  const common = {
    rule: tier.depth.rule,
    asked: askedMm(tier.depth),
    depthMm: depth * radiusMm,
    armAngleDeg: tier.armAngleDeg,
    count: tier.count,
  };
  const other = namedTierOf(tier.depth);
  return {
    code: "rule-unmet",
    severity: "stop",
    tier: tier.id,
    data:
      "got" in unmet
        ? { other, ...unmet, ...common, got: unmet.got * radiusMm }
        : { other, ...unmet, ...common, got: null },
  };
}

/** Facets whose plane passes below the corner it comes to by more than the tolerance. */
export function overshootFinding(
  context: TierContext,
  { of, by }: Overshoot,
  own: readonly PlacedFacet[],
): PlanFinding[] {
  const over = by.flatMap((deeper, k) =>
    deeper > context.tolerance ? [{ id: own[k].id, mm: deeper * context.radiusMm }] : [],
  );
  if (over.length === 0) return [];
  const worst = Math.max(...over.map((o) => o.mm));
  return [
    {
      code: "overshoot",
      severity: "warn",
      tier: context.tier.id,
      facets: over.map((o) => o.id),
      data: { worstMm: worst, of },
    },
  ];
}
