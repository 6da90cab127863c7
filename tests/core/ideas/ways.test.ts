import { describe, expect, it } from "vitest";
import {
  type Guess,
  guessFrom,
  guessRooms,
  isOutdone,
  limitBrokenBy,
  seenByFew,
} from "../../../src/core/ideas/guess.ts";
import { createJudge, type Verdict } from "../../../src/core/ideas/judge.ts";
import { Search, type SearchOptions } from "../../../src/core/ideas/search.ts";
import { type IdeaWish, planOfIdea } from "../../../src/core/ideas/wish.ts";
import { rayBodyOf } from "../../../src/core/measure/look-measures.ts";
import { measurePlan } from "../../../src/core/measure/measures.ts";
import type { Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";

const wish: IdeaWish = {
  format: "glintwright-wish",
  version: 1,
  piece: { diameterMm: 30, glass: "borosilicate", inside: [{ kind: "core", diameterMm: 8, rgb: [1, 0, 0] }] },
  rig: { wheelStops: 96 },
  sides: "both",
  tiers: [2, 6],
  facets: [6, 80],
  want: { skinShare: -1 },
  across: "facets",
  up: "leastFacetMm",
};
const ring = (
  id: string,
  side: Tier["side"],
  armAngleDeg: number,
  count: number,
  depth: Tier["depth"],
): Tier => ({
  id,
  name: id,
  side,
  armAngleDeg,
  count,
  startDeg: 0,
  depth,
});
const LIKE: readonly Tier[] = [
  ring("a", "front", 20, 12, { rule: "touch" }),
  ring("b", "front", 50, 6, { rule: "close", to: "a" }),
  ring("c", "back", 40, 8, { rule: "touch" }),
];
const OTHER: readonly Tier[] = [
  ring("a", "front", 35, 16, { rule: "touch" }),
  ring("b", "back", 25, 24, { rule: "touch" }),
];

/** Every candidate of a search, in the order in which they were made. */
function candidatesOf(options: SearchOptions): (readonly Tier[])[] {
  const search = new Search(wish, options);
  const judge = createJudge(wish);
  const seen: (readonly Tier[])[] = [];
  while (!search.isDone)
    for (const { index, candidates, ask } of search.pending.splice(0)) {
      seen.push(...candidates.map(({ tiers }) => tiers));
      search.take(
        index,
        candidates.map(({ tiers }) => judge(tiers, ask)),
      );
    }
  return seen;
}
const countsOf = (tiers: readonly Tier[], side: Tier["side"]) =>
  tiers.filter((tier) => tier.side === side && tier.armAngleDeg < 90).map(({ count }) => count);

describe("a search that begins with plans", () => {
  it("keeps the front's counts where it is asked to, and varies all else", () => {
    const made = candidatesOf({ tries: 96, seed: 3, like: [LIKE], ways: "near", frontCounts: [12, 6] });
    expect(made.length).toBeGreaterThan(60);
    for (const tiers of made) expect(countsOf(tiers, "front")).toEqual([12, 6]);
    expect(new Set(made.map((tiers) => String(countsOf(tiers, "back")))).size).toBeGreaterThan(4);
  });

  it("lies between two: of many the front is as in one and the back as in the other", () => {
    const mixed = (ways: "between" | "open") =>
      candidatesOf({ tries: 96, seed: 3, like: [LIKE, OTHER], ways }).filter((tiers) => {
        const [front, back] = [String(countsOf(tiers, "front")), String(countsOf(tiers, "back"))];
        return (front === "12,6" && back === "24") || (front === "16" && back === "8");
      }).length;
    expect(mixed("between")).toBeGreaterThan(2 * mixed("open"));
  });

  it("stays nearer with near than without", () => {
    const alike = (ways: "near" | "open") =>
      candidatesOf({ tries: 144, seed: 2, like: [LIKE], ways })
        .slice(48)
        .filter((tiers) => String(countsOf(tiers, "front")) === "12,6").length;
    expect(alike("near")).toBeGreaterThan(alike("open"));
  });
});

describe("a guess from few rays", () => {
  const plan = planOfIdea(wish, LIKE, "");
  const guesses = guessRooms().map((room) =>
    guessFrom(seenByFew(rayBodyOf(solvePlan(plan)), true, room), room),
  );
  it("holds what all rays come to, and the nearer the more there are", () => {
    const measures = measurePlan(plan);
    for (const name of ["back", "through", "inside", "sparkle"] as const) {
      const widths = guesses.map((guess) => {
        const [least, most] = guess[name] ?? [1, 0];
        expect(measures[name]).toBeGreaterThanOrEqual(least);
        expect(measures[name]).toBeLessThanOrEqual(most);
        return most - least;
      });
      expect(widths[1]).toBeLessThan(widths[0]);
      expect(widths[1]).toBeLessThan(0.1 + 0.3 * measures[name]);
    }
  });

  it("turns away only what each cell that it may come to holds better, and limits only where they are broken for sure", () => {
    const edges = { across: [0, 1, 2, 3, 4, 5], up: [0, 0.25, 0.5, 0.75, 1] };
    const own: IdeaWish = { ...wish, want: { inside: 1 }, across: "sparkle", up: "inside" };
    const between = { sparkle: [0.9, 1.1], inside: [0.2, 0.3] } as const;
    const all = Array.from({ length: 20 }, (): number | null => 0.3);
    expect(isOutdone(own, edges, all, {}, between)).toBe(true);
    // what is wanted is an axis too: below the border at 0.25 it comes to no more
    for (const [cell, most] of [
      [0, 0.25],
      [1, 0.25],
      [5, 0.3],
      [6, 0.3],
    ]) {
      const holding = (held: number) => all.map((score, i) => (i === cell ? held : score));
      expect(isOutdone(own, edges, holding(most), {}, between)).toBe(true);
      expect(isOutdone(own, edges, holding(most - 0.01), {}, between)).toBe(false);
      const empty = all.map((score, i) => (i === cell ? null : score));
      expect(isOutdone(own, edges, empty, {}, between)).toBe(false);
    }
    expect(limitBrokenBy({ ...own, limits: { inside: [0.25, 1] } }, between)).toBeNull();
    expect(limitBrokenBy({ ...own, limits: { inside: [0.31, 1] } }, between)).toBe("inside");
  });
});

describe("a wall that guesses divide", () => {
  /** A judge that guesses while the wall is not divided, and then measures a value a little less or more than it guessed. */
  function searchedByGuess(tries: number) {
    const search = new Search(wish, { tries, seed: 4 });
    const measured = new Map<string, number>();
    let again = 0;
    let fewest = Number.MAX_VALUE;
    const seen = new Set<string>();
    while (!search.isDone)
      for (const { index, candidates, ask } of search.pending.splice(0)) {
        search.take(
          index,
          candidates.map(({ tiers }): Verdict => {
            const key = JSON.stringify(tiers);
            const facets = tiers.reduce((sum, { count }) => sum + count, 0);
            const likely = ((facets * 7919) % 1000) / 1000;
            const place = { across: facets % 50, up: tiers.length };
            if (!ask.edges) {
              seen.add(key);
              const known = { facets: place.across, leastFacetMm: place.up };
              const guess = { skinShare: [likely - 0.05, likely + 0.05] } as Guess;
              const hope = { known, guess };
              return {
                refusal: null,
                meets: true,
                isLooked: true,
                isMeasured: false,
                ...place,
                score: -likely,
                hope,
              };
            }
            if (seen.has(key)) again++;
            const score = -likely + 0.01;
            measured.set(key, score);
            return {
              refusal: null,
              meets: true,
              isLooked: true,
              isMeasured: true,
              ...place,
              score,
              hope: null,
            };
          }),
        );
        fewest = Math.min(fewest, search.found.length);
      }
    return { search, measured, again, fewest };
  }

  it.each([96, 480])("holds nothing but what was measured, %i tries", (tries) => {
    const { search, measured, again, fewest } = searchedByGuess(tries);
    expect(fewest).toBeGreaterThan(4);
    expect(search.found.length).toBeGreaterThan(4);
    for (const { tiers, score } of search.found) expect(measured.get(JSON.stringify(tiers))).toBe(score);
    expect(search.counts.tried).toBe(tries);
    expect(search.counts.measured).toBe(measured.size);
    // the best of each cell by the guess, and what may yet be better
    expect(again).toBeGreaterThan(4);
    expect(again).toBeLessThan(80);
  });
});

describe("what hangs on the wall", () => {
  const edges = { across: [0, 1, 2, 3, 4, 5], up: [0, 1, 2, 3, 4] };
  const hasFew = (tiers: readonly Tier[]): boolean => countsOf(tiers, "front")[0] <= 12;

  /** A search whose candidates hang in two cells: of few facets in the first ring, and of many. @returns share made with few */
  function shareOfFew(scoreOf: (isFew: boolean, seen: number) => number): number {
    const search = new Search(wish, { tries: 720, seed: 4, wall: edges });
    const made = { all: 0, few: 0 };
    let seen = 0;
    const verdictOn = (tiers: readonly Tier[]): Verdict => {
      const isFew = hasFew(tiers);
      made.all++;
      if (isFew) made.few++;
      const place = isFew ? 0.5 : 4.5;
      return {
        refusal: null,
        meets: true,
        isLooked: true,
        isMeasured: true,
        hope: null,
        across: place,
        up: 0.5,
        score: scoreOf(isFew, seen++),
      };
    };
    while (!search.isDone)
      for (const { index, candidates } of search.pending.splice(0))
        search.take(
          index,
          candidates.map(({ tiers }) => verdictOn(tiers)),
        );
    return made.few / made.all;
  }

  it("is a parent the oftener the more its children have raised the sum of scores", () => {
    const alike = shareOfFew(() => 0.5);
    const fewGain = shareOfFew((isFew, seen) => (isFew ? 0.1 + 0.01 * seen : 0.5));
    const manyGain = shareOfFew((isFew, seen) => (isFew ? 0.5 : 0.1 + 0.01 * seen));
    expect(fewGain).toBeGreaterThan(1.15 * alike);
    expect(manyGain).toBeLessThan(alike / 1.15);
  });
});
