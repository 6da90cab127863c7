import { describe, expect, it } from "vitest";
import { fitAsCut } from "../../../src/core/bench/as-cut/as-cut.ts";
import type { AsCut, Plan } from "../../../src/core/plan/document.ts";
import { depthOf } from "../../../src/state/derived.ts";
import { createPlanStore } from "../../../src/state/store.ts";
import { isLocked, lockAll, withFacet, withMeasured } from "../../../src/ui/bench/as-cut/as-cut-plan.ts";

describe("measurements in the plan", () => {
  it("are gone when the last one is emptied, deviations too", () => {
    const one = withMeasured(undefined, { widthMm: 6 });
    expect(one).toEqual({ widthMm: 6 });
    const two = withMeasured(one, { sdMm: 0.2 });
    expect(two).toEqual({ widthMm: 6, sdMm: 0.2 });
    expect(withMeasured(two, { widthMm: undefined })).toBeUndefined();
  });

  it("of single facets come and go without touching the others", () => {
    const both = withFacet(withFacet(undefined, "a/1", { widthMm: 5 }), "a/2", { flatToSkinMm: 30 });
    expect(both?.facets).toEqual({ "a/1": { widthMm: 5 }, "a/2": { flatToSkinMm: 30 } });
    expect(withFacet(both, "a/1", { widthMm: undefined })?.facets).toEqual({ "a/2": { flatToSkinMm: 30 } });
    expect(
      withFacet(withFacet(undefined, "a/1", { widthMm: 5 }), "a/1", { widthMm: undefined }),
    ).toBeUndefined();
  });
});

/** A ring cut a little deeper than planned; the next ring follows its corners. */
const measured = (asCut: AsCut): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "measured ring",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [
    {
      id: "a",
      name: "Low",
      side: "front",
      armAngleDeg: 20,
      count: 12,
      startDeg: 0,
      depth: { rule: "edge", mm: 3 },
      asCut,
    },
    {
      id: "b",
      name: "High",
      side: "front",
      armAngleDeg: 48,
      count: 12,
      startDeg: 15,
      depth: { rule: "corners", of: "a" },
    },
  ],
});

describe("locking what was cut", () => {
  const plan = measured({ widthMm: 7.9, edgeMm: 4.2, acrossMm: 24, flatToSkinMm: 28.6, readDeg: 20.5 });

  it("fixes measured tiers in one undo step, keeps the rule of the next, and solves it anew", () => {
    const answer = fitAsCut(plan);
    const store = createPlanStore({ plan, depthOf });
    expect(store.getState().dispatch(lockAll(answer))).toMatchObject({ ok: true });
    const [low, high] = store.getState().plan.tiers;
    expect(isLocked(low, answer.tiers[0])).toBe(true);
    expect(high.depth).toEqual({ rule: "corners", of: "a" });
    expect(depthOf(store.getState().plan, "b")).toBeCloseTo(answer.solved.tiers[1].depthMm, 3);
    expect(depthOf(store.getState().plan, "b")).not.toBeCloseTo(depthOf(plan, "b"), 2);
    store.getState().undo();
    expect(store.getState().plan.tiers).toEqual(plan.tiers);
  });

  it("changes nothing more when it is locked already", () => {
    const store = createPlanStore({ plan, depthOf });
    store.getState().dispatch(lockAll(fitAsCut(plan)));
    const again = fitAsCut(store.getState().plan);
    expect(isLocked(store.getState().plan.tiers[0], again.tiers[0])).toBe(true);
  });
});
