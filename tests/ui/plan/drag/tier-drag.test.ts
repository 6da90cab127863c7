import { describe, expect, it } from "vitest";
import type { Plan, Tier } from "../../../../src/core/plan/document.ts";
import { depthOf, report } from "../../../../src/state/derived.ts";
import { createPlanStore } from "../../../../src/state/store.ts";
import { beginFreshDrag, beginTierDrag, type DragHost } from "../../../../src/ui/plan/drag/tier-drag.ts";

const plain = { free: false, fine: false };
const tier = (id: string, armAngleDeg: number, startDeg: number, depth: Tier["depth"]): Tier => ({
  id,
  name: id,
  side: "front",
  armAngleDeg,
  count: 8,
  startDeg,
  depth,
});
const PLAN: Plan = {
  format: "glintwright-plan",
  version: 1,
  name: "drag",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [tier("low", 0, 0, { rule: "touch" }), tier("high", 40, 22.5, { rule: "depth", mm: 0.6 })],
};

function bench() {
  const store = createPlanStore({ plan: PLAN, depthOf });
  const { beginDrag, dragTo, endDrag, cancelDrag } = store.getState();
  const host: DragHost = {
    plan: () => store.getState().plan,
    depthOf,
    seeksMeets: () => true,
    beginDrag,
    dragTo,
    endDrag,
    cancelDrag,
  };
  return { store, host, high: () => store.getState().plan.tiers[1] };
}

describe("a tier drag", () => {
  it("of a fresh tier that the plan can't take is refused by name and leaves nothing under way", () => {
    const { store, host } = bench();
    const fresh = tier("beyond", 108, 0, { rule: "touch" });
    expect(() => beginFreshDrag(host, fresh, "depth")).toThrow(/armAngleDeg: out-of-range/);
    expect(store.getState().drag).toBeNull();
    expect(store.getState().plan).toBe(PLAN);
  });
  it("is one undo step however many moves it takes", () => {
    const { store, host } = bench();
    const drag = beginTierDrag(host, "high", "angle");
    for (let i = 0; i < 20; i++) drag.by(0.7, 0, { free: true, fine: false });
    drag.end();
    expect(store.getState().history.undo).toHaveLength(1);
    store.getState().undo();
    expect(store.getState().plan).toEqual(PLAN);
  });

  it("takes on the rule of the snap it rests at, so that the report says touch", () => {
    const { store, host, high } = bench();
    const drag = beginTierDrag(host, "high", "depth");
    const touch = drag.snaps.find((s) => s.depth?.rule === "touch");
    if (!touch) throw new Error("touching is looked for first");
    drag.by(touch.value - 0.6 + 0.05, 0.1, plain);
    drag.end();
    expect(high().depth).toEqual({ rule: "touch" });
    const own = report(store.getState().plan).pairs.filter(
      (p) => p.a.startsWith("high/") && p.b.startsWith("high/"),
    );
    expect(new Set(own.map((p) => p.state))).toEqual(new Set(["touch"]));
  });

  it("gives the rule back when it moves on past the snap", () => {
    const { host, high } = bench();
    const drag = beginTierDrag(host, "high", "angle");
    while (drag.think());
    const snap = drag.snaps.find((s) => s.depth);
    if (!snap) throw new Error("an angle that meets is within reach");
    drag.by(snap.value - 40, 0.3, plain);
    expect(high().depth).toEqual(snap.depth);
    drag.by(2.5, 0.3, { free: true, fine: false });
    expect(high().depth).toEqual({ rule: "depth", mm: 0.6 });
    drag.end();
  });

  it("rests every start on a stop, and between stops when it is free", () => {
    const { host, high } = bench();
    const drag = beginTierDrag(host, "high", "start");
    drag.by(7, 0, plain);
    expect(high().startDeg).toBe(30);
    drag.by(1, 0, { free: true, fine: false });
    expect(high().startDeg).toBe(30.5);
    drag.end();
  });

  it("goes round the seam", () => {
    const { host, high } = bench();
    const drag = beginTierDrag(host, "high", "start");
    drag.by(-30, 0, plain);
    expect(high().startDeg).toBe(352.5);
    drag.end();
  });

  it("brings back the very document when it is cancelled", () => {
    const { store, host } = bench();
    const before = store.getState().plan;
    const drag = beginTierDrag(host, "high", "depth");
    drag.by(1, 0, plain);
    drag.cancel();
    expect(store.getState().plan).toBe(before);
    expect(store.getState().history.undo).toHaveLength(0);
  });

  it("can't begin on a tier that is not there", () => {
    expect(() => beginTierDrag(bench().host, "gone", "depth")).toThrow("gone");
  });
});
