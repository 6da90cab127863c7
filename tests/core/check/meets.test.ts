import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../../src/core/check/report.ts";
import { plan, tier } from "../plan/sample.ts";

const states = (p: Parameters<typeof reportPlan>[0]) => reportPlan(p).pairs.map((q) => q.state);

describe("pairs", () => {
  it("has n pairs for a tier of n, one for two, none for one", () => {
    for (const [count, pairs] of [
      [1, 0],
      [2, 1],
      [3, 3],
      [12, 12],
    ])
      expect(reportPlan(plan([tier("a", 10, count, { rule: "depth", mm: 0.1 })])).pairs).toHaveLength(pairs);
  });

  it("tells gap, touch and edge apart by the tolerance", () => {
    expect(states(plan([tier("a", 0, 12, { rule: "gap", mm: 0.06 })])).every((s) => s === "gap")).toBe(true);
    expect(states(plan([tier("a", 0, 12, { rule: "gap", mm: 0.04 })])).every((s) => s === "touch")).toBe(
      true,
    );
    expect(states(plan([tier("a", 0, 12, { rule: "touch" })])).every((s) => s === "touch")).toBe(true);
    expect(states(plan([tier("a", 0, 12, { rule: "edge", mm: 0.06 })])).every((s) => s === "edge")).toBe(
      true,
    );
  });

  it("measures the gap between uncut circles: R (delta - 2 acos h), worked by hand for two caps 60 deg apart", () => {
    const [pair] = reportPlan(plan([tier("a", 0, 6, { rule: "depth", mm: 1 })])).pairs;
    expect(pair.gapMm).toBeCloseTo(15 * (Math.PI / 3 - 2 * Math.acos(14 / 15)), 12);
  });

  it("keeps a pair of one tier apart when a third facet lies between, with a negative gap and no edge", () => {
    // Two deep facets overlap, and a flat at the pole between them takes the place where they met.
    const p = plan([
      tier("a", 70, 2, { rule: "depth", mm: 1.4 }),
      tier("flat", 90, 1, { rule: "depth", mm: 2.6 }),
    ]);
    const pair = reportPlan(p).pairs.find((q) => q.a === "a/1" && q.b === "a/2");
    expect(pair?.state).toBe("gap");
    expect(pair?.gapMm).toBeLessThan(0);
    expect(pair?.edgeMm).toBe(0);
  });

  it("is no touch where a third facet covers the meeting point", () => {
    const p = plan([tier("a", 0, 8, { rule: "touch" }), tier("b", 0, 8, { rule: "depth", mm: 0.3 }, 22.5)]);
    const own = reportPlan(p).pairs.filter((q) => q.a.startsWith("a/") && q.b.startsWith("a/"));
    expect(own).toHaveLength(8);
    for (const q of own) {
      expect(Math.abs(q.gapMm)).toBeLessThan(1e-9);
      expect(q.state).toBe("gap");
    }
  });

  it("takes tiers across one patch of skin as neighbours only where nothing stands between", () => {
    const p = plan([
      tier("front", 50, 8, { rule: "depth", mm: 0.3 }),
      tier("belt", 0, 8, { rule: "depth", mm: 0.3 }),
      tier("back", 50, 8, { rule: "depth", mm: 0.3 }, 0, "back"),
    ]);
    const has = (a: string, b: string) => reportPlan(p).pairs.some((q) => q.a === a && q.b === b);
    expect(has("front/1", "belt/1")).toBe(true);
    expect(has("belt/1", "back/1")).toBe(true);
    // belt/1 stands square between them.
    expect(has("front/1", "back/1")).toBe(false);
  });

  it("takes no facets for neighbours whose way over more than a quarter of the ball runs onto a third, walked in steps", () => {
    // From single facets on the back far over the front's round skin: a facet stands over the foot of the one beyond.
    const p = plan(
      [
        tier("alone", 30, 1, { rule: "width", mm: 10 }, 0, "back"),
        tier("belt", 0, 12, { rule: "edge", mm: 2.5 }, -15),
        tier("four", 30, 4, { rule: "close", to: "belt" }),
        tier("low", 10, 4, { rule: "close", to: "four" }, 67.5),
      ],
      { diameterMm: 25.4 },
      { wheelStops: 32 },
    );
    const { facets, pairs } = reportPlan(p);
    const standing = facets
      .filter((f) => !f.swallowed)
      .map((f) => {
        const [a, t] = [(f.armAngleDeg * Math.PI) / 180, (f.azimuthDeg * Math.PI) / 180];
        const z = f.tier === "alone" ? -Math.sin(a) : Math.sin(a);
        return { ...f, n: [Math.cos(a) * Math.cos(t), Math.cos(a) * Math.sin(t), z] };
      });
    const dotOf = (u: readonly number[], v: readonly number[]) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
    /** What a ray from the centre leaves by; null for skin. */
    const facetAt = (d: readonly number[]) => {
      const [first] = standing
        .map((f) => ({
          id: f.id,
          at: dotOf(d, f.n) > 0 ? f.planeMm / dotOf(d, f.n) : Number.POSITIVE_INFINITY,
        }))
        .sort((x, y) => x.at - y.at);
      return first.at < 12.7 ? first.id : null;
    };
    const far = pairs
      .filter((q) => q.edgeMm === 0 && q.a.startsWith("alone"))
      .map((q) => [q.a, q.b].map((id) => standing.find((f) => f.id === id)!));
    expect(far.length).toBeGreaterThan(0);
    for (const [a, b] of far) {
      const delta = Math.acos(dotOf(a.n, b.n));
      const met = Array.from({ length: 999 }, (_, i) => {
        const [u, v] = [Math.sin((1 - (i + 1) / 1000) * delta), Math.sin(((i + 1) / 1000) * delta)];
        const d = a.n.map((x, k) => (u * x + v * b.n[k]) / Math.sin(delta));
        return facetAt(d);
      });
      expect(new Set(met.filter((id) => id !== null && id !== a.id && id !== b.id))).toEqual(new Set());
    }
  });

  it("lists each pair once, a before b in plan order", () => {
    const p = plan([
      tier("a", 0, 9, { rule: "edge", mm: 1 }),
      tier("b", 45, 9, { rule: "close", to: "a" }, 20),
      tier("c", 40, 7, { rule: "touch" }, 0, "back"),
    ]);
    const report = reportPlan(p);
    const order = new Map(report.facets.map((f, i) => [f.id, i]));
    const keys = report.pairs.map((q) => `${q.a} ${q.b}`);
    expect(new Set(keys).size).toBe(keys.length);
    for (const q of report.pairs) expect(order.get(q.a)!).toBeLessThan(order.get(q.b)!);
  });
});

