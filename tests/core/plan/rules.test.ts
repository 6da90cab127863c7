/** Each depth rule against its own words: the condition holds at the depth found and fails a hair's breadth shallower. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { reportAtOnce } from "../../../src/core/check/report.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { foundIn, textOf } from "../../fixtures/found.ts";
import { plan, tier } from "./sample.ts";

const HAIR = 1e-6;
const depthOf = (p: Plan, id: string) => solvePlan(p).tiers.find((t) => t.tierId === id)!.depthMm;
/** The plan up to one tier, that tier at a given depth. */
const at = (p: Plan, id: string, mm: number): Plan => {
  const i = p.tiers.findIndex((t) => t.id === id);
  return { ...p, tiers: [...p.tiers.slice(0, i), { ...p.tiers[i], depth: { rule: "depth", mm } }] };
};
const unmet = (p: Plan) => foundIn(solvePlan(p).findings, "rule-unmet")[0];

describe("touch and gap", () => {
  it("follows the closed form 1 - cos(delta / 2) for an equatorial ring", () => {
    // Neighbours' normals 30 deg apart: circles of angular radius 15 deg touch. Worked by hand.
    expect(depthOf(plan([tier("a", 0, 12, { rule: "touch" })]), "a")).toBeCloseTo(
      15 * (1 - Math.cos(Math.PI / 12)),
      12,
    );
  });

  it("leaves the gap asked for at the widest pair of any ring", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 80, noNaN: true }),
        fc.integer({ min: 2, max: 40 }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (arm, count, gap) => {
          const p = plan([tier("a", arm, count, { rule: "gap", mm: gap })]);
          if (unmet(p)) return;
          const own = reportAtOnce(p).pairs.filter((q) => q.gapMm > -1e3);
          expect(Math.max(...own.map((q) => q.gapMm))).toBeCloseTo(gap, 9);
        },
      ),
      { seed: 5, numRuns: 150 },
    );
  });

  it("says why one facet alone can't touch", () => {
    const finding = unmet(plan([tier("a", 30, 1, { rule: "touch" })]));
    expect(finding?.severity).toBe("stop");
    expect(finding?.data.why).toBe("single");
    expect(depthOf(plan([tier("a", 30, 1, { rule: "touch" })]), "a")).toBe(0);
  });
});

describe("edge", () => {
  it("follows the chord formula where only the ball ends the edge", () => {
    // The line of two planes at distance h, normals delta apart, passes the centre at h / cos(delta / 2).
    const depth = depthOf(plan([tier("a", 0, 12, { rule: "edge", mm: 3 })]), "a");
    const reach = (15 - depth) / Math.cos(Math.PI / 12);
    expect(2 * Math.sqrt(15 ** 2 - reach ** 2)).toBeCloseTo(3, 9);
  });

  it("is the least depth with that edge at the widest pair, also over earlier tiers", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 75, noNaN: true }),
        fc.integer({ min: 3, max: 24 }),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (arm, count, mm, start) => {
          const p = plan([
            tier("e", 0, 8, { rule: "edge", mm: 4 }),
            tier("a", arm, count, { rule: "edge", mm }, start),
          ]);
          const finding = unmet(p);
          const depth = depthOf(p, "a");
          const shortest = (d: number) => {
            const r = reportAtOnce(at(p, "a", d));
            const widest = Math.max(...r.pairs.filter((q) => q.a.startsWith("a/")).map((q) => q.gapMm));
            const own = r.pairs.filter((q) => q.a.startsWith("a/") && q.gapMm > widest - 1e-7);
            return Math.min(...own.map((q) => q.edgeMm));
          };
          if (finding) {
            const got = (finding.data.got as number | null) ?? 0;
            expect(got).toBeLessThan(mm);
            if (got > 0.06) expect(shortest(depth)).toBeCloseTo(got, 5);
            return;
          }
          expect(shortest(depth)).toBeCloseTo(mm, 6);
          expect(shortest(depth - HAIR)).toBeLessThan(mm);
        },
      ),
      { seed: 7, numRuns: 120 },
    );
  });

  it("answers with the longest edge that can be shared", () => {
    const p = plan([tier("a", 62, 11, { rule: "edge", mm: 30 })]);
    const finding = unmet(p);
    expect(textOf(p, finding)).toMatch(/at 62\.0° 11 facets can share at most 16\.8\u00a0mm/);
    expect(finding?.data.asked).toBe(30);
  });
});

