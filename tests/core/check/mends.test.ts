import { describe, expect, it } from "vitest";
import { type Mend, mendsOf, planWith } from "../../../src/core/check/mends.ts";
import { reportPlan } from "../../../src/core/check/report.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { MEND_CASES as CASES, girdle, planOf } from "../../fixtures/mend-cases.ts";

const firstFinding = (plan: Plan, code: string) => reportPlan(plan).findings.find((f) => f.code === code);
const mendsFor = (plan: Plan, code: string): Mend[] => {
  const finding = firstFinding(plan, code);
  if (!finding) throw new Error(`the case has no finding ${code}`);
  return [...mendsOf(plan, finding)].filter((m) => m !== null);
};

describe("mends", () => {
  it.each(Object.keys(CASES))(
    "offers for %s at least one change, and each makes the finding go away",
    (code) => {
      const plan = CASES[code];
      const finding = firstFinding(plan, code);
      const mends = mendsFor(plan, code);
      expect(mends.length).toBeGreaterThan(0);
      for (const mend of mends) {
        const after = reportPlan(planWith(plan, mend.steps)).findings;
        expect(after.filter((f) => f.code === code && f.tier === finding?.tier)).toEqual([]);
        expect(after.filter((f) => f.severity === "stop" && f.code !== code)).toEqual([]);
      }
    },
  );

  it("closes the gap between two tiers by the rule that keeps it closed", () => {
    const [mend] = mendsFor(CASES["skin-between"], "skin-between");
    expect(mend.change).toMatchObject({ to: "rule", tierId: "b", depth: { rule: "close", to: "a" } });
  });

  it("uses the counts that this wheel can do, the nearest first", () => {
    const counts = mendsFor(CASES.uneven, "uneven").map((m) =>
      m.change.to === "count" ? m.change.count : null,
    );
    expect(counts).toEqual([12, 16, 8]);
  });

  it("backs off from the inside design just as far as leaves the glass that is wanted", () => {
    const [mend] = mendsFor(CASES["inside-broken"], "inside-broken");
    expect(mend.change).toMatchObject({ to: "depth", mm: 4 });
  });

  it("moves clear of the dop by the least depth, and offers the widest dop that fits", () => {
    const mends = mendsFor(CASES["under-dop"], "under-dop");
    const depth = mends.find((m) => m.change.to === "depth");
    expect(depth).toBeDefined();
    if (depth?.change.to !== "depth") return;
    const deeper = planOf(
      [{ ...CASES["under-dop"].tiers[0], depth: { rule: "depth", mm: depth.change.mm + 0.02 } }],
      {
        dop: { side: "back", diameterMm: 12 },
      },
    );
    expect(firstFinding(deeper, "under-dop")).toBeDefined();
    expect(mends.map((m) => m.change.to)).toContain("dop");
  });

  it("leaves the plan it was asked about alone", () => {
    const plan = CASES["skin-between"];
    const before = JSON.stringify(plan);
    mendsFor(plan, "skin-between");
    expect(JSON.stringify(plan)).toBe(before);
  });

  it("offers nothing for a finding whose tier is gone", () => {
    const gone = {
      code: "sliver",
      severity: "warn",
      tier: "none",
      data: { leastMm: 0, toleranceMm: 1 },
    } as const;
    expect([...mendsOf(planOf([girdle]), gone)]).toEqual([]);
  });
});
