import { describe, expect, it } from "vitest";
import { planBeforeEdit } from "../../src/state/before-edit.ts";
import { depthOf } from "../../src/state/derived.ts";
import { createPlanStore } from "../../src/state/store.ts";
import { samplePlan } from "./sample-plan.ts";

const opened = () => createPlanStore({ plan: samplePlan(), depthOf });

describe("the plan before the last edit", () => {
  it("is none where nothing was edited, or nothing that moves a facet", () => {
    const store = opened();
    expect(planBeforeEdit(store.getState())).toBeNull();
    store.getState().dispatch({ type: "set-name", name: "other" });
    store.getState().dispatch({ type: "change-tier", tierId: "star", change: { finish: "ground" } });
    expect(planBeforeEdit(store.getState())).toBeNull();
  });

  it("is the one before the last step that moved a facet, whatever was named since", () => {
    const store = opened();
    const { dispatch } = store.getState();
    dispatch({ type: "change-tier", tierId: "star", change: { armAngleDeg: 31 } });
    dispatch({ type: "change-tier", tierId: "star", change: { armAngleDeg: 32 } });
    dispatch({ type: "set-name", name: "other" });
    const before = planBeforeEdit(store.getState());
    expect(before?.tiers.find(({ id }) => id === "star")?.armAngleDeg).toBe(31);
  });

  it("is that of a whole drag, and goes back with undo", () => {
    const store = opened();
    const first = store.getState().plan;
    const was = first.tiers.find(({ id }) => id === "star")?.armAngleDeg;
    store.getState().beginDrag({ about: "tier", tier: 3 });
    for (const armAngleDeg of [31, 33, 37])
      store.getState().dragTo({ type: "change-tier", tierId: "star", change: { armAngleDeg } });
    store.getState().endDrag();
    const before = planBeforeEdit(store.getState());
    expect(before?.tiers.find(({ id }) => id === "star")?.armAngleDeg).toBe(was);
    store.getState().undo();
    expect(planBeforeEdit(store.getState())).toBeNull();
  });
});
