import { describe, expect, it } from "vitest";
import { type Report, reportPlan } from "../../src/core/check/report.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { report } from "../../src/state/derived.ts";
import { createSettling, FEW_FACETS, facetCount } from "../../src/ui/settling.ts";
import { samplePlan } from "../state/sample-plan.ts";

/** More facets than are reported on at once; shallow, so that they leave each other alone. */
function manyFacets(name: string): Plan {
  const tiers = [10, 40, 70].map((armAngleDeg, i) => ({
    id: `t${i}`,
    name: "",
    side: "front" as const,
    armAngleDeg,
    count: 96,
    startDeg: 0,
    depth: { rule: "depth" as const, mm: 0.001 },
  }));
  return { ...samplePlan(), name, tiers };
}

function bench(first: Plan = samplePlan()) {
  const asked: { plan: Plan; answer: (given: Report) => void; fail: () => void }[] = [];
  const shown: { name: string; isLate: boolean }[] = [];
  const follow = createSettling(
    { plan: first, laid: 0 },
    (plan) =>
      new Promise((answer, refuse) => asked.push({ plan, answer, fail: () => refuse(new Error("gone")) })),
    ({ plan, isLate }) => shown.push({ name: plan.name, isLate }),
  );
  return { asked, shown, follow };
}
const turn = () => new Promise((resolve) => setTimeout(resolve));
const named = (plan: Plan, name: string): Plan => ({ ...plan, name });

describe("the plan that is shown", () => {
  it("is the one on the bench within the edit where facets are few", () => {
    const { asked, shown, follow } = bench();
    follow({ plan: named(samplePlan(), "edited"), laid: 0 });
    expect(shown).toEqual([{ name: "edited", isLate: false }]);
    expect(asked).toEqual([]);
  });

  it("of many facets stays the last one reported on; the last of many edits wins, those between are never asked", async () => {
    const first = manyFacets("first");
    expect(facetCount(first)).toBeGreaterThan(FEW_FACETS);
    const { asked, shown, follow } = bench(first);
    for (const name of ["a", "b", "c", "d"]) follow({ plan: manyFacets(name), laid: 0 });
    expect(shown.at(-1)).toEqual({ name: "first", isLate: true });
    asked[0].answer(reportPlan(asked[0].plan));
    await turn();
    expect(shown.at(-1)).toEqual({ name: "first", isLate: true });
    const given = reportPlan(asked[1].plan);
    asked[1].answer(given);
    await turn();
    expect(asked.map(({ plan }) => plan.name)).toEqual(["a", "d"]);
    expect(shown.at(-1)).toEqual({ name: "d", isLate: false });
    // what the worker said is what everybody is told
    expect(report(asked[1].plan)).toBe(given);
  });

  it("is shown all the same where no worker answers", async () => {
    const { asked, shown, follow } = bench(manyFacets("first"));
    follow({ plan: manyFacets("edited"), laid: 0 });
    asked[0].fail();
    await turn();
    expect(shown.at(-1)).toEqual({ name: "edited", isLate: false });
  });

  it("is at once another one that is laid on the bench, and no answer about the one before takes its place", async () => {
    const { asked, shown, follow } = bench(manyFacets("first"));
    follow({ plan: manyFacets("edited"), laid: 0 });
    follow({ plan: manyFacets("another"), laid: 1 });
    expect(shown.at(-1)).toEqual({ name: "another", isLate: false });
    asked[0].answer(reportPlan(asked[0].plan));
    await turn();
    expect(shown.at(-1)).toEqual({ name: "another", isLate: false });
  });
});
