import { describe, expect, it } from "vitest";
import { seeded } from "../../../src/core/bench/chances/chance.ts";
import { createSimulation } from "../../../src/core/bench/chances/simulate.ts";
import type { SpreadSetting } from "../../../src/core/bench/chances/spread.ts";
import { workTime } from "../../../src/core/offer/offer.ts";
import { minutesByChance, timeSpreadOf } from "../../../src/core/offer/time-spread.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, tier } from "../bench/plans.ts";

const STEADY: SpreadSetting = {
  armDeg: 0,
  stopDeg: 0,
  depthMm: 0,
  widthMm: 0,
  runOutMm: { front: 0, back: 0 },
  semiAxesMm: [15, 15, 15],
};
const spreadOf = (own: Plan, spread: Partial<SpreadSetting>, pieces = 40) => {
  const sim = createSimulation(solvePlan(own), { ...STEADY, ...spread }, "depth");
  const random = seeded(7);
  return timeSpreadOf(Array.from({ length: pieces }, () => minutesByChance(sim, random)));
};

const ring = plan([tier({ count: 12, armAngleDeg: 20, depth: { rule: "touch" } })]);
const apart = plan([tier({ count: 4, armAngleDeg: 20, depth: { rule: "depth", mm: 0.5 } })]);

describe("how far the hours stray", () => {
  it("is not at all where the hand never strays, and then what the bench says", () => {
    for (const own of [ring, apart]) {
      const { minutes, lost } = spreadOf(own, {});
      const said = workTime(solvePlan(own)).minutes ?? 0;
      expect(lost).toBe(0);
      expect(minutes?.[0]).toBeCloseTo(said, 6);
      expect(minutes?.[1]).toBeCloseTo(said, 6);
    }
  });

  it("grows with the spread of the depth, about the planned time where nothing has to meet", () => {
    const said = workTime(solvePlan(apart)).minutes ?? 0;
    const width = (depthMm: number) => {
      const [low, high] = spreadOf(apart, { depthMm }).minutes ?? [0, 0];
      expect(low).toBeLessThan(said);
      expect(high).toBeGreaterThan(said);
      return high - low;
    };
    expect(width(0.1)).toBeGreaterThan(3 * width(0.02));
  });

  it("is longer than planned where facets must meet: what stopped short is ground on", () => {
    const said = workTime(solvePlan(ring)).minutes ?? 0;
    const [low] = spreadOf(ring, { depthMm: 0.1 }).minutes ?? [0];
    expect(low).toBeGreaterThan(said);
  });

  it("takes the tenth and the ninetieth of a hundred, and counts those that are lost", () => {
    const each = Array.from({ length: 101 }, (_, k) => 100 - k);
    expect(timeSpreadOf([...each, null, null])).toEqual({ pieces: 103, lost: 2, minutes: [10, 90] });
    expect(timeSpreadOf([null])).toEqual({ pieces: 1, lost: 1, minutes: null });
    expect(timeSpreadOf([7]).minutes).toEqual([7, 7]);
  });
});
