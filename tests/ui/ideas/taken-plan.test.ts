import { expect, it } from "vitest";
import type { Plan } from "../../../src/core/plan/document.ts";
import { takenPlan } from "../../../src/ui/ideas/taken-plan.ts";

const plan = (diameterMm: number, wheelStops: number | null, count: number): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: `of ${diameterMm}`,
  piece: { diameterMm, glass: "borosilicate" },
  rig: { wheelStops },
  tiers: [
    { id: "a", name: "", side: "front", armAngleDeg: 40, count, startDeg: 0, depth: { rule: "touch" } },
  ],
});

it("an idea takes the place of the tiers on the bench, and what work stood at is gone with them", () => {
  const bench = { ...plan(30, 96, 8), notes: "mine", work: { tier: "a", stage: "s", facet: "a/1" } } as Plan;
  const { plan: taken, isWhole } = takenPlan(bench, plan(30, 96, 12));
  expect(isWhole).toBe(false);
  const { work: _, ...rest } = bench;
  expect(taken).toEqual({ ...rest, tiers: plan(30, 96, 12).tiers });
});

it("one for another glass, or for a side cemented at another zero, brings both along too", () => {
  const bench = plan(30, 96, 8);
  const idea = plan(30, 96, 12);
  const glass = { ...idea, piece: { ...idea.piece, glass: "soda-lime" } } as Plan;
  expect(takenPlan(bench, glass)).toMatchObject({ isWhole: true, plan: { piece: glass.piece } });
  const zero = { ...idea, rig: { ...idea.rig, setUps: { back: { zeroDeg: 7.5 } } } } as Plan;
  expect(takenPlan(bench, zero)).toMatchObject({ isWhole: true, plan: { rig: zero.rig } });
});

it.each([
  [40, 96],
  [30, 80],
  [30, null],
])(
  "one for a marble of %s mm and a wheel of %s brings both along: elsewhere it wouldn't meet",
  (diameterMm, stops) => {
    const idea = plan(diameterMm, stops, 12);
    const { plan: taken, isWhole } = takenPlan(plan(30, 96, 8), idea);
    expect(isWhole).toBe(true);
    expect(taken).toEqual({ ...idea, name: "of 30" });
  },
);
