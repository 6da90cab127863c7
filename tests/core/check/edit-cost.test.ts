/** What an edit took apart: what met before it and no longer does, and mends that let it meet again. */
import { describe, expect, it } from "vitest";
import { editCostFindings } from "../../../src/core/check/findings-edit-cost.ts";
import { lossesIn } from "../../../src/core/check/losses.ts";
import { mendsOf, planWith } from "../../../src/core/check/mends.ts";
import { checkedOf, reportPlan } from "../../../src/core/check/report.ts";
import type { Plan, Tier } from "../../../src/core/plan/document.ts";
import type { PlanFinding } from "../../../src/core/plan/finding.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { planOf, tier } from "../../fixtures/mend-cases.ts";

/** Eight over sixteen, edges running on into edges: each such corner is of four planes. The upper rings have typed depths. */
const ruled = planOf(
  [
    tier("a", 8, 11.25, { rule: "edge", mm: 3.5 }, 16),
    tier("b", 40, 0, { rule: "close", to: "a" }, 8),
    tier("c", 60, 0, { rule: "close", to: "b" }, 8),
  ],
  { diameterMm: 34 },
  64,
);
function withDepths(plan: Plan): Plan {
  const { tiers } = solvePlan(plan);
  return {
    ...plan,
    tiers: plan.tiers.map((t, i) => ({ ...t, depth: { rule: "depth", mm: tiers[i].depthMm } })),
  };
}
const typed: Plan = { ...ruled, tiers: [ruled.tiers[0], ...withDepths(ruled).tiers.slice(1)] };
/** Twelve that come to the corners of twelve, with typed depths. */
const star = withDepths(
  planOf([
    tier("a", 0, 0, { rule: "edge", mm: 5 }),
    tier("b", 25, 15, { rule: "corners", of: "a" }),
    tier("c", 45, 0, { rule: "close", to: "b" }),
  ]),
);
const edit = (plan: Plan, id: string, change: Partial<Tier>): Plan => ({
  ...plan,
  tiers: plan.tiers.map((t) => (t.id === id ? { ...t, ...change } : t)),
});
const costs = (before: Plan, after: Plan) =>
  editCostFindings(before, checkedOf(after)).filter(
    (f): f is PlanFinding<"edit-splits"> => f.code === "edit-splits",
  );
const losses = (plan: Plan, before: Plan) => [...lossesIn(plan, before)].findLast((found) => found !== null);

describe("what an edit costs", () => {
  it("is nothing where all that met still does", () => {
    expect(costs(typed, typed)).toEqual([]);
    expect(costs(typed, edit(typed, "a", { name: "other" }))).toEqual([]);
    expect(costs(ruled, edit(ruled, "b", { depth: typed.tiers[1].depth }))).toEqual([]);
  });

  it("is one line for the tier that was edited, with the worst miss at any size", () => {
    const [depth] = star.tiers.slice(1).map(({ depth: rule }) => ("mm" in rule ? rule.mm : 0));
    const raised = (by: number) => costs(star, edit(star, "b", { depth: { rule: "depth", mm: depth - by } }));
    // twelve corners, at each of which the raised plane stands off the point where the two others leave the skin
    expect(raised(0.02)).toEqual([]);
    const [small, ...others] = raised(0.1);
    expect(others).toEqual([]);
    expect(small).toMatchObject({ code: "edit-splits", severity: "warn", tier: "b" });
    expect(small.data).toMatchObject({ corners: 12, pairs: 0 });
    expect(small.facets).toHaveLength(24);
    expect(small.data.missMm).toBeGreaterThan(0.05);
    expect(small.data.missMm).toBeLessThanOrEqual(0.1);
    const [large] = raised(0.4);
    expect(large.data.pairs).toBeGreaterThan(0);
    expect(large.data.missMm).toBeGreaterThan(1);
  });

  it("says nothing of what another facet has come over, nor where tiers or counts are others", () => {
    // the upper ring cut 2 mm deep comes over 24 meets of the one below it
    expect(costs(star, edit(star, "c", { depth: { rule: "depth", mm: 2 } }))).toEqual([]);
    expect(costs(typed, edit(typed, "b", { count: 16 }))).toEqual([]);
    expect(costs(typed, { ...typed, tiers: typed.tiers.slice(0, 2) })).toEqual([]);
  });

  it.each([
    ["angle", typed, { armAngleDeg: 43 }],
    ["start", typed, { startDeg: 5.625 }],
    ["depth", star, { depth: { rule: "depth", mm: 0.4 } }],
  ] as const)("of the %s is mended by one that lets all meet again", (_, plan, change) => {
    const after = edit(plan, "b", change);
    const cost = losses(after, plan)?.find(({ code }) => code === "edit-splits");
    if (!cost) throw new Error("the edit cost nothing");
    const mends = [...mendsOf(after, cost, plan)].filter((mend) => mend !== null);
    expect(mends.length).toBeGreaterThan(0);
    for (const mend of mends) expect(costs(plan, planWith(after, mend.steps))).toEqual([]);
  });

  it("of the wheel is told once, as what the wheel costs, and mended by a wheel", () => {
    const after: Plan = { ...ruled, rig: { wheelStops: 80 } };
    expect(costs(ruled, after).length).toBeGreaterThan(0);
    const told = losses(after, ruled) ?? [];
    expect(told.map(({ code, tier: id }) => [code, id])).toEqual([["wheel-splits", "a"]]);
    const mends = [...mendsOf(after, told[0], ruled)].filter((mend) => mend !== null);
    expect(mends.map(({ change }) => change.to)).toContain("wheel");
  });

  it("is no part of the report, which knows one plan only", () => {
    const after = edit(typed, "b", { armAngleDeg: 43 });
    expect(reportPlan(after).findings.map(({ code }) => code)).not.toContain("edit-splits");
  });
});
