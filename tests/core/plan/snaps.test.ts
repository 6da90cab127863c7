import { describe, expect, it } from "vitest";
import type { DepthRule, Plan, Tier } from "../../../src/core/plan/document.ts";
import { angleSnaps, depthSnaps, rootBetween, type Snap, startSnap } from "../../../src/core/plan/snaps.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";

const tier = (id: string, armAngleDeg: number, startDeg: number, depth: DepthRule, count = 8): Tier => ({
  id,
  name: id,
  side: "front",
  armAngleDeg,
  count,
  startDeg,
  depth,
});
const planOf = (...tiers: Tier[]): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "snaps",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers,
});
const all = (snaps: Iterable<Snap | null>): Snap[] => [...snaps].filter((s) => s !== null);
const named = (snaps: readonly Snap[], kind: string): Snap[] =>
  snaps.filter(({ name }) => (name.kind === "rule" ? name.rule.rule : name.kind) === kind);

const girdle = tier("a", 0, 0, { rule: "touch" });
const crown = tier("b", 38, 22.5, { rule: "depth", mm: 1 });

describe("snaps of the depth", () => {
  it("finds where facets just touch: R (1 - cos(delta / 2)), sin(delta / 2) = cos a sin(pi / n)", () => {
    const [touch] = named(all(depthSnaps(planOf(crown), 0)), "touch");
    const half = Math.asin(Math.cos((38 * Math.PI) / 180) * Math.sin(Math.PI / 8));
    expect(touch.value).toBeCloseTo(15 * (1 - Math.cos(half)), 9);
    expect(touch.depth).toEqual({ rule: "touch" });
  });

  it("gives for every rule the depth that the plan is solved to with that rule", () => {
    const plan = planOf(girdle, crown);
    const snaps = all(depthSnaps(plan, 1));
    expect(snaps.map((s) => s.depth?.rule).sort()).toEqual(["close", "corners", "touch"]);
    for (const snap of snaps) {
      const taken = planOf(girdle, { ...crown, depth: snap.depth! });
      expect(solvePlan(taken).tiers[1].depthMm).toBeCloseTo(snap.value, 9);
    }
  });

  it("offers no touching to one facet alone", () => {
    const single = tier("table", 90, 0, { rule: "depth", mm: 2 }, 1);
    expect(all(depthSnaps(planOf(single), 0))).toEqual([]);
  });
});

describe("snaps of the arm angle", () => {
  it("finds where the depth it has makes the facets touch, and takes on that rule", () => {
    const [touch] = named(
      all(angleSnaps(planOf({ ...crown, depth: { rule: "depth", mm: 0.7 } }), 0)),
      "touch",
    );
    const rho = Math.acos(1 - 0.7 / 15);
    const expected = (Math.acos(Math.sin(rho) / Math.sin(Math.PI / 8)) * 180) / Math.PI;
    expect(Math.abs(touch.value - expected)).toBeLessThanOrEqual(0.05);
    expect(touch.depth).toEqual({ rule: "touch" });
  });

  it("finds where touching facets also come to the corners before, and keeps their rule", () => {
    const plan = planOf(girdle, { ...crown, depth: { rule: "touch" } });
    const [corners] = named(all(angleSnaps(plan, 1)), "corners");
    expect(corners.depth).toBeUndefined();
    const depths = (["touch", "corners"] as const).map((rule) => {
      const depth: DepthRule = rule === "touch" ? { rule } : { rule, of: "a" };
      return solvePlan(planOf(girdle, { ...crown, armAngleDeg: corners.value, depth })).tiers[1].depthMm;
    });
    expect(depths[0]).toBeCloseTo(depths[1], 8);
  });

  it("gives those near the present angle first", () => {
    const found = all(angleSnaps(planOf(girdle, { ...crown, depth: { rule: "depth", mm: 0.7 } }), 1));
    const away = found.map((s) => Math.abs(s.value - crown.armAngleDeg));
    expect(found.length).toBeGreaterThan(1);
    away.slice(1).forEach((a, i) => {
      expect(a).toBeGreaterThan(away[i] - 1);
    });
  });
});

describe("snaps of the start", () => {
  it("goes to the nearest stop of the wheel, round the seam too", () => {
    expect(startSnap(planOf(), "front", 359.5)).toEqual({ name: { kind: "stop", stop: 0 }, value: 0 });
    expect(startSnap(planOf(), "front", -8)?.value).toBe(352.5);
  });

  it("has no stops on a free protractor", () => {
    expect(startSnap({ ...planOf(), rig: { wheelStops: null } }, "front", 12)).toBeNull();
  });
});

describe("a root between two places", () => {
  it("is found where the sign changes, and nowhere else", () => {
    expect(rootBetween((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 9);
    expect(rootBetween((x) => x * x + 1, -1, 1)).toBeNull();
    expect(rootBetween(() => null, 0, 1)).toBeNull();
  });
});
