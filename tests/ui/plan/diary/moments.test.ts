import { describe, expect, it } from "vitest";
import type { Plan } from "../../../../src/core/plan/document.ts";
import { solid, solved } from "../../../../src/state/derived.ts";
import { momentsOf } from "../../../../src/ui/plan/diary/moments.ts";
import { shownAt } from "../../../../src/ui/plan/diary/shown.ts";

const PLAN: Plan = {
  format: "glintwright-plan",
  version: 1,
  name: "diary",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [
    {
      id: "a",
      name: "a",
      side: "front",
      armAngleDeg: 20,
      count: 8,
      startDeg: 0,
      depth: { rule: "edge", mm: 4 },
    },
  ],
};
const finished = solved(PLAN);
const moments = momentsOf(finished);

describe("the diary of the work", () => {
  it("has one moment a facet, in cutting order, and knows the last of a tier", () => {
    expect(moments.map((m) => m.facetId)).toEqual(finished.facets.map((f) => f.id));
    expect(moments.filter((m) => m.isLastOfTier).map((m) => m.count)).toEqual([8]);
  });

  it("shows the first facet as a whole circle: 2 sqrt(R^2 - h^2) wide", () => {
    const h = finished.planes[0].h;
    expect(moments[0].widthMm).toBeCloseTo(2 * 15 * Math.sqrt(1 - h * h), 9);
  });

  it("shows each facet at least as wide as it ends, and the last just as wide", () => {
    const ends = solid(PLAN).facets.map((f) => f.width * 15);
    moments.forEach((m, i) => {
      expect(m.widthMm).toBeGreaterThanOrEqual(ends[i] - 1e-9);
    });
    expect(moments[7].widthMm).toBeCloseTo(ends[7], 9);
    expect(moments[0].widthMm).toBeGreaterThan(ends[0] + 0.1);
  });

  it("leaves facets to come uncut, and each in its place in the list", () => {
    const { solid: then, solved: half } = shownAt(finished, 3);
    expect(then.facets.map((f) => f.swallowed)).toEqual([false, false, false, true, true, true, true, true]);
    expect(half.planes).toHaveLength(8);
    expect(then.facets[2].width).toBeCloseTo(moments[2].widthMm / 15, 9);
  });

  it("begins with the whole marble and ends with the finished piece", () => {
    expect(shownAt(finished, 0).solid.skinArea).toBeCloseTo(4 * Math.PI, 9);
    expect(shownAt(finished, 8).solid.volume).toBeCloseTo(solid(PLAN).volume, 12);
  });
});
