/** Sentences of findings that were untrue, each with a plan that made it. */
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../src/core/check/report.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { plainSay } from "../../src/words/answers.ts";
import { findings as german } from "../../src/words/de/findings.ts";
import { findings as english } from "../../src/words/en/findings.ts";
import { findingInWords } from "../../src/words/findings.ts";
import type { Language } from "../../src/words/language.ts";
import { planOf, tier } from "../fixtures/mend-cases.ts";

const WORDS = { en: english, de: german };

const said = (plan: Plan, code: string, language: Language): string[] =>
  reportPlan(plan)
    .findings.filter((finding) => finding.code === code)
    .map((finding) => findingInWords(finding, WORDS[language], plainSay(plan, language)));

describe("a start between two stops", () => {
  // stops of 96 stand 3.75 degrees apart; "0.80 further" was said of both
  it.each([
    [0.8, /0\.80° back, at 0\.00°/, /0,80° zurück, bei 0,00°/],
    [2.95, /0\.80° further, at 3\.75°/, /0,80° weiter, bei 3,75°/],
  ])(
    "at %f degrees is moved to the nearer one, and the sentence says which way",
    (start, inEnglish, inGerman) => {
      const plan = planOf([tier("a", 30, start, { rule: "touch" })]);
      expect(said(plan, "start-moved", "en")).toMatchObject([expect.stringMatching(inEnglish)]);
      expect(said(plan, "start-moved", "de")).toMatchObject([expect.stringMatching(inGerman)]);
    },
  );
});

describe("facets that only touch the glass", () => {
  // the rim of a flat 3 mm deep, under planes 5 degrees from the pole: (1 - cos(acos 0.8 - 5 deg)) * 15 mm
  const rimMm = (1 - Math.cos(Math.acos(0.8) - (5 * Math.PI) / 180)) * 15;
  const flat = tier("t", 90, 0, { rule: "depth", mm: 3 }, 1);
  it.each([
    ["the round surface", planOf([tier("a", 20, 0, { rule: "depth", mm: 0 }, 8)])],
    ["a rim", planOf([flat, tier("b", 85, 0, { rule: "depth", mm: rimMm - 1e-6 }, 6)])],
  ])("are said to touch %s, not that glass begins 0.00 mm below it", (_, plan) => {
    for (const [language, touch] of [
      ["en", /only touch the glass and take nothing off/],
      ["de", /berühren .* das Glas nur und nehmen nichts weg/],
    ] as const) {
      expect(said(plan, "swallowed", language)).toMatchObject([expect.stringMatching(touch)]);
      expect(said(plan, "swallowed", language).join()).not.toMatch(/begin/);
    }
  });

  it("are told from those that don't reach the glass", () => {
    const plan = planOf([flat, tier("b", 85, 0, { rule: "depth", mm: 0.5 }, 6)]);
    expect(said(plan, "swallowed", "en")).toMatchObject([
      expect.stringContaining(`it begins ${rimMm.toFixed(1)}\u00a0mm below the round surface`),
    ]);
  });
});
