/** The plans to begin with: each is a file that can be read back, and nothing stands against grinding it. */
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../src/core/check/report.ts";
import { parsePlan, serializePlan } from "../../src/core/plan/file.ts";
import { EXAMPLES, FIRST_EXAMPLE, freshPlan } from "../../src/ui/examples.ts";
import { exampleIn, exampleWords } from "../../src/ui/messages/examples.ts";

describe.each(EXAMPLES.map((plan) => [plan.name, plan] as const))("%s", (_, plan) => {
  it("reads back as it was written", () => {
    expect(parsePlan(serializePlan(plan)).plan).toEqual(plan);
    expect(parsePlan(serializePlan(plan)).unknown).toEqual([]);
  });
  it("has nothing to stop it and nothing to look at", () => {
    expect(reportPlan(plan).findings.filter((finding) => finding.severity !== "info")).toEqual([]);
  });
  it("keeps every facet, each wide enough to see", () => {
    for (const facet of reportPlan(plan).facets) expect(facet.widthMm).toBeGreaterThan(1);
  });
});

it("offers at least six, each with a name of its own, the first among them", () => {
  expect(EXAMPLES.length).toBeGreaterThanOrEqual(6);
  expect(new Set(EXAMPLES.map((plan) => plan.name)).size).toBe(EXAMPLES.length);
  expect(EXAMPLES).toContain(FIRST_EXAMPLE);
});

it("has all its words in German", () => {
  for (const plan of EXAMPLES) {
    const german = exampleIn(plan, exampleWords.de);
    expect(german.name).not.toBe(plan.name);
    expect(german.tiers.map(({ name }) => name)).not.toEqual(plan.tiers.map(({ name }) => name));
    expect(german.tiers.map(({ id }) => id)).toEqual(plan.tiers.map(({ id }) => id));
  }
});

it("leaves no skin on the full pattern: its tiers close all round", () => {
  expect(reportPlan(FIRST_EXAMPLE).totals.roundSkinMm2).toBeLessThan(1e-6);
});

it("begins fresh with an uncut marble that can be read", () => {
  const plan = freshPlan("New plan");
  expect(parsePlan(serializePlan(plan)).plan.tiers).toEqual([]);
});