describe("width", () => {
  it("follows the chord of an uncut circle", () => {
    const depth = depthOf(plan([tier("a", 30, 6, { rule: "width", mm: 8 })]), "a");
    expect(depth).toBeCloseTo(15 - Math.sqrt(15 ** 2 - 4 ** 2), 9);
  });

  it("is the least depth at which the widest facet is that wide", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 80, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        fc.double({ min: 0.5, max: 12, noNaN: true }),
        (arm, count, mm) => {
          const p = plan([
            tier("e", 20, 9, { rule: "depth", mm: 1.2 }),
            tier("a", arm, count, { rule: "width", mm }, 7),
          ]);
          const widest = (d: number) =>
            Math.max(
              ...reportAtOnce(at(p, "a", d))
                .facets.filter((f) => f.tier === "a")
                .map((f) => f.widthMm),
            );
          const depth = depthOf(p, "a");
          const finding = unmet(p);
          if (finding) {
            for (const d of [depth - 0.01, depth + 0.01]) expect(widest(d)).toBeLessThan(mm);
            return;
          }
          expect(widest(depth)).toBeCloseTo(mm, 6);
          expect(widest(depth - HAIR)).toBeLessThan(mm);
        },
      ),
      { seed: 9, numRuns: 80 },
    );
  });

  it("answers with the widest its facets can be, which neighbours may reach long before the whole circle would", () => {
    const piece = { diameterMm: 50 };
    const p = plan([tier("a", 15, 16, { rule: "width", mm: 26.9 }, 0, "back")], piece, { wheelStops: 72 });
    const widthAt = (d: number) => Math.max(...reportAtOnce(at(p, "a", d)).facets.map((f) => f.widthMm));
    const finding = unmet(p);
    expect(finding?.data).toMatchObject({ why: "too-wide", asked: 26.9 });
    const got = finding?.data.got as number;
    expect(widthAt(depthOf(p, "a"))).toBeCloseTo(got, 6);
    for (let d = 0.1; d < 25; d += 0.1) expect(widthAt(d)).toBeLessThan(got + 1e-6);
  });
});

