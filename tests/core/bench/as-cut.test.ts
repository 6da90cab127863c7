/** What measurements say, what they leave open, and how the plan goes on from there. */
import { describe, expect, it } from "vitest";
import { asCutData, fitAsCut } from "../../../src/core/bench/as-cut/as-cut.ts";
import { type Sym2, solveLeastSquares, variances } from "../../../src/core/bench/as-cut/least-squares.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import type { AsCut, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { foundIn, textOf } from "../../fixtures/found.ts";
import { plan, RIG, tier } from "./plans.ts";

const upper = tier({
  id: "upper",
  name: "Upper",
  armAngleDeg: 45,
  startDeg: 15,
  depth: { rule: "close", to: "belt" },
});
const belt: Tier = tier({ depth: { rule: "edge", mm: 3 } });
const fitBelt = (asCut: AsCut) => fitAsCut(plan([{ ...belt, asCut }, upper], RIG));

/** Lengths of the belt cut at 21.5 degrees and 1 mm, read off the whole solid. */
const solid = cutBall(
  solvePlan(plan([{ ...belt, armAngleDeg: 21.5, depth: { rule: "depth", mm: 1 } }])).planes,
);
const TRUE = {
  widthMm: solid.facets[0].width * 15,
  heightMm: solid.facets[0].height * 15,
  edgeMm: solid.edges[0].length * 15,
  flatToSkinMm: 29,
  sdMm: 0.01,
};

