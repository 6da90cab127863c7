import { expect, it } from "vitest";
import { differenceLines } from "../../../src/ui/library/differences.ts";
import { historyWords } from "../../../src/ui/messages/history.ts";
import { libraryWords } from "../../../src/ui/messages/library.ts";
import { planWords } from "../../../src/ui/messages/plan.ts";
import { ruleWords } from "../../../src/ui/messages/rules.ts";
import { makeFormats } from "../../../src/words/formats.ts";
import type { Language } from "../../../src/words/language.ts";
import { plan, tier } from "../../core/plan/sample.ts";

const wordsIn = (language: Language) => ({
  history: historyWords[language],
  plan: planWords[language],
  versions: libraryWords[language].versions,
  rules: ruleWords[language],
  format: makeFormats(language, { unit: "mm", cuttingAngle: false }),
});
const before = plan([tier("a", 0, 12, { rule: "edge", mm: 3 }), tier("b", 40, 12, { rule: "touch" })]);
const after = plan(
  [tier("a", 33, 12, { rule: "edge", mm: 3 }), tier("b", 40, 12, { rule: "corners", of: "a" })],
  { diameterMm: 32.5 },
);

it("says fields in words and values with their units", () => {
  expect(differenceLines(before, after, wordsIn("en"))).toEqual([
    { what: "diameter", before: "30.00\u00a0mm", current: "32.50\u00a0mm" },
    { what: "a, angle", before: "0.0°", current: "33.0°" },
    { what: "b, depth", before: "until they just touch", current: "to the corners of a" },
  ]);
});

it("says them in German with a decimal comma, and never by a field's name in the file", () => {
  const lines = differenceLines(before, after, wordsIn("de"));
  expect(lines[0].current).toBe("32,50\u00a0mm");
  expect(JSON.stringify(lines)).not.toMatch(/Deg|Mm"|armAngle|diameterMm/);
});

it("says nothing of equal plans", () => {
  expect(differenceLines(before, before, wordsIn("en"))).toEqual([]);
});
