/** What a mend says that it costs, held against the plans before and after it; which are offered last, and which only once. */
import { describe, expect, it } from "vitest";
import { type Mend, mendsOf, planWith } from "../../../src/core/check/mends.ts";
import { type Report, reportPlan } from "../../../src/core/check/report.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { MEND_CASES, planOf, tier } from "../../fixtures/mend-cases.ts";

const mendsFor = (plan: Plan, code: string): Mend[] => {
  const finding = reportPlan(plan).findings.find((f) => f.code === code);
  if (!finding) throw new Error(`the plan has no finding ${code}`);
  return [...mendsOf(plan, finding)].filter((m) => m !== null);
};
const depths = (report: Report) => new Map(report.facets.map((f) => [f.tier, f.depthMm]));
const least = (report: Report) =>
  Math.min(...report.facets.filter((f) => !f.swallowed).map((f) => Math.min(f.widthMm, f.heightMm)));

/** A ring at the waist and a steep one far above it: closing the band up to the waist takes most of the glass. */
const cone = planOf(
  [tier("low", 0, 0, { rule: "touch" }, 8), tier("high", 62, 22.5, { rule: "depth", mm: 0.6 }, 8)],
  { diameterMm: 28 },
);

describe("what a mend costs", () => {
  it.each(["skin-between", "lost", "near-miss", "uneven", "inside-broken", "rule-unmet", "wheel-splits"])(
    "is what the plans before and after %s differ by",
    (code) => {
      const plan = MEND_CASES[code];
      const before = reportPlan(plan);
      for (const { cost, steps, brings, doubts } of mendsFor(plan, code)) {
        const after = reportPlan(planWith(plan, steps));
        expect(cost.massShare).toBeCloseTo(1 - after.totals.massG / before.totals.massG, 12);
        expect(cost.leastFacetMm.to).toBeCloseTo(least(after), 12);
        const was = depths(before);
        const changes = [...depths(after)].map(([id, mm]) => Math.abs(mm - (was.get(id) ?? 0)));
        const { depth } = cost;
        if (depth) {
          expect(Math.abs(depth.mm - depth.fromMm)).toBeCloseTo(Math.max(...changes), 12);
          expect(depths(after).get(depth.tierId)).toBe(depth.mm);
        } else expect(Math.max(...changes)).toBeLessThanOrEqual(0.005);
        const known = new Set(before.findings.map((f) => `${f.code} ${f.tier}`));
        const fresh = after.findings.filter(
          (f) => f.severity === "warn" && !known.has(`${f.code} ${f.tier}`),
        );
        expect(brings.map((f) => f.code)).toEqual(fresh.map((f) => f.code));
        expect(doubts.includes("brings")).toBe(fresh.length > 0);
        expect(doubts.includes("glass")).toBe(cost.massShare > 0.2);
      }
    },
  );

  it("says of closing a far band that it takes more than a fifth of the glass: a marble becomes a cone", () => {
    const [mend] = mendsFor(cone, "skin-between");
    expect(mend.change).toMatchObject({ to: "rule", depth: { rule: "close", to: "low" } });
    expect(mend.cost.massShare).toBeGreaterThan(0.3);
    expect(mend.doubts).toEqual(["glass"]);
  });

  it("puts last what leaves facets that are hardly there or starts other findings, and names those", () => {
    for (const code of ["swallowed", "lost", "short-edge", "vanished"]) {
      const doubtful = mendsFor(MEND_CASES[code], code).map(({ doubts }) => doubts.length > 0);
      expect(doubtful).toContain(true);
      expect(doubtful).toEqual([...doubtful].sort((a, b) => Number(a) - Number(b)));
    }
    // the angle that is looked for first leaves slivers of 0.03 mm
    const [first, , last] = mendsFor(MEND_CASES.swallowed, "swallowed");
    expect(first.change.to).toBe("remove");
    expect(last.doubts).toEqual(["thin", "brings"]);
    expect(last.brings.map(({ code }) => code)).toEqual(["sliver"]);
  });

  it.each(Object.keys(MEND_CASES))("offers for %s no two mends that come to the same piece", (code) => {
    const plan = MEND_CASES[code];
    const pieces = mendsFor(plan, code).map(({ steps }) =>
      reportPlan(planWith(plan, steps)).facets.map(
        (f) => [f.id, f.armAngleDeg, f.azimuthDeg, f.planeMm] as const,
      ),
    );
    pieces.forEach((a, i) => {
      for (const b of pieces.slice(0, i)) {
        const isOther =
          a.length !== b.length ||
          a.some(([id, deg, turn, mm], k) => {
            const [other, otherDeg, otherTurn, otherMm] = b[k];
            const turned = Math.abs(((turn - otherTurn + 540) % 360) - 180);
            return (
              id !== other || Math.abs(deg - otherDeg) > 0.4 || turned > 0.4 || Math.abs(mm - otherMm) > 0.04
            );
          });
        expect(isOther).toBe(true);
      }
    });
  });
});
