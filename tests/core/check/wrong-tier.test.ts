/** A number typed wrong is mended where it was typed, at whichever tier it shows. */
import { describe, expect, it } from "vitest";
import { type Mend, mendsOf, planWith } from "../../../src/core/check/mends.ts";
import { reportPlan } from "../../../src/core/check/report.ts";
import type { DepthRule, Plan, Tier } from "../../../src/core/plan/document.ts";
import { plan, tier } from "../bench/plans.ts";

const corners = (of: string): DepthRule => ({ rule: "corners", of });
const ring = (id: string, count: number, armAngleDeg: number, startDeg: number, depth: DepthRule): Tier =>
  tier({ id, name: id, count, armAngleDeg, startDeg, depth });
const right = plan(
  [
    ring("t1", 16, 8, 0, { rule: "edge", mm: 3.5 }),
    ring("t2", 16, 28, 11.25, corners("t1")),
    ring("t3", 8, 50, 11.25, corners("t2")),
    ring("t4", 8, 76, 22.5, corners("t3")),
  ],
  { wheelStops: 64 },
  34,
);

const typed = (index: number, wrong: Partial<Tier>): Plan => ({
  ...right,
  tiers: right.tiers.with(index, { ...right.tiers[index], ...wrong }),
});
const WRONG = ["rule-unmet", "overshoot", "swallowed", "lost"];
const wrongIn = (of: Plan) => reportPlan(of).findings.filter(({ code }) => WRONG.includes(code));
const firstMend = (of: Plan, finding: ReturnType<typeof wrongIn>[number]): Mend | null => {
  for (const mend of mendsOf(of, finding)) if (mend) return mend;
  return null;
};

describe("the first mend", () => {
  it.each<readonly [string, number, Partial<Tier>]>([
    ["20 degrees for 50", 2, { armAngleDeg: 20 }],
    ["82 degrees for 28", 1, { armAngleDeg: 82 }],
    ["16 degrees for 76", 3, { armAngleDeg: 16 }],
    ["an edge of 20 mm for 3.5", 0, { depth: { rule: "edge", mm: 20 } }],
  ])("is of the tier with %s, and clears all that came of it", (_, index, wrong) => {
    const plan = typed(index, wrong);
    const findings = wrongIn(plan);
    expect(findings.length).toBeGreaterThan(0);
    expect(wrongIn(right)).toEqual([]);
    for (const finding of findings) {
      const mend = firstMend(plan, finding);
      expect(mend?.steps).toHaveLength(1);
      expect(mend?.steps[0]).toMatchObject({ kind: "tier", tierId: right.tiers[index].id });
      expect(mend?.change.to).toBe("depth" in wrong ? "rule" : "angle");
      const mended = planWith(plan, mend?.steps ?? []);
      expect(wrongIn(mended)).toEqual([]);
      // The least: what was typed right is no nearer to what was typed wrong.
      const off = (one: Plan) => Math.abs(one.tiers[index].armAngleDeg - plan.tiers[index].armAngleDeg);
      expect(off(mended)).toBeLessThanOrEqual(off(right) + 0.11);
    }
  });
});
