/** Drawn outlines: every point lies on its plane, and arcs on the ball. */
import { describe, expect, it } from "vitest";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { dot, length, sub, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { EXAMPLES } from "../../../src/ui/examples.ts";
import { arcPoints, outlinePoints } from "../../../src/ui/piece/outline-points.ts";

describe.each(EXAMPLES.map((plan) => [plan.name, plan] as const))("%s", (_, plan) => {
  const { facets } = cutBall(solvePlan(plan).planes);
  it("draws outlines in their planes and inside the ball", () => {
    for (const facet of facets)
      for (const point of outlinePoints(facet)) {
        expect(Math.abs(dot(facet.plane.n, point) - facet.plane.h)).toBeLessThan(1e-12);
        expect(length(point)).toBeLessThan(1 + 1e-12);
      }
  });
  it("draws each arc as long as its closed form says, to a thousandth", () => {
    for (const facet of facets)
      for (const piece of facet.outline.filter(({ kind }) => kind === "arc")) {
        const points = arcPoints(facet.plane, piece.from, piece.to, 0.02);
        const drawn = points.slice(1).reduce((sum, p, i) => sum + length(sub(p, points[i])), 0);
        expect(Math.abs(drawn - piece.length)).toBeLessThan(1e-3 * piece.length + 1e-12);
      }
  });
});

it("draws a whole circle when both ends are one place", () => {
  const at: Vec3 = [0.8, 0, 0.6];
  const points = arcPoints({ n: [0, 0, 1], h: 0.6 }, at, at);
  expect(points.length).toBeGreaterThan(60);
  expect(points[Math.round((points.length - 1) / 2)][0]).toBeCloseTo(-0.8, 6);
});