describe("as-cut fit", () => {
  it("finds angle and depth exactly from exact lengths", () => {
    const [fit] = fitBelt(TRUE).tiers;
    expect(fit.armAngleDeg).toBeCloseTo(21.5, 4);
    expect(fit.depthMm).toBeCloseTo(1, 4);
    expect([fit.angleFromPlan, fit.depthFromPlan]).toEqual([false, false]);
    for (const r of fit.residuals) expect(Math.abs(r.residual)).toBeLessThan(1e-3);
  });

  it("takes flat to skin for the depth and the plan's angle when nothing speaks of it", () => {
    const answer = fitBelt({ flatToSkinMm: 29 });
    const [fit] = answer.tiers;
    // 30 - 29 = 1 mm deep, as sure as the calipers; the angle as the plan has it, as sure as 2 degrees.
    expect(fit.depthMm).toBeCloseTo(1, 6);
    expect(fit.depthSdMm).toBeCloseTo(0.1, 3);
    expect(fit.armAngleDeg).toBeCloseTo(20, 4);
    expect(fit.armAngleSdDeg).toBeCloseTo(2, 2);
    expect([fit.angleFromPlan, fit.depthFromPlan]).toEqual([true, false]);
    const [finding] = foundIn(answer.findings, "undetermined");
    expect(finding.data.angleFromPlan).toBe(true);
    expect(textOf(answer.resolved, finding)).toContain("would help most");
    expect(fit.wouldHelp!.armAngleSdDeg).toBeLessThan(1);
  });

  it("rests on the plan alone when nothing was measured", () => {
    const [fit] = fitBelt({}).tiers;
    const planned = solvePlan(plan([belt])).tiers[0].depthMm;
    expect(fit.armAngleDeg).toBeCloseTo(20, 6);
    expect(fit.depthMm).toBeCloseTo(planned, 6);
    expect(fit.armAngleSdDeg).toBeCloseTo(2, 6);
    expect(fit.depthSdMm).toBeCloseTo(Math.max(0.1, 0.2 * planned), 6);
  });

  it("takes an angle that was read for the plan's", () => {
    const [fit] = fitBelt({ readDeg: 26, readSdDeg: 2, flatToSkinMm: 29 }).tiers;
    expect(fit.armAngleDeg).toBeCloseTo(26, 3);
    expect(fit.armAngleSdDeg).toBeCloseTo(2, 3);
    expect(fit.angleFromPlan).toBe(false);
  });

  it("works the angle out from pivot height and arm length", () => {
    // h = 14: sin a = (87.3 - 14) / 212.8 gives 20.149 degrees.
    const [fit] = fitBelt({ pivotHeightMm: 87.3, armLengthMm: 212.8, flatToSkinMm: 29 }).tiers;
    expect(fit.armAngleDeg).toBeCloseTo((Math.asin(73.3 / 212.8) * 180) / Math.PI, 2);
    expect(fit.armAngleSdDeg).toBeLessThan(0.1);
  });

  it("fixes the cut tier and solves the one still to cut so that it closes on it", () => {
    const { resolved, solved } = fitBelt(TRUE);
    expect(resolved.tiers[0].depth.rule).toBe("depth");
    expect(resolved.tiers[0].armAngleDeg).toBeCloseTo(21.5, 4);
    expect(resolved.tiers[1].depth).toEqual({ rule: "close", to: "belt" });
    expect(solved.tiers[1].met).toBe(true);
    const before = solvePlan(plan([belt, upper])).tiers[1].depthMm;
    expect(Math.abs(solved.tiers[1].depthMm - before)).toBeGreaterThan(0.01);
    expect(solvePlan(resolved).tiers[1].depthMm).toBe(solved.tiers[1].depthMm);
  });

  it("fits a later tier on the piece as the earlier one was cut", () => {
    const cutUpper: Tier = { ...upper, asCut: { flatToSkinMm: 28.2 } };
    const answer = fitAsCut(plan([{ ...belt, asCut: TRUE }, cutUpper]));
    expect(answer.tiers.map((t) => t.tier)).toEqual(["belt", "upper"]);
    expect(answer.tiers[1].depthMm).toBeCloseTo(1.8, 6);
  });

  it("tells a single facet that is too deep", () => {
    const answer = fitBelt({ ...TRUE, facets: { "belt/4": { flatToSkinMm: 28.2 } } });
    expect(answer.tiers[0].depthMm).toBeCloseTo(1, 4);
    expect(answer.tiers[0].facets[0].depthMm).toBeCloseTo(1.8, 1);
    const finding = answer.findings.find((f) => f.code === "facet-too-deep");
    expect(finding?.facets).toEqual(["belt/4"]);
  });

  it("takes single facets for the tier where no mean was measured", () => {
    const facets = { "belt/1": { flatToSkinMm: 29.1 }, "belt/2": { flatToSkinMm: 28.9 } };
    const [fit] = fitBelt({ facets }).tiers;
    expect(fit.depthMm).toBeCloseTo(1, 6);
    expect(fit.depthSdMm).toBeCloseTo(0.1 / Math.SQRT2, 3);
    expect(fit.residuals.map((r) => r.k)).toEqual([0, 1]);
  });

  it("says when measurements disagree", () => {
    const codes = fitBelt({ ...TRUE, widthMm: TRUE.widthMm + 2 }).findings.map((f) => f.code);
    expect(codes).toContain("measurements-disagree");
  });

  it("leaves out what doesn't exist on a facet alone", () => {
    const flat = tier({
      id: "flat",
      armAngleDeg: 90,
      count: 1,
      asCut: { widthMm: 8, gapMm: 1, acrossMm: 3 },
    });
    const [fit] = fitAsCut(plan([flat])).tiers;
    expect(fit.residuals.map((r) => r.measure)).toEqual(["widthMm"]);
    // 8 mm wide on R = 15: d = 15 - sqrt(225 - 16) = 0.5432 mm.
    expect(fit.depthMm).toBeCloseTo(0.5432, 3);
  });

  it("prints plain data with facet names", () => {
    const data = asCutData(fitBelt({ facets: { "belt/3": { widthMm: 6 } } }));
    expect(data.tiers[0].residuals[0]).toMatchObject({ measure: "widthMm", facet: "belt/3" });
    expect(JSON.parse(JSON.stringify(data)).depths).toHaveLength(2);
  });
});

describe("least squares in two unknowns", () => {
  it("gives variances as the inverse of the information", () => {
    // [[4, 1], [1, 2]] has the inverse [[2, -1], [-1, 4]] / 7.
    const info: Sym2 = { xx: 4, xy: 1, yy: 2 };
    expect(variances(info)[0]).toBeCloseTo(2 / 7, 12);
    expect(variances(info)[1]).toBeCloseTo(4 / 7, 12);
    expect(variances({ xx: 4, xy: 0, yy: 0 })).toEqual([0.25, Number.POSITIVE_INFINITY]);
    expect(variances({ xx: 1, xy: 1, yy: 1 })).toEqual([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]);
  });

  it("solves a bent valley", () => {
    const problem = {
      observations: [
        { residual: ([x]: readonly [number, number]) => 1 - x, sd: 1 },
        { residual: ([x, y]: readonly [number, number]) => 10 * (y - x * x), sd: 1 },
      ],
      steps: [1e-5, 1e-5] as const,
      clamp: (p: readonly [number, number]) => p,
    };
    // Rosenbrock's function has its least value at (1, 1).
    const [x, y] = solveLeastSquares(problem, [-1.2, 1]);
    expect(x).toBeCloseTo(1, 5);
    expect(y).toBeCloseTo(1, 5);
  });
});