describe("close", () => {
  /** True when no patch of skin borders both tiers in the ball with tiers up to the later one. */
  const closed = (p: Plan, earlier: string, later: string) => {
    const solved = solvePlan(p);
    const solid = cutBall(solved.planes);
    const isOf = (id: string) => (i: number) => solved.plan.tiers[solved.facets[i].tierIndex].id === id;
    return !solid.patches.some((patch) => patch.facets.some(isOf(earlier)) && patch.facets.some(isOf(later)));
  };

  it("comes down to the ends of the earlier tier's edges, by hand: depth = R - n.c", () => {
    const p = plan([
      tier("a", 0, 12, { rule: "edge", mm: 3 }),
      tier("b", 40, 12, { rule: "close", to: "a" }, 15),
    ]);
    const half = (15 * Math.PI) / 180;
    const reach = Math.sqrt(15 ** 2 - 1.5 ** 2);
    // The end of the edge at azimuth 15 deg stands at (reach, 0, 1.5) in the facet's own meridian plane.
    const arm = (40 * Math.PI) / 180;
    expect(half).toBeGreaterThan(0);
    expect(depthOf(p, "b")).toBeCloseTo(15 - (reach * Math.cos(arm) + 1.5 * Math.sin(arm)), 9);
    expect(closed(p, "a", "b")).toBe(true);
    expect(closed(at(p, "b", depthOf(p, "b") - 1e-4), "a", "b")).toBe(false);
  });

  it("comes down to the touching point of a tier that only touches", () => {
    const p = plan([tier("a", 0, 12, { rule: "touch" }), tier("b", 40, 12, { rule: "close", to: "a" }, 15)]);
    expect(depthOf(p, "b")).toBeCloseTo(15 - 15 * Math.cos((40 * Math.PI) / 180), 9);
  });

  it("closes a ring on the flat at the pole", () => {
    const p = plan([
      tier("flat", 90, 1, { rule: "width", mm: 8 }),
      tier("b", 50, 8, { rule: "close", to: "flat" }),
    ]);
    expect(closed(p, "flat", "b")).toBe(true);
    expect(closed(at(p, "b", depthOf(p, "b") - 1e-4), "flat", "b")).toBe(false);
    const shares = reportAtOnce(p).pairs.filter((q) => q.a.startsWith("b/") && q.b.startsWith("b/"));
    expect(shares.every((q) => q.state === "edge")).toBe(true);
  });

  it("is least and closed for rings over rings, turned or not", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 6, max: 20 }),
        fc.double({ min: 0.4, max: 2.5, noNaN: true }),
        fc.double({ min: 20, max: 60, noNaN: true }),
        fc.boolean(),
        (count, mm, arm, turned) => {
          const p = plan(
            [
              tier("a", 0, count, { rule: "edge", mm }),
              tier("b", arm, count, { rule: "close", to: "a" }, turned ? 180 / count : 0),
            ],
            {},
            { wheelStops: null },
          );
          if (unmet(p)) return;
          const depth = depthOf(p, "b");
          expect(closed(p, "a", "b")).toBe(true);
          const meets = (d: number) =>
            closed(at(p, "b", d), "a", "b") &&
            reportAtOnce(at(p, "b", d)).pairs.every(
              (q) => !(q.a.startsWith("b/") && q.b.startsWith("b/")) || q.state === "edge",
            );
          expect(meets(depth - 1e-4)).toBe(false);
          expect(meets(depth * 0.7)).toBe(false);
        },
      ),
      { seed: 3, numRuns: 60 },
    );
  });

  it("is least also where the earlier tier is ground away on the way", () => {
    const p = plan(
      [tier("a", 15, 3, { rule: "touch" }), tier("b", 24, 20, { rule: "close", to: "a" })],
      { diameterMm: 25 },
      { wheelStops: 32 },
    );
    const depth = depthOf(p, "b");
    expect(unmet(p)).toBeUndefined();
    expect(closed(p, "a", "b")).toBe(true);
    for (const d of [1e-4, 0.1, 0.5, 1]) expect(closed(at(p, "b", depth - d), "a", "b")).toBe(false);
  });

  it("can't be done to a tier that an earlier one has ground away, and says so", () => {
    const p = plan([
      tier("cover", 90, 1, { rule: "depth", mm: 6 }),
      tier("a", 80, 6, { rule: "touch" }),
      tier("b", 40, 12, { rule: "close", to: "a" }),
    ]);
    expect(unmet(p)?.data.why).toBe("ground-away");
  });

  it("can't be done over wider gaps, and says so", () => {
    const p = plan([tier("a", 0, 16, { rule: "gap", mm: 1 }), tier("b", 30, 16, { rule: "close", to: "a" })]);
    const finding = unmet(p);
    expect(finding?.data.why).toBe("open-below");
    expect(textOf(p, finding)).toContain("1.0\u00a0mm apart");
  });
});

