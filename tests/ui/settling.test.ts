import { describe, expect, it } from "vitest";
import { type Reckoned, reckon } from "../../src/core/check/reckon.ts";
import { InexactCut } from "../../src/core/geometry/inexact-cut.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { report, solid, solved } from "../../src/state/derived.ts";
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
  const asked: { plan: Plan; answer: (given: Reckoned) => void; fail: (why: Error) => void }[] = [];
  const refused: [string, string][] = [];
  const shown: { name: string; isLate: boolean }[] = [];
  const follow = createSettling(
    { plan: first, laid: 0 },
    {
      ask: (plan) => new Promise((answer, fail) => asked.push({ plan, answer, fail })),
      show: ({ plan, isLate }) => shown.push({ name: plan.name, isLate }),
      refuse: (plan, before) => refused.push([plan.name, before.name]),
    },
  );
  return { asked, shown, refused, follow };
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
    asked[0].answer(reckon(asked[0].plan));
    await turn();
    expect(shown.at(-1)).toEqual({ name: "first", isLate: true });
    // as it comes from a worker
    const given = structuredClone(reckon(asked[1].plan));
    asked[1].answer(given);
    await turn();
    expect(asked.map(({ plan }) => plan.name)).toEqual(["a", "d"]);
    expect(shown.at(-1)).toEqual({ name: "d", isLate: false });
    // what the worker said is what everybody is told
    expect(report(asked[1].plan)).toBe(given.report);
    expect(solid(asked[1].plan)).toBe(given.solid);
    // but the plan is that of the page, to the object
    expect(solved(asked[1].plan)).toEqual(given.solved);
    expect(solved(asked[1].plan).plan).toBe(asked[1].plan);
  });

  it("is shown all the same where no worker answers", async () => {
    const { asked, shown, follow } = bench(manyFacets("first"));
    follow({ plan: manyFacets("edited"), laid: 0 });
    asked[0].fail(new Error("gone"));
    await turn();
    expect(shown.at(-1)).toEqual({ name: "edited", isLate: false });
  });

  it("is at once another one that is laid on the bench, and no answer about the one before takes its place", async () => {
    const { asked, shown, follow } = bench(manyFacets("first"));
    follow({ plan: manyFacets("edited"), laid: 0 });
    follow({ plan: manyFacets("another"), laid: 1 });
    expect(shown.at(-1)).toEqual({ name: "another", isLate: false });
    asked[0].answer(reckon(asked[0].plan));
    await turn();
    expect(shown.at(-1)).toEqual({ name: "another", isLate: false });
  });

  it("that can't be reckoned exactly leaves the bench again: told with the plan before it, and never shown", async () => {
    const { asked, shown, refused, follow } = bench(manyFacets("first"));
    follow({ plan: manyFacets("edited"), laid: 0 });
    // as it comes from a worker: an error that has kept its name and nothing else
    asked[0].fail(Object.assign(new Error("euler"), { name: "InexactCut" }));
    await turn();
    expect(refused).toEqual([["edited", "first"]]);
    expect(shown.at(-1)).toEqual({ name: "first", isLate: true });
    // one that was superseded meanwhile is nobody's concern
    follow({ plan: manyFacets("other"), laid: 0 });
    follow({ plan: manyFacets("last"), laid: 0 });
    asked[1].fail(new InexactCut("euler"));
    await turn();
    asked[2].answer(reckon(asked[2].plan));
    await turn();
    expect(refused).toHaveLength(1);
    expect(shown.at(-1)).toEqual({ name: "last", isLate: false });
  });
});
