/** The verdict on plans that meet, stay apart, can't be ground, are uncut, and what it says of them. */
import { expect, it } from "vitest";
import { reportPlan } from "../../../src/core/check/report.ts";
import { verdictOf } from "../../../src/core/check/verdict.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { verdictWords } from "../../../src/ui/messages/verdict.ts";
import { verdictInWords } from "../../../src/words/verdict.ts";
import { foundIn } from "../../fixtures/found.ts";
import { MEND_CASES } from "../../fixtures/mend-cases.ts";
import { plan, tier } from "../plan/sample.ts";

const of = (p: Plan) => verdictOf(solvePlan(p), reportPlan(p));
const said = (p: Plan, language: "en" | "de" = "en") =>
  verdictInWords(
    of(p),
    verdictWords[language],
    (id) => id.toUpperCase(),
    (mm) => `${mm.toFixed(1)} mm`,
  );

it("says of an uncut plan that nothing is cut", () => {
  expect(of(plan([])).kind).toBe("uncut");
});

it("says that all meet where tiers share edges and come to corners", () => {
  const p = plan([
    tier("a", 0, 12, { rule: "edge", mm: 3 }),
    tier("b", 40, 12, { rule: "corners", of: "a" }, 15),
  ]);
  expect(of(p)).toEqual({ kind: "meets", tiers: [], byMm: null, code: null, tier: null });
  expect(said(p, "de")).toBe("Alle Facetten treffen sich");
});

it("measures how far two tiers stay apart, and leads to the later one", () => {
  const p = plan([tier("a", 0, 12, { rule: "touch" }), tier("b", 50, 12, { rule: "touch" }, 15)]);
  const [between] = foundIn(reportPlan(p).findings, "skin-between");
  const verdict = of(p);
  expect(verdict).toMatchObject({ kind: "apart", tiers: ["a", "b"], tier: "b", code: "skin-between" });
  expect(verdict.byMm).toBe(between?.data.mostMm);
  expect(said(p)).toMatch(/^Two tiers stay apart by up to \d+\.\d mm$/);
});

it("measures gaps within one tier", () => {
  const p = plan([tier("a", 20, 12, { rule: "gap", mm: 0.7 })]);
  expect(of(p)).toMatchObject({ kind: "apart", tiers: ["a"], tier: "a" });
  expect(of(p).byMm).toBeCloseTo(0.7, 6);
  expect(said(p)).toBe("Facets of A stay apart by up to 0.7 mm");
});

it("calls nothing apart where another facet lies between", () => {
  const p = plan([
    tier("a", 0, 6, { rule: "depth", mm: 1.4 }),
    tier("b", 0, 6, { rule: "depth", mm: 1.4 }, 30),
  ]);
  expect(reportPlan(p).pairs.some(({ state, gapMm }) => state === "gap" && gapMm > 0)).toBe(true);
  expect(of(p).kind).toBe("meets");
});

it("counts a tier that passes its corners as a miss, by as much as it passes them", () => {
  const p = MEND_CASES.overshoot;
  const [overshoot] = foundIn(reportPlan(p).findings, "overshoot");
  expect(overshoot?.data.worstMm).toBeGreaterThan(0.1);
  const misses = of(p);
  expect(misses).toMatchObject({ kind: "misses", code: "overshoot", tier: "b" });
  expect(misses.byMm).toBeGreaterThanOrEqual(overshoot?.data.worstMm ?? Number.NaN);
});

it("says that it can't be ground, and leads to the tier whose rule can't be met", () => {
  const p = plan([tier("a", 0, 12, { rule: "touch" }), tier("b", 45, 12, { rule: "edge", mm: 25 }, 15)]);
  expect(of(p)).toMatchObject({ kind: "stops", code: "rule-unmet", tier: "b" });
  expect(said(p)).toBe("Can't be ground: B can't do what it should");
});

it("has facets alone that have no neighbour", () => {
  expect(of(plan([tier("a", 90, 1, { rule: "depth", mm: 1 })])).kind).toBe("alone");
  expect(of(plan([tier("a", 0, 2, { rule: "depth", mm: 1 })])).kind).toBe("alone");
});

it("tells what else is to be looked at before it says that all meet", () => {
  const p = plan([tier("a", 0, 12, { rule: "edge", mm: 3 }), tier("b", 0, 12, { rule: "edge", mm: 3 })]);
  expect(of(p)).toMatchObject({ kind: "look", code: "duplicate", tier: "b" });
});

it("has a cause in words, in both languages, for each code that stops or warns", () => {
  expect(Object.keys(verdictWords.de.causes)).toEqual(Object.keys(verdictWords.en.causes));
});
