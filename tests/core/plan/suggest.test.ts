import { describe, expect, it } from "vitest";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import type { DepthRule, Plan, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { countsThatFit, edgeAngle, suggestFor, touchAngle } from "../../../src/core/plan/suggest.ts";

const tier = (id: string, armAngleDeg: number, startDeg: number, depth: DepthRule, count = 8): Tier => ({
  id,
  name: id,
  side: "front",
  armAngleDeg,
  count,
  startDeg,
  depth,
});
const planOf = (stops: number | null, ...tiers: Tier[]): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "suggest",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: stops },
  tiers,
});
const girdle = tier("a", 0, 0, { rule: "touch" });
const crown = tier("b", 38, 22.5, { rule: "depth", mm: 0.9 });
const plan = planOf(96, girdle, crown);
const offers = [...suggestFor(plan, 1, { edgeMm: 1.5 })].flat();
const solvedWith = (t: Tier) => solvePlan(planOf(96, girdle, t));

describe("counts and angles that work", () => {
  it("offers only counts that the wheel divides", () => {
    expect(countsThatFit(plan, crown)).toEqual([3, 4, 6, 8, 12, 16, 24, 32, 48]);
    expect(countsThatFit(planOf(80), crown)).toEqual([4, 5, 8, 10, 16, 20, 40]);
    expect(new Set(offers.map((o) => 96 % o.count))).toEqual(new Set([0]));
  });

  it("offers angles whose facets just touch at the depth they have", () => {
    const touching = offers.filter((o) => o.kind === "touch");
    expect(touching.length).toBeGreaterThan(1);
    for (const { tier: t, depthMm } of touching) {
      expect(solvedWith(t).tiers[1].depthMm).toBe(depthMm);
      expect(Math.abs(depthMm - 0.9)).toBeLessThan(0.01);
    }
  });

  it("offers angles whose facets share an edge of the length wished", () => {
    const sharing = offers.filter((o) => o.kind === "edge");
    expect(sharing.length).toBeGreaterThan(0);
    for (const { tier: t } of sharing) {
      const solved = solvedWith(t);
      const { first, count } = solved.tiers[1];
      const edge = cutBall(solved.planes).edges.find((e) => e.a === first && e.b === first + 1);
      expect((edge?.length ?? 0) * 15).toBeCloseTo(1.5, 6);
      expect(count).toBe(t.count);
    }
  });

  it("offers angles that come to the corners of the tier before without passing any", () => {
    const atCorners = offers.filter((o) => o.kind === "corners");
    expect(atCorners.map((o) => o.count)).toContain(8);
    for (const { tier: t } of atCorners) {
      expect(solvedWith(t).findings.map((f) => f.code)).not.toContain("overshoot");
      expect(t.depth).toEqual({ rule: "corners", of: "a" });
    }
  });

  it("offers the angle that touches just at the corners: 8 facets over 8, where four planes come to one point", () => {
    const both = offers.find((o) => o.kind === "touch-at-corners" && o.count === 8);
    expect(both).toBeDefined();
    const touch = solvedWith({ ...both!.tier, depth: { rule: "touch" } }).tiers[1].depthMm;
    expect(both!.depthMm).toBeCloseTo(touch, 6);
  });

  it("agrees with the plane geometry of a regular pyramid for angles that touch", () => {
    // h = cos(delta / 2) and sin(delta / 2) = cos a sin(pi / n)
    const deg = touchAngle(12, 0.97)!;
    const half = Math.asin(Math.cos((deg * Math.PI) / 180) * Math.sin(Math.PI / 12));
    expect(Math.cos(half)).toBeCloseTo(0.97, 12);
    expect(touchAngle(3, 0.2)).toBeNull();
    expect(edgeAngle(12, 0.97, 0)).toBeCloseTo(deg, 12);
    expect(edgeAngle(12, 0.97, 2)).toBeNull();
  });

  it("begins with none that takes facets away, and says of the others how many they take", () => {
    // eight of 55 degrees that just touched at this depth, at 35.7 degrees, emptied both rings beside them
    const rings = [
      girdle,
      tier("b", 35, 22.5, { rule: "close", to: "a" }),
      tier("c", 55, 0, { rule: "close", to: "b" }),
      tier("d", 75, 22.5, { rule: "close", to: "c" }),
    ];
    const found = [...suggestFor(planOf(96, ...rings), 2, { edgeMm: 2 })].flat();
    const gone = found.map((o) => o.gone);
    expect(gone[0]).toBe(0);
    expect(gone).toEqual([...gone].sort((x, y) => x - y));
    const steep = found.find((o) => o.kind === "touch" && o.count === 8);
    expect(steep?.armAngleDeg).toBeCloseTo(35.7, 1);
    for (const { tier: t, gone: told } of found) {
      const solved = solvePlan(planOf(96, ...rings.with(2, t)));
      const { facets } = cutBall(solved.planes);
      expect(facets.filter((f) => f.swallowed).length).toBe(told);
    }
    expect(steep?.gone).toBe(16);
  });
});
