/** A person who does anything in any order: whatever they do, the plan stays valid and every step can be taken back. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DepthRule, Plan } from "../../src/core/plan/document.ts";
import { parsePlan, serializePlan } from "../../src/core/plan/file.ts";
import type { Command } from "../../src/state/commands.ts";
import { depthOf } from "../../src/state/derived.ts";
import { historyFromData } from "../../src/state/history.ts";
import { createPlanStore } from "../../src/state/store.ts";
import { samplePlan } from "./sample-plan.ts";

type Deed = (plan: Plan) => Command;
const someTier = (plan: Plan, pick: number): string =>
  plan.tiers[pick % Math.max(1, plan.tiers.length)]?.id ?? "none";

const rule = (plan: Plan, pick: number, mm: number): DepthRule => {
  const rules: DepthRule[] = [
    { rule: "touch" },
    { rule: "depth", mm },
    { rule: "edge", mm },
    { rule: "close", to: someTier(plan, pick) },
    { rule: "corners", of: someTier(plan, pick + 1) },
  ];
  return rules[pick % rules.length];
};

const deed: fc.Arbitrary<Deed> = fc
  .tuple(fc.nat(9), fc.nat(50), fc.nat(50), fc.double({ min: -1, max: 100, noNaN: true }))
  .map(([kind, a, b, x]): Deed => {
    const deeds: Deed[] = [
      (plan) => ({ type: "change-tier", tierId: someTier(plan, a), change: { armAngleDeg: x } }),
      (plan) => ({ type: "change-tier", tierId: someTier(plan, a), change: { depth: rule(plan, b, x) } }),
      (plan) => ({
        type: "change-tier",
        tierId: someTier(plan, a),
        change: { count: (b % 20) + (x > 50 ? 1 : 0) },
      }),
      (plan) => ({ type: "duplicate-tier", tierId: someTier(plan, a), change: { name: `copy ${b}` } }),
      (plan) => ({ type: "move-tier", tierId: someTier(plan, a), to: b % 8 }),
      (plan) => ({ type: "remove-tier", tierId: someTier(plan, a) }),
      (plan) => ({
        type: "add-tier",
        tier: { name: "new", side: "back", armAngleDeg: 30, count: 6, startDeg: x, depth: rule(plan, b, 1) },
        at: a % (plan.tiers.length + 1),
      }),
      () => ({ type: "set-piece", change: { diameterMm: 10 + x, inkMarkDeg: b % 2 ? undefined : x } }),
      (plan) => ({
        type: "set-field",
        path: ["tiers", a % 4, "asCut"],
        value: { facets: { [`${plan.tiers[a % 4]?.id}/2`]: { widthMm: 3 } } },
      }),
      (plan) => ({
        type: "apply-mend",
        code: "any",
        commands: [
          { type: "remove-tier", tierId: someTier(plan, a) },
          { type: "set-name", name: `after ${b}` },
        ],
      }),
    ];
    return deeds[kind];
  });
const move = fc.tuple(
  fc.constantFrom("do", "do", "do", "do", "undo", "redo", "drag", "cancelled drag"),
  deed,
  deed,
);

describe("whatever a person does", () => {
  it("the plan stays one that a file takes, and undoing everything gives the first one back", () => {
    fc.assert(
      fc.property(fc.array(move, { minLength: 1, maxLength: 25 }), (moves) => {
        const store = createPlanStore({ plan: samplePlan(), depthOf });
        const state = () => store.getState();
        for (const [how, first, second] of moves) {
          const before = state().plan;
          if (how === "do") state().dispatch(first(before));
          else if (how === "undo") state().undo();
          else if (how === "redo") state().redo();
          else {
            state().beginDrag({ about: "tier", tier: 1 });
            for (const part of [first, second]) state().dragTo(part(state().plan));
            if (how === "drag") state().endDrag();
            else state().cancelDrag();
            if (how === "cancelled drag") expect(state().plan).toBe(before);
          }
          expect(parsePlan(serializePlan(state().plan)).plan).toEqual(state().plan);
        }
        const last = state().plan;
        const steps = state().history.undo.length;
        // the steps survive being kept as text
        const kept = historyFromData(JSON.parse(JSON.stringify(state().history)));
        state().open({ plan: last, history: kept ?? undefined });
        for (let i = 0; i < steps; i++) expect(state().undo()).toBe(true);
        expect(state().plan).toEqual(samplePlan());
        for (let i = 0; i < steps; i++) expect(state().redo()).toBe(true);
        expect(state().plan).toEqual(last);
      }),
      { numRuns: 150, seed: 4 },
    );
  });
});
