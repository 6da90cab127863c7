/** Strokes after Preston: constant volume a stroke, in proportion to surface speed. */
import { describe, expect, it } from "vitest";
import { benchOf } from "../../../src/core/bench/bench.ts";
import { strokeCurve } from "../../../src/core/bench/stages/stroke-curve.ts";
import {
  calibrate,
  capVolume,
  depthOfWidth,
  fitWear,
  guessRemoval,
  strokesFor,
  strokeVolume,
  wearFindings,
  wornRate,
} from "../../../src/core/bench/stages/strokes.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { foundIn } from "../../fixtures/found.ts";
import { plan, RIG, tier } from "./plans.ts";

const TEST = { strokes: 20, widthMm: 6 };

describe("strokes", () => {
  it("calibrates from one test facet as worked by hand", () => {
    // d = 15 - sqrt(225 - 9) = 0.303062; V = pi d^2 (45 - d) / 3 = 4.2990 mm3; 20 strokes: 0.21495 mm3 each.
    expect(depthOfWidth(15, 6)).toBeCloseTo(0.303062, 6);
    expect(capVolume(15, 6)).toBeCloseTo(4.299, 3);
    const removal = calibrate({ calibration: [TEST] }, 15)!;
    expect(removal.mm3PerStroke).toBeCloseTo(0.21495, 5);
    expect(removal.spread).toBeNull();
    expect(removal.isGuess).toBe(false);
  });

  it("counts strokes of a facet as worked by hand", () => {
    const rig = { stages: [{ id: "s", name: "s", grainUm: 30, calibration: [TEST] }] };
    const bench = benchOf(solvePlan(plan([tier({ count: 1, depth: { rule: "depth", mm: 0.3375 } })], rig)));
    // V = pi 0.3375^2 (45 - 0.3375) / 3 = 5.3274 mm3; / 0.21495 = 24.78 strokes.
    expect(bench.tiers[0].facets[0].stages[0].removeMm3).toBeCloseTo(5.3274, 3);
    expect(bench.tiers[0].facets[0].stages[0].strokes).toBeCloseTo(24.78, 2);
    expect(bench.tiers[0].stages[0].strokes).toBeCloseTo(24.78, 2);
  });

  it("scales with surface speed at the contact radius", () => {
    // Tested 30 mm from the axis, the band's middle is 60: twice the speed, twice the glass a stroke.
    const removal = calibrate({ calibration: [{ ...TEST, radiusMm: 30 }] }, 15, RIG.lap)!;
    expect(removal.atRadiusMm).toBe(60);
    expect(removal.mm3PerStroke).toBeCloseTo(2 * 0.21495, 4);
    expect(strokeVolume(removal, 30)).toBeCloseTo(0.21495, 5);
    expect(strokesFor(10, removal, 45)).toBeCloseTo((4 / 3) * strokesFor(10, removal, 60), 9);
  });

  it("fits several test facets by least squares and tells their spread", () => {
    // Volumes for 10 and 30 strokes: rates r1, r2 give c = (100 r1 + 900 r2) / 1000.
    const tests = [
      { strokes: 10, widthMm: 5 },
      { strokes: 30, widthMm: 6.5 },
    ];
    const [r1, r2] = tests.map((t) => capVolume(15, t.widthMm) / t.strokes);
    const removal = calibrate({ calibration: tests }, 15)!;
    const c = (100 * r1 + 900 * r2) / 1000;
    expect(removal.mm3PerStroke).toBeCloseTo(c, 12);
    expect(removal.spread).toBeCloseTo(Math.sqrt((r1 / c - 1) ** 2 + (r2 / c - 1) ** 2), 12);
  });

  it("counts only the glass between two widths of one test", () => {
    const removal = calibrate({ calibration: [{ strokes: 5, fromWidthMm: 6, widthMm: 7 }] }, 15)!;
    expect(removal.mm3PerStroke).toBeCloseTo((capVolume(15, 7) - capVolume(15, 6)) / 5, 12);
    expect(calibrate({ calibration: [{ strokes: 5, fromWidthMm: 7, widthMm: 7 }] }, 15)).toBeNull();
    expect(calibrate({ calibration: undefined }, 15)).toBeNull();
  });

  it("leaves strokes null where nothing was calibrated, and labels a guess as one", () => {
    const rig = { stages: [{ id: "s", name: "s", grainUm: 30 }] };
    const bench = benchOf(solvePlan(plan([tier()], rig)));
    expect(bench.tiers[0].facets[0].stages[0].strokes).toBeNull();
    expect(bench.order[0].minutesAreGuess).toBe(true);
    expect(guessRemoval(rig.stages[0]).isGuess).toBe(true);
  });

  it("guesses for cerium oxide within a factor of two of k F v", () => {
    // Preston's k about 5e-13 1/Pa (optics literature in general, from memory), 5 N, 1 m/s, one second: 0.0025 mm3.
    const expected = 5e-13 * 5 * 1 * 1e9;
    const guess = guessRemoval({ id: "p", name: "p", grainUm: 1.5 }).mm3PerStroke;
    expect(guess / expected).toBeGreaterThan(0.5);
    expect(guess / expected).toBeLessThan(2);
  });

  it("lets depth grow ever slower with strokes", () => {
    const solved = solvePlan(plan([tier({ count: 1, depth: { rule: "depth", mm: 1 } })]));
    const curve = strokeCurve(solved, [0], 0, 1, calibrate({ calibration: [TEST] }, 15)!, null, 9);
    expect(curve[0]).toEqual({ strokes: 0, depthMm: 0, widthMm: 0 });
    expect(curve[8].depthMm).toBeCloseTo(1, 12);
    const rates = curve
      .slice(1)
      .map((p, i) => (p.depthMm - curve[i].depthMm) / (p.strokes - curve[i].strokes));
    for (const [i, rate] of rates.slice(1).entries()) expect(rate).toBeLessThan(rates[i]);
  });

  /** A disc of half life 400 strokes: 20 mm3 new over 100 strokes, and so on, as test facets would show it. */
  const worn = (discStrokes: number, strokes = 40) => {
    const rate = 0.2 * 2 ** (-(discStrokes + strokes / 2) / 400);
    // The width whose cap holds what these strokes took, by bisection.
    let [low, high] = [0, 30];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (capVolume(15, middle) < rate * strokes) low = middle;
      else high = middle;
    }
    return { strokes, widthMm: low, discStrokes };
  };

  it("takes the rate of the worn disc when tests say how old it was", () => {
    const calibration = [worn(0), worn(300), worn(700)];
    const latest = calibrate({ calibration }, 15)!;
    expect(latest.wear?.halfLifeStrokes).toBeCloseTo(400, 6);
    expect(latest.discStrokes).toBe(740);
    expect(latest.mm3PerStroke).toBeCloseTo(0.2 * 2 ** (-740 / 400), 9);
    expect(calibrate({ calibration, discStrokes: 400 }, 15)!.mm3PerStroke).toBeCloseTo(0.1, 9);
    expect(latest.spread).toBeCloseTo(0, 6);
  });

  it("takes no wear from tests that don't say the disc's age, or were all made at one", () => {
    const silent = [worn(0), worn(300)].map(({ strokes, widthMm }) => ({ strokes, widthMm }));
    expect(calibrate({ calibration: silent }, 15)!.wear).toBeNull();
    expect(calibrate({ calibration: [worn(300), worn(300)] }, 15)!.wear).toBeNull();
    expect(calibrate({ calibration: [worn(0), worn(300)] }, 15)!.spread).toBeNull();
  });

  it("warns when a disc dulls over the planned strokes", () => {
    const stage = { id: "s1", name: "Coarse", grainUm: 75, calibration: [worn(0), worn(300)] };
    const removal = calibrate(stage, 15)!;
    // 2^(-400 / 400) = 50 % of what it takes now.
    const [finding] = foundIn(wearFindings([stage], [removal], [400]), "disc-dulls");
    expect(finding).toMatchObject({ code: "disc-dulls", data: { stage: "s1" } });
    expect(finding.data.share).toBeCloseTo(0.5, 9);
    expect(wearFindings([stage], [removal], [20])).toEqual([]);
    expect(wearFindings([stage], [null], [400])).toEqual([]);
  });

  it("finds a disc's half life from tests at different ages", () => {
    const tests = [0, 100, 300].map((discStrokes) => ({
      discStrokes,
      mm3PerStroke: 0.2 * 2 ** (-discStrokes / 400),
    }));
    const wear = fitWear(tests)!;
    expect(wear.halfLifeStrokes).toBeCloseTo(400, 6);
    expect(wornRate(wear, 400)).toBeCloseTo(0.1, 9);
    expect(fitWear([tests[0], tests[0]])).toBeNull();
    // A disc that seems to sharpen is taken as not wearing.
    expect(fitWear([tests[1], { discStrokes: 200, mm3PerStroke: 1 }])?.halfLifeStrokes).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});
