import { describe, expect, it } from "vitest";
import type { Command } from "../../src/state/commands.ts";
import { comparePlans } from "../../src/state/compare.ts";
import { createPlanStore } from "../../src/state/store.ts";
import { samplePlan } from "./sample-plan.ts";

function changed(...commands: Command[]) {
  const store = createPlanStore({ plan: samplePlan(), depthOf: () => 1 });
  for (const command of commands) store.getState().dispatch(command);
  return store.getState().plan;
}

describe("comparing two plans", () => {
  it("finds nothing between equal ones", () => {
    expect(comparePlans(samplePlan(), samplePlan())).toEqual([]);
  });

  it("names every field that changed, with both values", () => {
    const b = changed(
      { type: "set-name", name: "New" },
      { type: "set-piece", change: { diameterMm: 30 } },
      { type: "set-tolerance", toleranceMm: 0.1 },
      { type: "change-tier", tierId: "belt", change: { count: 14 } },
    );
    expect(comparePlans(samplePlan(), b)).toEqual([
      {
        about: "plan",
        fields: [
          { field: "name", from: "Harbour lamp", to: "New" },
          { field: "toleranceMm", from: undefined, to: 0.1 },
        ],
      },
      { about: "piece", fields: [{ field: "diameterMm", from: 32, to: 30 }] },
      {
        about: "tier",
        tier: b.tiers[0],
        from: 1,
        to: 1,
        moved: false,
        fields: [{ field: "count", from: 12, to: 14 }],
      },
    ]);
  });

  it("tells added and removed tiers, and says of none that it moved because of them", () => {
    const tier = {
      id: "new",
      name: "New",
      side: "back",
      armAngleDeg: 5,
      count: 4,
      startDeg: 0,
      depth: { rule: "touch" },
    } as const;
    const b = changed({ type: "remove-tier", tierId: "star" }, { type: "add-tier", tier, at: 0 });
    expect(comparePlans(samplePlan(), b).map((change) => change.about)).toEqual([
      "tier-removed",
      "tier-added",
    ]);
  });

  it("tells which tiers changed places", () => {
    const b = changed({ type: "move-tier", tierId: "star", to: 1 });
    const moved = comparePlans(samplePlan(), b).flatMap((change) =>
      change.about === "tier" && change.moved ? [[change.tier.id, change.from, change.to]] : [],
    );
    expect(moved).toEqual([
      ["star", 3, 2],
      ["crown", 2, 3],
    ]);
  });
});
