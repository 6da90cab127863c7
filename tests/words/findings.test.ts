/** Every finding and every reason in both languages: a code that has no sample here does not compile. */
import { describe, expect, it } from "vitest";
import type { BenchFindingData, Finding, FindingData } from "../../src/core/bench/bench-finding.ts";
import type { PlanFindingData, RuleUnmet, UnmetWhy } from "../../src/core/plan/finding.ts";
import { findingText, plainSay } from "../../src/words/answers.ts";
import { plan, tier } from "../core/plan/sample.ts";
import { englishIn } from "../fixtures/english-left.ts";

const sample = plan([
  tier("a", 0, 12, { rule: "touch" }),
  tier("b", 40, 12, { rule: "corners", of: "a" }, 15),
]);

const unmet = { rule: "close", asked: null, depthMm: 1.25, armAngleDeg: 40, count: 12, other: "a" } as const;
const REASONS: { readonly [W in UnmetWhy]: RuleUnmet<W> } = {
  single: { ...unmet, why: "single", got: null, other: null, rule: "touch", asked: 0 },
  "same-place": { ...unmet, why: "same-place", got: 0, rule: "gap", asked: 2 },
  "already-closer": { ...unmet, why: "already-closer", got: 1.5, rule: "gap", asked: 2 },
  "never-shared": { ...unmet, why: "never-shared", got: null },
  "too-long": { ...unmet, why: "too-long", got: 1.5, rule: "edge", asked: 2, other: null },
  "too-wide": { ...unmet, why: "too-wide", got: 1.5, rule: "width", asked: 2, other: null },
  covered: { ...unmet, why: "covered", got: null, rule: "width", asked: 2, other: null, depthMm: 0 },
  "no-corners": { ...unmet, why: "no-corners", got: null, rule: "corners" },
  "open-below": { ...unmet, why: "open-below", got: 1.5 },
  "ground-away": { ...unmet, why: "ground-away", got: null },
  "stays-open": { ...unmet, why: "stays-open", got: null },
  "nothing-between": { ...unmet, why: "nothing-between", got: null },
};

const glass = { leastMm: 0.4, wantedMm: 1, depthMm: 3, depthThatClearsMm: 2.4 };
const reach = { needsMm: 70, limitMm: 60 };
const longer = { lengthMm: 210, byMm: 10, pivotHeightMm: 50 };
const PLAN: PlanFindingData = {
  "rule-unmet": REASONS["stays-open"],
  overshoot: { worstMm: 0.4, of: "a" },
  "start-moved": { stops: 96, movedDeg: -1, startDeg: 1, placedDeg: 0 },
  uneven: {
    stops: 96,
    count: 7,
    errorDeg: 1.6,
    gapMm: 0.4,
    evenStepDeg: 51,
    counts: [1, 2, 3, 96],
    nearestCount: 6,
  },
  "wheel-splits": { missMm: 0.2, corners: 1, pairs: 2, stops: 96, movedDeg: 1, wheels: [100], startDeg: 7.5 },
  "edit-splits": { missMm: 0.3, corners: 12, pairs: 1 },
  vanished: {},
  duplicate: { count: 1, other: "a", keeps: "a/1", swallowed: "b/2" },
  "near-duplicate": { count: 3, other: "a", apartDeg: 0.5, apartMm: 0.1 },
  swallowed: { depthMm: 0.5, neededMm: 0.9, all: false },
  lost: { by: ["b"] },
  sliver: { leastMm: 0.04, toleranceMm: 0.05 },
  "near-miss": { count: 2, missMm: 0.2, skin: false },
  "corners-left": { of: "a", count: 8, all: 16, missMm: 2.2 },
  "short-edge": { count: 2, longestMm: 0.03 },
  "skin-between": { tiers: ["a", "b"], leastMm: 0.4, mostMm: 0.9 },
  "under-dop": { byMm: 2, dopMm: 12, side: "back", fitsMm: 8 },
  "inside-broken": { ...glass, leastMm: -0.4 },
  "inside-thin": glass,
  "inside-outside": { byMm: 2.5 },
  "picture-missing": { picture: "mine" },
};
const BENCH: BenchFindingData = {
  "default-stages": { stages: ["rough"] },
  "start-at-stage": { stage: "fine", stageName: "fine", depthMm: 0.2 },
  "nothing-to-grind": { depthMm: 0 },
  "disc-dulls": { stage: "fine", plannedStrokes: 410, share: 0.5 },
  "coarse-beside-polished": { stage: "fine", polishedTier: "a" },
  "turned-over-often": { turnOvers: 3 },
  "radius-inside-band": reach,
  "radius-outside-band": reach,
  "pivot-too-low": reach,
  "pivot-too-high": reach,
  "other-arm-length": { armLengthMm: 180, pivotHeightMm: 60, contactRadiusMm: 70 },
  "extension-needed": longer,
  "shorter-arm-needed": { ...longer, byMm: -10 },
  "guide-by-hand": { leanDeg: 30, caliperMm: [26, 27], widthMm: 9 },
  "hits-lap": { part: "dop", overlapMm: 2 },
  "facet-over-rim": { overMm: 2 },
  "facet-over-dead-centre": {},
  "cut-before-turning": { pivotHeightMm: 60, armLengthMm: 180 },
  undetermined: {
    angleFromPlan: true,
    depthFromPlan: false,
    wouldHelp: { measure: "readDeg", armAngleSdDeg: 0.5, depthSdMm: 0.1 },
  },
  "measurements-disagree": { measure: "widthMm", measured: 7, fitted: 8 },
  "facet-too-deep": { extraMm: 0.4 },
};

