/** Pieces cut by chance against closed-form propagation of small errors. */
import { describe, expect, it } from "vitest";
import { seeded } from "../../../src/core/bench/chances/chance.ts";
import { addTallies, chancesOf, runTrials } from "../../../src/core/bench/chances/chances.ts";
import { gapVariances, sourcesByWeight, supportVariance } from "../../../src/core/bench/chances/propagate.ts";
import { createSimulation } from "../../../src/core/bench/chances/simulate.ts";
import {
  type SpreadSetting,
  type StopBy,
  semiAxes,
  spreadOf,
} from "../../../src/core/bench/chances/spread.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, tier } from "./plans.ts";

const NONE: SpreadSetting = {
  armDeg: 0,
  stopDeg: 0,
  depthMm: 0,
  widthMm: 0,
  runOutMm: { front: 0, back: 0 },
  semiAxesMm: [15, 15, 15],
};
/** Two rings that touch within themselves and each other's circles overlap: pairs of one tier and of two. */
const two = solvePlan(
  plan([
    tier({ depth: { rule: "touch" } }),
    tier({ id: "upper", armAngleDeg: 48, startDeg: 15, depth: { rule: "close", to: "belt" } }),
  ]),
);
const ring = solvePlan(plan([tier({ depth: { rule: "touch" } })]));

function gapSds(spread: SpreadSetting, stopBy: StopBy, trials: number, solved = two) {
  const sim = createSimulation(solved, spread, stopBy);
  const chances = chancesOf(sim, runTrials(sim, trials, seeded(7)));
  const expected = sim.pairs.map((pair) =>
    Math.sqrt(Object.values(gapVariances(sim, pair)).reduce((sum, v) => sum + v, 0)),
  );
  return { measured: chances.pairs.map((p) => p.gapSdMm), expected };
}

/** Means over all pairs agree within this fraction: several times the chance error of the trials made. */
const AGREE = 0.06;
const mean = (xs: readonly number[]) => xs.reduce((s, x) => s + x, 0) / xs.length;

describe("simulation of the artist's spread", () => {
  it.each([
    ["arm angle", { ...NONE, armDeg: 0.05 }],
    ["play of the stop", { ...NONE, stopDeg: 0.05 }],
    ["depth", { ...NONE, depthMm: 0.005 }],
    ["run-out of the dop", { ...NONE, runOutMm: { front: 0.02, back: 0 } }],
    ["out-of-round", { ...NONE, semiAxesMm: [15.01, 15, 14.99] as const }],
  ])("moves gaps by %s as the closed form says, stopping by depth", (_, spread) => {
    const { measured, expected } = gapSds(spread, "depth", 2500);
    expect(mean(measured)).toBeGreaterThan(0);
    expect(Math.abs(mean(measured) / mean(expected) - 1)).toBeLessThan(AGREE);
    measured.forEach((sd, i) => {
      expect(Math.abs(sd - expected[i])).toBeLessThan(AGREE * 2 * Math.max(...expected));
    });
  });

  it("moves gaps by width as the closed form says, stopping by width", () => {
    const { measured, expected } = gapSds({ ...NONE, widthMm: 0.01 }, "width", 1000, ring);
    expect(Math.abs(mean(measured) / mean(expected) - 1)).toBeLessThan(AGREE);
  });

  it("follows the skin when stopping by width: out-of-round and run-out hardly move a gap", () => {
    const spread = {
      ...NONE,
      semiAxesMm: [15.05, 15, 14.95] as const,
      runOutMm: { front: 0.1, back: 0.1 },
    };
    const moved = (stopBy: StopBy) => mean(gapSds(spread, stopBy, 100, ring).measured);
    expect(moved("width")).toBeLessThan(0.05 * moved("depth"));
  });

  it("gives the plan itself when nothing spreads", () => {
    for (const stopBy of ["depth", "width"] as const) {
      const sim = createSimulation(two, NONE, stopBy);
      const chances = chancesOf(sim, runTrials(sim, 3, seeded(1)));
      expect(chances.allMeet).toBe(1);
      expect(chances.marginMm).toBe(0);
    }
  });

  it("names a margin with which about 95 in 100 pieces meet", () => {
    const spread = { ...NONE, depthMm: 0.05, stopDeg: 0.1 };
    const sim = createSimulation(ring, spread, "depth");
    const before = chancesOf(sim, runTrials(sim, 1000, seeded(3)));
    expect(before.allMeet).toBeLessThan(0.2);
    const deeper = solvePlan(
      plan([tier({ depth: { rule: "depth", mm: ring.tiers[0].depthMm + before.marginMm! } })]),
    );
    const after = createSimulation(deeper, spread, "depth");
    const share = chancesOf(after, runTrials(after, 1000, seeded(4))).allMeet;
    // Binomial error at 0.95 of 1000 is 0.007; the margin itself has about as much.
    expect(Math.abs(share - 0.95)).toBeLessThan(0.03);
  });

  it("counts the same in chunks as at one go", () => {
    const sim = createSimulation(ring, spreadOf(ring.plan), "depth");
    const random = seeded(11);
    const chunks = addTallies(runTrials(sim, 20, random), runTrials(sim, 30, random));
    const whole = runTrials(sim, 50, seeded(11));
    expect(chunks.marginsMm).toEqual(whole.marginsMm);
    expect(chunks.met).toEqual(whole.met);
    expect(chancesOf(sim, chunks).allMeet).toBe(chancesOf(sim, whole).allMeet);
  });

  it("puts the setting that moves gaps most first", () => {
    const sim = createSimulation(two, { ...NONE, depthMm: 0.1, stopDeg: 0.01 }, "depth");
    expect(sourcesByWeight(sim)[0].source).toBe("depth");
    const loose = createSimulation(two, { ...NONE, depthMm: 0.001, stopDeg: 1 }, "depth");
    expect(sourcesByWeight(loose)[0].source).toBe("stopPlay");
  });

  it("takes three half-diameters from however many were measured", () => {
    const one = plan([]);
    expect(semiAxes(one)).toEqual([15, 15, 15]);
    expect(semiAxes({ ...one, piece: { ...one.piece, otherDiametersMm: [30.4] } })).toEqual([15, 15.2, 15.1]);
    expect(supportVariance([15, 15, 15])).toBeCloseTo(0, 9);
  });
});
