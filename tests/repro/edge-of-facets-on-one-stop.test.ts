/**
 * A count that a small wheel puts twice on one stop: the second facet there takes nothing from the edge of its twin. Rounding
 * made it take all, so the rule said that no edge can be shared, or was met at a depth that was not asked for.
 */
import { describe, expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { bruteForce } from "../plans/brute-force.ts";

const R = 15;
const EDGE_MM = 1;

const planOf = (wheelStops: number, count: number, armAngleDeg: number): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "two on one stop",
  piece: { diameterMm: 2 * R, glass: "borosilicate" },
  rig: { wheelStops },
  tiers: [
    {
      id: "a",
      name: "A",
      side: "front",
      armAngleDeg,
      count,
      startDeg: 0,
      depth: { rule: "edge", mm: EDGE_MM },
    },
  ],
});

const cases = [7, 12].flatMap((wheel) =>
  [16, 20, 24].flatMap((count) => [0, 15, 30, 40, 55, 70, 80].map((arm) => [wheel, count, arm] as const)),
);

describe("an edge asked of more facets than the wheel has stops", () => {
  it.each(cases)("%i stops, %i facets at %i degrees: shares just that edge", (wheel, count, arm) => {
    const { planes, tiers } = solvePlan(planOf(wheel, count, arm));
    expect(tiers[0].met).toBe(true);
    const lengths = bruteForce(planes).edges.map((e) => e.length * R);
    // every stop is taken, so all pairs are as far apart as the widest
    expect(lengths.length).toBeGreaterThanOrEqual(wheel);
    for (const length of lengths) expect(length).toBeCloseTo(EDGE_MM, 6);
  });
});
