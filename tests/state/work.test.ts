/** Where the work stands is part of the plan, and of nothing that undo walks through. */
import { describe, expect, it } from "vitest";
import type { Plan, Work } from "../../src/core/plan/document.ts";
import { parsePlan, serializePlan } from "../../src/core/plan/file.ts";
import { fragmentOf, planFromFragment } from "../../src/core/plan/link.ts";
import { depthOf, report, solved } from "../../src/state/derived.ts";
import { createPlanStore } from "../../src/state/store.ts";
import { FIRST_EXAMPLE } from "../../src/ui/examples.ts";

const [first, second] = FIRST_EXAMPLE.tiers;
const at = (tier: string, k: number): Work => ({ tier, stage: "rough", facet: `${tier}/${k}` });
const withWork = (work: unknown) => JSON.stringify({ ...FIRST_EXAMPLE, work });
const fresh = () => createPlanStore({ plan: FIRST_EXAMPLE as Plan, depthOf });

describe("where the work stands", () => {
  it("goes with file and link", () => {
    const { plan, unknown } = parsePlan(withWork(at(second.id, 3)));
    expect(unknown).toEqual([]);
    expect(parsePlan(serializePlan(plan)).plan.work).toEqual(at(second.id, 3));
    expect(planFromFragment(fragmentOf(plan))?.plan.work).toEqual(at(second.id, 3));
  });

  it("is refused in words where the plan has no such place", () => {
    expect(() => parsePlan(withWork(at("t99", 1)))).toThrow("work.tier: no-such-tier");
    expect(() => parsePlan(withWork(at(first.id, 121)))).toThrow("work.facet: no-such-facet");
    expect(() => parsePlan(withWork({ ...at(first.id, 1), facet: `${second.id}/1` }))).toThrow("work.facet");
    expect(() => parsePlan(withWork({ tier: first.id, stage: "rough" }))).toThrow("work.facet: missing");
    expect(() => parsePlan(withWork({ ...at(first.id, 1), facet: 1 }))).toThrow("work.facet");
    expect(() => parsePlan(withWork(null))).toThrow("work");
  });

  it("moves on without a step to undo, and nothing is reckoned anew", () => {
    const store = fresh();
    store.getState().dispatch({ type: "set-name", name: "Another" });
    const [steps, reckoned] = [store.getState().history, report(store.getState().plan)];
    for (let k = 1; k <= 5; k++) expect(store.getState().standAt(at(first.id, k)).ok).toBe(true);
    expect(store.getState().history).toBe(steps);
    expect(store.getState().plan.work).toEqual(at(first.id, 5));
    expect(report(store.getState().plan)).toBe(reckoned);
    expect(solved({ ...store.getState().plan, toleranceMm: 0.2 })).not.toBe(solved(store.getState().plan));
    store.getState().undo();
    expect(store.getState().plan.name).toBe(FIRST_EXAMPLE.name);
    expect(store.getState().plan.work).toEqual(at(first.id, 5));
    expect(store.getState().standAt(at("t99", 1)).ok).toBe(false);
    store.getState().standAt(undefined);
    expect("work" in store.getState().plan).toBe(false);
  });

  it("never stands in the way of an edit, nor of undoing one", () => {
    const store = fresh();
    const last = FIRST_EXAMPLE.tiers[FIRST_EXAMPLE.tiers.length - 1];
    store.getState().standAt(at(last.id, 1));
    expect(store.getState().dispatch({ type: "remove-tier", tierId: last.id }).ok).toBe(true);
    expect(store.getState().plan.work).toBeUndefined();
    store.getState().undo();
    expect(store.getState().plan.work).toEqual(at(last.id, 1));

    const { id: _own, ...tier } = last;
    store.getState().dispatch({ type: "add-tier", tier: { ...tier, depth: { rule: "depth", mm: 1 } } });
    const added = store.getState().plan.tiers[FIRST_EXAMPLE.tiers.length];
    store.getState().standAt(at(added.id, 1));
    expect(store.getState().undo()).toBe(true);
    expect(store.getState().plan.tiers).toHaveLength(FIRST_EXAMPLE.tiers.length);
    expect(store.getState().plan.work).toBeUndefined();
    expect(store.getState().notes).toEqual([]);
    expect(store.getState().redo()).toBe(true);
  });

  it("stays where it has come to when an edit from before that is undone", () => {
    const store = fresh();
    const last = FIRST_EXAMPLE.tiers[FIRST_EXAMPLE.tiers.length - 1];
    store.getState().standAt(at(last.id, 1));
    store.getState().dispatch({ type: "remove-tier", tierId: last.id });
    store.getState().standAt(at(first.id, 4));
    store.getState().undo();
    expect(store.getState().plan.work).toEqual(at(first.id, 4));
  });

  it("stays when another plan is put in place, as far as that has the facet", () => {
    const store = fresh();
    store.getState().standAt(at(first.id, 2));
    store.getState().dispatch({ type: "replace-plan", plan: { ...FIRST_EXAMPLE, name: "Earlier" } as Plan });
    expect(store.getState().plan.work).toEqual(at(first.id, 2));
    const without = { ...FIRST_EXAMPLE, tiers: [] } as Plan;
    store.getState().dispatch({ type: "replace-plan", plan: without });
    expect(store.getState().plan.work).toBeUndefined();
  });
});