const FACETS = ["b/1", "b/2"];
const findingOf = (code: string, data: FindingData[keyof FindingData], facets = FACETS) =>
  ({ code, severity: "warn", tier: "b", facets, data }) as Finding;
const said = (finding: Finding) =>
  (["en", "de"] as const).map((language) => findingText(finding, plainSay(sample, language)));
/** Figures of a sentence, a comma for a point. */
const figures = (line: string) =>
  line
    .replaceAll(",", ".")
    .match(/\d+(\.\d+)?/g)
    ?.sort();

const samples: [string, Finding][] = [
  ...Object.entries({ ...PLAN, ...BENCH }).map(([code, data]): [string, Finding] => [
    code,
    findingOf(code, data),
  ]),
  ...Object.entries(REASONS).map(([why, data]): [string, Finding] => [why, findingOf("rule-unmet", data)]),
];

describe("a finding in words", () => {
  it.each(samples)("%s tells the same figures in German words of its own", (_, finding) => {
    const [english, german] = said(finding);
    expect(englishIn(german)).toBeNull();
    expect(englishIn(english)).not.toBeNull();
    expect(figures(german)).toEqual(figures(english));
    for (const text of [english, german]) expect(text).not.toMatch(/undefined|null|NaN|\[object| {2}/);
  });

  it("stands under the name of its tier, or of its place where it has no name", () => {
    const nameless = { ...sample, tiers: sample.tiers.map((own) => ({ ...own, name: " " })) };
    const lost = findingOf("lost", PLAN.lost);
    expect(findingText(lost, plainSay(nameless, "en"))).toMatch(/^Tier 2: .* by Tier 2\.$/);
    expect(findingText(lost, plainSay(nameless, "de"))).toMatch(/^Reihe 2: /);
  });

  it.each([
    ["lost", "1 facet is", "2 facets are", "1 Facette wird", "2 Facetten werden"],
    ["sliver", "1 facet is a sliver", "2 facets are slivers", "1 Facette ist nur ein", "2 Facetten sind nur"],
    ["under-dop", "1 facet runs", "2 facets run", "1 Facette läuft", "2 Facetten laufen"],
    ["overshoot", "1 facet passes", "2 facets pass", "1 Facette geht", "2 Facetten gehen"],
  ] as const)("%s goes with its number", (code, ...wanted) => {
    const one = said(findingOf(code, PLAN[code], ["b/1"]));
    const two = said(findingOf(code, PLAN[code]));
    for (const [text, start] of [one[0], two[0], one[1], two[1]].map((text, i) => [text, wanted[i]] as const))
      expect(text).toContain(start);
  });

  it("tells one corner and one pair as one", () => {
    const data = { ...PLAN["wheel-splits"], corners: 0, pairs: 1, startDeg: null, wheels: [] };
    const [english, german] = said(findingOf("wheel-splits", data));
    expect(english).toMatch(/1 pair of neighbours no longer meets and misses/);
    expect(german).toMatch(/1 Paar Nachbarinnen trifft sich nicht mehr und verfehlt sich/);
  });
});