describe("corners", () => {
  it("finds the 8 corners of a cube, three facets each, where the handbook has them", () => {
    // Cube with facets at distance d: corners at d sqrt 3 (any geometry handbook).
    const p = plan([
      tier("sides", 0, 4, { rule: "depth", mm: 7 }),
      tier("top", 90, 1, { rule: "depth", mm: 7 }),
      tier("bottom", 90, 1, { rule: "depth", mm: 7 }, 0, "back"),
    ]);
    const { corners } = reportPlan(p);
    expect(corners).toHaveLength(8);
    for (const c of corners) {
      expect(c.facets).toHaveLength(3);
      expect(Math.hypot(...c.at)).toBeCloseTo(8 * Math.sqrt(3), 10);
      expect(c.missMm).toBeLessThan(1e-9);
    }
  });

  it("merges vertices within tolerance and says by how much they miss", () => {
    // A ring of 8 that runs to an apex, whose point is ground off by a hair.
    const apex = (mm: number) =>
      reportPlan(
        plan([
          tier("a", 50, 8, { rule: "depth", mm: 5 }),
          tier("flat", 90, 1, { rule: "depth", mm: 15 - 10 / Math.sin((50 * Math.PI) / 180) + mm }),
        ]),
      ).corners;
    expect(apex(-0.001)).toHaveLength(1);
    const merged = apex(0.02);
    expect(merged).toHaveLength(1);
    expect(merged[0].facets).toHaveLength(9);
    expect(merged[0].missMm).toBeGreaterThan(1e-3);
    expect(merged[0].missMm).toBeLessThan(0.05);
    expect(apex(0.5).length).toBe(8);
  });

  it("leaves out ends of edges on round skin", () => {
    expect(reportPlan(plan([tier("a", 0, 12, { rule: "edge", mm: 2 })])).corners).toHaveLength(0);
  });
});

it("keeps pairs, corners and sizes when the whole plan is turned by whole stops", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 95 }), fc.integer({ min: 5, max: 60 }), (turn, arm) => {
      const make = (startDeg: number) =>
        reportPlan(
          plan([
            tier("a", 0, 12, { rule: "edge", mm: 2 }, startDeg),
            tier("b", arm, 6, { rule: "width", mm: 6 }, startDeg + 15),
            tier("c", 30, 8, { rule: "touch" }, startDeg, "back"),
          ]),
        );
      const [one, two] = [make(0), make((360 * turn) / 96)];
      expect(two.pairs.map((q) => [q.a, q.b, q.state])).toEqual(one.pairs.map((q) => [q.a, q.b, q.state]));
      expect(two.totals.volumeMm3).toBeCloseTo(one.totals.volumeMm3, 6);
      expect(two.corners.length).toBe(one.corners.length);
    }),
    { seed: 31, numRuns: 40 },
  );
});

it("lists no two corners within the tolerance of each other, however many vertices crowd there", () => {
  const p = plan(
    [
      tier("a", 45, 12, { rule: "width", mm: 38.4 }, 0, "back"),
      tier("b", 75, 12, { rule: "close", to: "a" }, 128.4, "back"),
    ],
    { diameterMm: 50 },
    { wheelStops: 50 },
  );
  const { corners } = reportPlan(p);
  expect(corners.length).toBeGreaterThan(0);
  corners.forEach((one, i) => {
    for (const other of corners.slice(0, i))
      expect(Math.hypot(...one.at.map((x, k) => x - other.at[k]))).toBeGreaterThan(0.05);
  });
});