describe("corners", () => {
  it("brings every facet to its corner, which then has three facets and no miss", () => {
    const p = plan([
      tier("a", 0, 12, { rule: "edge", mm: 3 }),
      tier("b", 40, 12, { rule: "corners", of: "a" }, 15),
    ]);
    const meets = reportAtOnce(p).corners.filter(
      (c) => c.facets.filter((f) => f.startsWith("a/")).length === 2,
    );
    expect(meets).toHaveLength(12);
    for (const corner of meets) {
      expect(corner.facets).toHaveLength(3);
      expect(corner.missMm).toBeLessThan(1e-9);
    }
  });

  it("goes as deep as the facet with farthest to go and says which overshoot", () => {
    const p = plan([
      tier("a", 0, 12, { rule: "edge", mm: 3 }),
      tier("b", 40, 8, { rule: "corners", of: "a" }, 15),
    ]);
    const finding = solvePlan(p).findings.find((f) => f.code === "overshoot");
    expect(finding?.facets?.length).toBe(4);
    expect(finding?.data.worstMm as number).toBeGreaterThan(0.05);
  });

  it("can't be done where neighbours leave gaps", () => {
    expect(
      unmet(plan([tier("a", 0, 8, { rule: "gap", mm: 1 }), tier("b", 40, 8, { rule: "corners", of: "a" })]))
        ?.data.why,
    ).toBe("no-corners");
  });

  it("can't be done at touching points that an earlier tier has ground away", () => {
    const p = plan([
      tier("cover", 90, 1, { rule: "depth", mm: 6 }),
      tier("a", 80, 6, { rule: "touch" }),
      tier("b", 40, 12, { rule: "corners", of: "a" }),
    ]);
    expect(unmet(p)?.data.why).toBe("no-corners");
  });
});

it("gives finite depths and no NaN for any tiers the format admits", () => {
  const rule = fc.oneof(
    fc.record({ rule: fc.constant("depth" as const), mm: fc.double({ min: 0, max: 40, noNaN: true }) }),
    fc.record({ rule: fc.constant("width" as const), mm: fc.double({ min: 0, max: 40, noNaN: true }) }),
    fc.record({ rule: fc.constant("gap" as const), mm: fc.double({ min: 0, max: 40, noNaN: true }) }),
    fc.record({ rule: fc.constant("edge" as const), mm: fc.double({ min: 0, max: 40, noNaN: true }) }),
    fc.constant({ rule: "touch" as const }),
  );
  const ring = fc.record({
    arm: fc.oneof(fc.constant(0), fc.constant(90), fc.double({ min: 0, max: 90, noNaN: true })),
    count: fc.integer({ min: 1, max: 14 }),
    start: fc.double({ min: -400, max: 400, noNaN: true }),
    side: fc.constantFrom("front" as const, "back" as const),
    depth: rule,
    follow: fc.constantFrom("own", "close", "corners"),
  });
  fc.assert(
    fc.property(fc.array(ring, { maxLength: 4 }), fc.constantFrom(null, 2, 7, 96), (rings, wheelStops) => {
      const tiers = rings.map((r, i) => {
        const other = `t${i - 1}`;
        const depth =
          i === 0 || r.follow === "own"
            ? r.depth
            : r.follow === "close"
              ? { rule: "close" as const, to: other }
              : { rule: "corners" as const, of: other };
        return tier(`t${i}`, r.arm, r.count, depth, r.start, r.side);
      });
      const report = reportAtOnce(plan(tiers, {}, { wheelStops }));
      // JSON turns NaN and infinities into null: only wheelStop, outline.with and finding data may be null.
      const text = JSON.stringify({ ...report, findings: [] }, (k, v) =>
        k === "wheelStop" || k === "with" ? 0 : v,
      );
      expect(text).not.toContain("null");
      expect(report.totals.volumeMm3).toBeGreaterThanOrEqual(0);
      expect(report.totals.volumeMm3).toBeLessThanOrEqual((4 / 3) * Math.PI * 15 ** 3 + 1e-6);
    }),
    { seed: 21, numRuns: 250 },
  );
});
