/** The truth under each sentence and the tier that is offered next. */
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../../src/core/check/report.ts";
import { EXAMPLES, FIRST_EXAMPLE, freshPlan } from "../../../src/ui/examples.ts";
import { planWords } from "../../../src/ui/messages/plan.ts";
import { nextTier } from "../../../src/ui/plan/recipe/next-tier.ts";
import { tierTruth } from "../../../src/ui/plan/recipe/tier-truth.ts";
import { truthInWords } from "../../../src/ui/plan/recipe/truth-words.ts";
import { makeFormats } from "../../../src/ui/use-format.ts";

const english = makeFormats("en", { unit: "mm", cuttingAngle: false });
const german = makeFormats("de", { unit: "mm", cuttingAngle: false });
const said = (plan: (typeof EXAMPLES)[number], tierId: string, format = english) =>
  truthInWords(
    tierTruth(reportPlan(plan), tierId),
    planWords[format.locale === "de" ? "de" : "en"].truth,
    format,
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
});

describe("the next tier", () => {
  it("makes three tiers in a row that can all be ground, from an uncut marble", () => {
    let plan = freshPlan("x");
    for (let i = 0; i < 3; i++) plan = { ...plan, tiers: [...plan.tiers, nextTier(plan, `Tier ${i + 1}`)] };
    expect(reportPlan(plan).findings.filter(({ severity }) => severity === "stop")).toEqual([]);
    expect(new Set(plan.tiers.map(({ id }) => id)).size).toBe(3);
  });
  it("never offers a second ring or flat where one is, however many there are", () => {
    for (const start of [freshPlan("x"), ...EXAMPLES]) {
      let plan = start;
      const before = plan.tiers.length;
      for (let i = 0; i < 9; i++) plan = { ...plan, tiers: [...plan.tiers, nextTier(plan, `Tier ${i + 1}`)] };
      const places = plan.tiers.map(({ side, armAngleDeg }) => `${side} ${armAngleDeg}`);
      for (const place of places.slice(before))
        expect(places.filter((other) => other === place)).toEqual([place]);
    }
  });
  it("asks a wheel only for counts that it divides", () => {
    for (const wheelStops of [7, 64, 77, 96, 120]) {
      const tier = nextTier({ ...freshPlan("x"), rig: { wheelStops } }, "x");
      expect(wheelStops % tier.count).toBe(0);
    }
  });
});
