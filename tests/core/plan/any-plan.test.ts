import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../../src/core/check/report.ts";
import { textOf } from "../../fixtures/found.ts";
import { arbitraryPlan } from "./arbitrary-plan.ts";

/** The path of the first number that is none, or null. */
function strayNumber(value: unknown, path = "report"): string | null {
  if (typeof value === "number") return Number.isFinite(value) ? null : `${path} is ${value}`;
  if (typeof value !== "object" || value === null) return null;
  for (const [key, entry] of Object.entries(value)) {
    const stray = strayNumber(entry, `${path}.${key}`);
    if (stray) return stray;
  }
  return null;
}

describe("a report", () => {
  it("holds finite numbers only, and words without them, for any plan that the format admits", () => {
    fc.assert(
      fc.property(arbitraryPlan(), (plan) => {
        const report = reportPlan(plan);
        expect(strayNumber(report)).toBeNull();
        for (const finding of report.findings)
          expect(textOf(plan, finding)).not.toMatch(/NaN|Infinity|undefined/);
        const facets = plan.tiers.reduce((sum, tier) => sum + tier.count, 0);
        expect(report.facets).toHaveLength(facets);
        expect(report.totals.volumeMm3).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 400, seed: 3 },
    );
  });
});
