/** Corners that a rule asked for are told when they are missed, however wide the miss. */
import { describe, expect, it } from "vitest";
import { mendsOf, planWith } from "../../../src/core/check/mends.ts";
import { reportPlan } from "../../../src/core/check/report.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import type { PlanFinding } from "../../../src/core/plan/finding.ts";
import { planOf, tier } from "../../fixtures/mend-cases.ts";

/** Eight over sixteen: each of the eight stands between two corners, or is turned away from their middle. */
const turned = (startDeg: number, wheelStops: number | null = null): Plan =>
  planOf(
    [
      tier("low", 8, 0, { rule: "edge", mm: 3.5 }, 16),
      tier("high", 28, startDeg, { rule: "corners", of: "low" }, 8),
    ],
    { diameterMm: 34 },
    wheelStops,
  );
const misses = (plan: Plan) =>
  reportPlan(plan).findings.filter((f): f is PlanFinding<"near-miss"> => f.code === "near-miss");

describe("corners that a tier should come to", () => {
  it("are not missed where each facet comes to both of its own", () => {
    expect(misses(turned(0))).toEqual([]);
    expect(misses(turned(22.5))).toEqual([]);
  });

  it("belong to none where each facet stands at one and the others lie between two", () => {
    expect(misses(turned(11.25))).toEqual([]);
  });

  it.each([0.5, 1, 2.25, 5, 8])(
    "are told when the tier is turned by %f degrees, with the worst miss",
    (by) => {
      const plan = turned(by);
      const [miss, ...others] = misses(plan);
      expect(others).toEqual([]);
      expect(miss).toMatchObject({ severity: "warn", tier: "high" });
      // by hand: the corner stands by latitude b at 11.25 degrees from the middle of a facet; planes of arm angle a pass the
      // one at 11.25 - turn and stay above the one at 11.25 + turn: cos a cos b (cos(11.25 - turn) - cos(11.25 + turn)) R
      const DEG = Math.PI / 180;
      const report = reportPlan(plan);
      const low = report.facets.filter((f) => f.tier === "low");
      const edge = low[0].outline.find((o) => o.kind === "line" && o.with?.startsWith("low/"));
      const top = [edge?.from ?? [0, 0, 0], edge?.to ?? [0, 0, 0]].sort((p, q) => q[2] - p[2])[0];
      const level = Math.hypot(top[0], top[1]);
      const asked =
        Math.cos(28 * DEG) * level * (Math.cos((11.25 - by) * DEG) - Math.cos((11.25 + by) * DEG));
      // a small one is told by the bit of skin that it leaves, which is longer; beyond 0.4 mm of skin it once went untold
      if (by < 2) expect(miss.data.missMm).toBeGreaterThanOrEqual(asked - 1e-9);
      else expect(miss.data.missMm).toBeCloseTo(asked, 9);
    },
  );

  it("are met again with the start that is offered first", () => {
    const plan = turned(3.75, 96);
    const [miss] = misses(plan);
    const [mend] = [...mendsOf(plan, miss)].filter((m) => m !== null);
    expect(mend.change).toMatchObject({ to: "start", tierId: "high", deg: 0 });
    expect(misses(planWith(plan, mend.steps))).toEqual([]);
  });

  // by hand, as above: facets stand at every fourth (third) multiple of a step, and come to the corners half a step beside them
  it.each([
    ["one facet to four corners", 16, 4, 0, 8],
    ["one facet to three corners, over the middle one", 15, 5, 12, 10],
    ["one facet to three corners, between two", 15, 5, 0, 5],
    ["two facets to three corners, each as far from its own", 24, 16, 3.75, 8],
  ] as const)(
    "%s: those left out are told, with their number and the worst miss",
    (_, low, high, start, left) => {
      const plan = planOf(
        [
          tier("low", 8, 0, { rule: "edge", mm: 2 }, low),
          tier("high", 28, start, { rule: "corners", of: "low" }, high),
        ],
        { diameterMm: 34 },
        null,
      );
      const told = reportPlan(plan).findings.filter(
        (f): f is PlanFinding<"corners-left"> => f.code === "corners-left",
      );
      const { facets, corners } = reportPlan(plan);
      const R = 17;
      const plane = (id: string) => {
        const { armAngleDeg, azimuthDeg, planeMm } = facets.find((f) => f.id === id) ?? facets[0];
        const [a, t] = [armAngleDeg, azimuthDeg].map((deg) => (deg * Math.PI) / 180);
        return { n: [Math.cos(a) * Math.cos(t), Math.cos(a) * Math.sin(t), Math.sin(a)], h: planeMm };
      };
      // where next neighbours of the low tier meet the ball, toward the pole: a corner unless a facet of the high one is there
      const highs = facets.filter((f) => f.tier === "high").map((f) => plane(f.id));
      const misses = Array.from({ length: low }, (_corner, k) => {
        const [a, b] = [plane(`low/${k + 1}`), plane(`low/${((k + 1) % low) + 1}`)];
        // both planes hold points of the half-plane at azimuth t between them: r cos(half) cos(arm) + z sin(arm) = h
        const t = ((k + 0.5) * 2 * Math.PI) / low;
        const level = (z: number) =>
          (a.h - z * a.n[2]) / (Math.hypot(a.n[0], a.n[1]) * Math.cos(Math.PI / low));
        expect(b.h).toBeCloseTo(a.h, 12);
        let [in_, out] = [0, R];
        for (let i = 0; i < 80; i++) {
          const z = (in_ + out) / 2;
          if (Math.hypot(level(z), z) < R) in_ = z;
          else out = z;
        }
        const at = [level(in_) * Math.cos(t), level(in_) * Math.sin(t), in_];
        return Math.min(...highs.map(({ n, h }) => h - n[0] * at[0] - n[1] * at[1] - n[2] * at[2]));
      }).filter((mm) => mm > 0.05);
      expect(misses).toHaveLength(left);
      expect(told).toMatchObject([
        { severity: "info", tier: "high", data: { of: "low", count: left, all: low } },
      ]);
      expect(told[0].data.missMm).toBeCloseTo(Math.max(...misses), 9);
      expect(corners.length).toBeGreaterThan(0);
      const [mend] = [...mendsOf(plan, told[0])].filter((m) => m !== null);
      expect(reportPlan(planWith(plan, mend.steps)).findings.map(({ code }) => code)).not.toContain(
        "corners-left",
      );
    },
  );
});
