/** After a mishap: what matching a deep facet costs, and the smallest recut that takes a chip away. */
import { describe, expect, it } from "vitest";
import { matchTooDeep, placeOnFacet, recutsFor } from "../../../src/core/bench/as-cut/mend-cut.ts";
import { dot, scale } from "../../../src/core/geometry/vec.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, tier } from "./plans.ts";

const own = plan([
  tier({ depth: { rule: "edge", mm: 3 } }),
  tier({ id: "upper", armAngleDeg: 45, startDeg: 15, depth: { rule: "close", to: "belt" } }),
]);
const solved = solvePlan(own);

describe("a facet too deep", () => {
  it("brings its tier down to it and lets the next follow, with what it costs", () => {
    const depth = solved.tiers[0].depthMm + 0.2;
    const mended = matchTooDeep(own, 0, depth);
    expect(mended.changes.map((c) => c.tier)).toEqual(["belt", "upper"]);
    expect(mended.changes[0].deeperMm).toBeCloseTo(0.2, 9);
    // The belt closes further up now, so the tier still to cut needs less depth than planned.
    expect(mended.changes[1].deeperMm).toBeLessThan(0);
    expect(mended.stillMeets).toBe(true);
    expect(solvePlan(mended.plan).tiers[1].depthMm).toBeCloseTo(mended.changes[1].depthMm, 12);
  });

  it("names the pairs that are lost where the other tier's depth is fixed", () => {
    const stiff = plan([
      own.tiers[0],
      tier({
        id: "upper",
        armAngleDeg: 45,
        startDeg: 15,
        depth: { rule: "depth", mm: solved.tiers[1].depthMm },
      }),
    ]);
    const shallower = matchTooDeep(stiff, 1, solved.tiers[1].depthMm + 4);
    expect(shallower.stillMeets).toBe(false);
    expect(shallower.lost.length).toBeGreaterThan(0);
  });
});

describe("a chip", () => {
  it("is taken by going exactly as deep as the chip in the middle of a facet", () => {
    const at = placeOnFacet(solved, 0, 0, 0);
    const [best] = recutsFor(own, { at, depthMm: 0.3, diameterMm: 0 });
    expect(best.tier).toBe("belt");
    expect(best.facet).toBe("belt/1");
    expect(best.deeperMm).toBeCloseTo(0.3, 9);
    expect(best.stillMeets).toBe(true);
  });

  it("lies outside the piece after every recut that is offered", () => {
    const at = placeOnFacet(solved, 0, 1.2, 1.5);
    const chip = { at, depthMm: 0.25, diameterMm: 0.8 };
    const recuts = recutsFor(own, chip);
    expect(recuts.length).toBeGreaterThan(1);
    const surface = Math.min(...solved.planes.map((p) => (dot(p.n, at) > 0 ? p.h / dot(p.n, at) : 1)), 1);
    const bottom = scale(at, surface - 0.25 / 15);
    for (const recut of recuts) {
      const after = solvePlan(recut.plan);
      // Glass can't be put back on the finished piece.
      after.tiers.forEach((t, i) => {
        expect(t.depthMm).toBeGreaterThanOrEqual(solved.tiers[i].depthMm - 1e-9);
      });
      expect(recut.removedMm3).toBeGreaterThan(0);
      expect(after.planes.some((p) => dot(p.n, bottom) >= p.h - 1e-9)).toBe(true);
    }
    const meeting = recuts.filter((r) => r.stillMeets).map((r) => r.removedMm3);
    expect(meeting).toEqual([...meeting].sort((a, b) => a - b));
  });

  it("asks for more when the chip is wider", () => {
    const at = placeOnFacet(solved, 0, 1, 0);
    const deeper = (diameterMm: number) => recutsFor(own, { at, depthMm: 0.2, diameterMm })[0].deeperMm;
    expect(deeper(1)).toBeGreaterThan(deeper(0));
  });

  it("says which recut breaks into the inside, and offers it last", () => {
    // A ball that stands clear of the belt and of the ring above by 0.2 mm, the chip 0.5 mm deep.
    const clear = Math.min(...solved.planes.map((p) => p.h)) * solved.radiusMm - 0.2;
    const core = { kind: "core", diameterMm: 2 * clear, rgb: [1, 0, 0] } as const;
    const filled = { ...own, piece: { ...own.piece, inside: [core] } };
    const at = placeOnFacet(solved, 0, 0, 0);
    const recuts = recutsFor(filled, { at, depthMm: 0.5, diameterMm: 0 });
    expect(recuts.length).toBeGreaterThan(0);
    for (const recut of recuts) {
      const least = Math.min(...solvePlan(recut.plan).planes.map((p) => p.h)) * solved.radiusMm;
      expect(recut.intoInsideMm).toBeCloseTo(least < clear ? clear - least : 0, 6);
    }
    expect(recuts.some((recut) => recut.intoInsideMm > 0)).toBe(true);
    const breaks = recuts.map((recut) => recut.intoInsideMm > 0);
    expect(breaks).toEqual([...breaks].sort((a, b) => Number(a) - Number(b)));
    expect(recutsFor(own, { at, depthMm: 0.5, diameterMm: 0 }).every((r) => r.intoInsideMm === 0)).toBe(true);
  });

  it("has no recut where no facet faces it", () => {
    expect(recutsFor(own, { at: [0, 0, -1], depthMm: 0.3, diameterMm: 0 })).toEqual([]);
  });
});
