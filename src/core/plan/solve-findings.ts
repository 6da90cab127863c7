/** What solving has to say: a rule that can't be met and the nearest that can, facets that pass their corner. */

import type { DepthRule } from "./document.ts";
import type { Answer, TierContext } from "./rules/tier-context.ts";
import { degrees, mm } from "./say.ts";
import type { Finding, PlacedFacet } from "./solved.ts";

const wish = (rule: DepthRule): string => {
  switch (rule.rule) {
    case "depth":
      return `be ${mm(rule.mm)} deep`;
    case "width":
      return `be ${mm(rule.mm)} wide`;
    case "gap":
      return `leave ${mm(rule.mm)} between them`;
    case "touch":
      return "just touch";
    case "edge":
      return `share an edge of ${mm(rule.mm)}`;
    case "close":
      return `close to tier ${rule.to}`;
    case "corners":
      return `come to the corners of tier ${rule.of}`;
  }
};

/** Sentences for each reason; `got` is already in mm. */
const reasons: Record<string, (context: TierContext, got: number) => string> = {
  single: () => "one facet alone has no neighbour in its tier",
  "same-place": () => "all its facets stand in one place",
  "already-closer": (_, got) => `next neighbours stand only ${mm(got)} apart before they are cut`,
  "never-shared": () => "its neighbours share no edge at any depth",
  "too-long": ({ tier }, got) =>
    `at ${degrees(tier.armAngleDeg)} ${tier.count} facets can share at most ${mm(got)}`,
  "too-wide": ({ tier }, got) =>
    `at ${degrees(tier.armAngleDeg)} ${tier.count} facets can be at most ${mm(got)} wide here`,
  covered: () => "earlier tiers have taken all the glass it would stand on",
  "no-corners": ({ tier }) =>
    `the neighbours of tier ${tier.depth.rule === "corners" ? tier.depth.of : ""} neither share edges nor touch, so it has no corners`,
  "open-below": ({ tier }, got) =>
    `the neighbours of tier ${tier.depth.rule === "close" ? tier.depth.to : ""} stand ${mm(got)} apart, so skin runs through between them`,
  "ground-away": ({ tier }) => `nothing is left of tier ${tier.depth.rule === "close" ? tier.depth.to : ""}`,
  "stays-open": ({ tier }) =>
    `round skin stays open between it and tier ${tier.depth.rule === "close" ? tier.depth.to : ""} at every depth`,
};

/** @param answer with `unmet`; lengths as fractions of the radius */
export function ruleUnmetFinding(context: TierContext, answer: Answer): Finding {
  const { tier, radiusMm } = context;
  const { why, asked, got } = answer.unmet ?? { why: "stays-open" };
  const gotMm = got === undefined ? null : got * radiusMm;
  // the plan's own number, where the rule has one
  const askedMm = "mm" in tier.depth ? tier.depth.mm : asked === undefined ? null : asked * radiusMm;
  return {
    code: "rule-unmet",
    severity: "stop",
    tier: tier.id,
    data: {
      rule: tier.depth.rule,
      asked: askedMm,
      got: gotMm,
      why,
      depthMm: answer.depth * radiusMm,
      armAngleDeg: tier.armAngleDeg,
      count: tier.count,
      other:
        tier.depth.rule === "close" ? tier.depth.to : tier.depth.rule === "corners" ? tier.depth.of : null,
    },
    text: `Tier ${tier.id} can't ${wish(tier.depth)}: ${reasons[why](context, gotMm ?? 0)}.`,
  };
}

/** Facets whose plane passes below the corner it comes to by more than the tolerance. */
export function overshootFinding(
  context: TierContext,
  overshoot: readonly number[],
  own: readonly PlacedFacet[],
): Finding[] {
  const over = overshoot.flatMap((by, k) =>
    by > context.tolerance ? [{ id: own[k].id, mm: by * context.radiusMm }] : [],
  );
  if (over.length === 0) return [];
  const worst = Math.max(...over.map((o) => o.mm));
  return [
    {
      code: "overshoot",
      severity: "warn",
      tier: context.tier.id,
      facets: over.map((o) => o.id),
      data: { worstMm: worst, of: context.tier.depth.rule === "corners" ? context.tier.depth.of : null },
      text: `${over.length === 1 ? "One facet" : `${over.length} facets`} of tier ${context.tier.id} pass their corner by up to ${mm(worst)}: not all corners lie equally deep under this tier.`,
    },
  ];
}
