import { describe, expect, it } from "vitest";
import { depthOf, perPlan, report, solid, solved } from "../../src/state/derived.ts";
import { createPlanStore } from "../../src/state/store.ts";
import { samplePlan } from "./sample-plan.ts";

describe("what follows from a plan", () => {
  it("is computed once for a plan object and anew for another", () => {
    let times = 0;
    const counted = perPlan(() => ++times);
    const [a, b] = [samplePlan(), samplePlan()];
    expect([counted(a), counted(a), counted(b), counted(a)]).toEqual([1, 1, 2, 1]);
  });

  it("belongs together: facets of the solid, the solved plan and the report are the same in the same order", () => {
    const plan = samplePlan();
    expect(solid(plan).facets).toHaveLength(30);
    expect(report(plan).facets.map((facet) => facet.id)).toEqual(
      solved(plan).facets.map((facet) => facet.id),
    );
    expect(report(plan)).toBe(report(plan));
  });

  it("gives the depth that a removed reference leaves: the cut piece stays as it was", () => {
    const plan = samplePlan();
    const store = createPlanStore({ plan, depthOf });
    const before = depthOf(plan, "star");
    expect(before).toBeGreaterThan(0);
    store.getState().dispatch({ type: "move-tier", tierId: "star", to: 0 });
    const moved = store.getState().plan;
    expect(moved.tiers[0].depth).toEqual({ rule: "depth", mm: before });
    expect(depthOf(moved, "star")).toBe(before);
  });
});
