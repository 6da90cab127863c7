/** The truth under each sentence and the tier that is offered next. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../../src/core/check/report.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { planFromData } from "../../../src/core/plan/file.ts";
import { COUNTS } from "../../../src/core/plan/limits.ts";
import { EXAMPLES, FIRST_EXAMPLE, freshPlan } from "../../../src/ui/examples.ts";
import { planWords } from "../../../src/ui/messages/plan.ts";
import { nextTier } from "../../../src/ui/plan/recipe/next-tier.ts";
import { tierTruth } from "../../../src/ui/plan/recipe/tier-truth.ts";
import { truthInWords } from "../../../src/ui/plan/recipe/truth-words.ts";
import { makeFormats } from "../../../src/words/formats.ts";
import { arbitraryPlan } from "../../core/plan/arbitrary-plan.ts";

const english = makeFormats("en", { unit: "mm", cuttingAngle: false });
const german = makeFormats("de", { unit: "mm", cuttingAngle: false });
const said = (plan: (typeof EXAMPLES)[number], tierId: string, format = english) =>
  truthInWords(
    tierTruth(reportPlan(plan), tierId),
    planWords[format.locale === "de" ? "de" : "en"].truth,
    format,
    reportPlan(plan).findings.some((f) => f.code === "lost" && f.tier === tierId),
  );
const example = (name: string) => EXAMPLES.find((plan) => plan.name === name)!;

describe("the truth of a tier", () => {
  it("says that neighbours just touch, share edges, or stay apart, with their measures", () => {
    expect(said(example("First ring"), "ring")).toMatch(/^just touch; 6\.3\smm wide; 0\.36\smm deep$/);
    expect(said(example("Rain barrel"), "staves")).toMatch(/^share 9\.0\smm edges; /);
    expect(said(example("Dew on a dome"), "row1")).toMatch(/^0\.8\smm apart; /);
  });
  it("says it in German with a decimal comma", () => {
    expect(said(example("First ring"), "ring", german)).toMatch(
      /^berühren sich gerade; 6,3\smm breit; 0,36\smm tief$/,
    );
  });
  it("says nothing of neighbours where a facet stands alone", () => {
    expect(said(FIRST_EXAMPLE, "table")).toMatch(/^\d+\.\d\smm wide; \d\.\d\d\smm deep$/);
  });
  it("says when nothing is left of a tier", () => {
    const over = { ...FIRST_EXAMPLE.tiers[4], id: "over", depth: { rule: "depth", mm: 14 } as const };
    const plan = { ...FIRST_EXAMPLE, tiers: [...FIRST_EXAMPLE.tiers, over] };
    expect(said(plan, "crown")).toBe(planWords.en.truth.none);
  });
  it("never says of the last tier that later cuts take it away", () => {
    const under = {
      ...FIRST_EXAMPLE.tiers[4],
      id: "under",
      armAngleDeg: 85,
      depth: { rule: "depth", mm: 0.05 } as const,
    };
    const plan = { ...FIRST_EXAMPLE, tiers: [...FIRST_EXAMPLE.tiers, under] };
    expect(reportPlan(plan).facets.filter((f) => f.tier === "under" && !f.swallowed)).toEqual([]);
    expect(said(plan, "under")).toBe(planWords.en.truth.neverCut);
  });
});

describe("the next tier", () => {
  const following = (plan: Plan, i: number) => nextTier(plan, `Tier ${i + 1}`)!;
  it("makes three tiers in a row that can all be ground, from an uncut marble", () => {
    let plan = freshPlan("x");
    for (let i = 0; i < 3; i++) plan = { ...plan, tiers: [...plan.tiers, following(plan, i)] };
    expect(reportPlan(plan).findings.filter(({ severity }) => severity === "stop")).toEqual([]);
    expect(new Set(plan.tiers.map(({ id }) => id)).size).toBe(3);
  });
  it("never offers a second ring or flat where one is, however many there are", () => {
    for (const start of [freshPlan("x"), ...EXAMPLES]) {
      let plan = start;
      const before = plan.tiers.length;
      for (let i = 0; i < 9; i++) plan = { ...plan, tiers: [...plan.tiers, following(plan, i)] };
      const places = plan.tiers.map(({ side, armAngleDeg }) => `${side} ${armAngleDeg}`);
      for (const place of places.slice(before))
        expect(places.filter((other) => other === place)).toEqual([place]);
    }
  });
  it("asks a wheel only for counts that it divides", () => {
    for (const wheelStops of [7, 64, 77, 96, 120]) {
      const count = nextTier({ ...freshPlan("x"), rig: { wheelStops } }, "x")?.count ?? Number.NaN;
      expect(wheelStops % count).toBe(0);
    }
  });
  it("is one that the plan can take, whatever stands in it", () => {
    /** A front that its flat has finished, so that the back is next. */
    const withFrontDone = (plan: Plan): Plan => {
      const tiers = plan.tiers.map((tier) => ({ ...tier, side: "front" as const }));
      const pole = { armAngleDeg: 90, depth: { rule: "depth", mm: 1 } as const };
      return {
        ...plan,
        tiers: tiers.map((tier, i) => (i === tiers.length - 1 ? { ...tier, ...pole } : tier)),
      };
    };
    const plans = arbitraryPlan(5, 120);
    fc.assert(
      fc.property(fc.oneof(plans, plans.map(withFrontDone)), (plan) => {
        const tier = nextTier(plan, "next")!;
        expect(() => planFromData({ ...plan, tiers: [...plan.tiers, tier] })).not.toThrow();
      }),
      { numRuns: 2000 },
    );
  });
  it("is none where a plan holds as many tiers or facets as it may", () => {
    const ring = freshPlan("x");
    const tiers = (many: number, count: number): Plan => ({
      ...ring,
      tiers: Array.from({ length: many }, (_, i) => ({
        ...following(ring, 0),
        id: `t${i}`,
        armAngleDeg: i,
        count,
      })),
    });
    expect(nextTier(tiers(COUNTS.tiers - 1, 3), "x")).not.toBeNull();
    expect(nextTier(tiers(COUNTS.tiers, 3), "x")).toBeNull();
    expect(nextTier(tiers(COUNTS.facets / 100 - 1, 100), "x")).not.toBeNull();
    expect(nextTier(tiers(COUNTS.facets / 100, 100), "x")).toBeNull();
  });
});
