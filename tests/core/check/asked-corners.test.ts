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
});
