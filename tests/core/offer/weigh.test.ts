import { describe, expect, it } from "vitest";
import { workTime } from "../../../src/core/offer/offer.ts";
import { weigh } from "../../../src/core/offer/weigh.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, tier } from "../bench/plans.ts";

/** Half a ball's height lost on one side leaves h^2 (3R - h) pi / 3 with h = 1.5 R (textbook: the spherical cap). */
const capMm3 = (radius: number, height: number) => (Math.PI * height ** 2 * (3 * radius - height)) / 3;

describe("what a plan takes and gives", () => {
  const own = plan([tier({ count: 1, armAngleDeg: 90, depth: { rule: "depth", mm: 7.5 } })]);
  it("is its hours at the bench, its weight by hand, and what is measured of its look", () => {
    const { time, grams, measures } = weigh(own);
    expect(time).toEqual(workTime(solvePlan(own)));
    // 30 mm across, borosilicate of 2.23 g/cm3
    expect(own.piece).toMatchObject({ diameterMm: 30, glass: "borosilicate" });
    expect(grams).toBeCloseTo((capMm3(15, 22.5) / 1000) * 2.23, 9);
    expect(measures).toMatchObject({ facets: 1, tiers: 1 });
    expect(measures?.skinShare).toBeCloseTo(0.75, 9);
  });

  it("has neither weight nor look where nothing of the piece is left", () => {
    const gone = plan([tier({ count: 2, armAngleDeg: 0, depth: { rule: "depth", mm: 16 } })]);
    expect(weigh(gone)).toMatchObject({ grams: null, measures: null });
  });
});
