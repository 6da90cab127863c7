import { describe, expect, it } from "vitest";
import { guessFrom, isOutdone, LEVELS, limitBrokenBy } from "../../../src/core/ideas/guess.ts";
import { createJudge, type Verdict } from "../../../src/core/ideas/judge.ts";
import { Search, type SearchOptions } from "../../../src/core/ideas/search.ts";
import { type IdeaWish, planOfIdea } from "../../../src/core/ideas/wish.ts";
import { Looks, lookRoom, rayBodyOf } from "../../../src/core/measure/look-measures.ts";
import { ALL_PARTS } from "../../../src/core/measure/places.ts";
import type { Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { WISHES } from "../../bench/idea-wishes.ts";

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
function candidatesOf(options: SearchOptions, asked = wish): (readonly Tier[])[] {
  const search = new Search(asked, options);
  const judge = createJudge(asked);
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

describe("a change", () => {
  const sides = (tiers: readonly Tier[]): string => tiers.map(({ side }) => side).join();
  const counts = (tiers: readonly Tier[]): string => tiers.map(({ count }) => count).join();
  /** What is made of one plan before anything is judged, where it has as many tiers on the same sides. */
  const childrenOf = (ways: "near" | "open"): (readonly Tier[])[] =>
    Array.from({ length: 30 }, (_, seed) =>
      new Search(wish, { tries: 48, seed, like: [LIKE], ways }).pending
        .flatMap(({ candidates }) => candidates.map(({ tiers }) => tiers))
        .filter((tiers) => sides(tiers) === sides(LIKE)),
    ).flat();
  const [near, open] = [childrenOf("near"), childrenOf("open")];
  /** By how much an angle moved in plans whose counts stayed: the farthest. */
  const farthest = (children: readonly (readonly Tier[])[]): number => {
    const turned = children.filter((own) => counts(own) === counts(LIKE));
    expect(turned.length).toBeGreaterThan(100);
    const moves = turned.flatMap((own) =>
      own.map(({ armAngleDeg }, i) => (armAngleDeg < 90 ? Math.abs(armAngleDeg - LIKE[i].armAngleDeg) : 0)),
    );
    return Math.max(...moves);
  };
  /** Of counts that changed where all angles stayed, the share that divide the one before or that it divides. */
  const kin = (children: readonly (readonly Tier[])[]): number => {
    const changed = children
      .filter((own) => own.every(({ armAngleDeg }, i) => armAngleDeg === LIKE[i].armAngleDeg))
      .flatMap((own) => own.map(({ count }, i) => [count, LIKE[i].count]))
      .filter(([now, before]) => now !== before);
    expect(changed.length).toBeGreaterThan(50);
    return (
      changed.filter(([now, before]) => now % before === 0 || before % now === 0).length / changed.length
    );
  };

  it("is small near a given plan: three of eight degrees at the most", () => {
    expect(farthest(near)).toBeLessThanOrEqual(24);
  });

  it("is wide where one only begins with it: angles far off, counts of the same kin", () => {
    expect(farthest(open)).toBeGreaterThan(30);
    expect(kin(open)).toBeGreaterThan(kin(near) + 0.1);
  });
});

describe("the first parents", () => {
  const facets = (tiers: readonly Tier[]): number => tiers.reduce((sum, { count }) => sum + count, 0);
  /** Mean number of facets of what is made once some are judged, all alike but in how far they lie across, by their facets. */
  function meanFacets(want: IdeaWish["want"]): number {
    const search = new Search({ ...wish, want }, { tries: 192, seed: 5 });
    const made: number[] = [];
    while (!search.isDone)
      for (const { index, candidates } of search.pending.splice(0)) {
        if (index > 1) made.push(...candidates.map(({ tiers }) => facets(tiers)));
        const verdicts = candidates.map(({ tiers }): Verdict => {
          const known = { refusal: null, meets: true, isLooked: true, isMeasured: true };
          return { ...known, across: facets(tiers), up: 1, score: 0.5 };
        });
        search.take(index, verdicts);
      }
    return made.reduce((sum, count) => sum + count, 0) / made.length;
  }

  it("lie far out along an axis that is wanted, to the side that is, and along no other", () => {
    const [more, fewer, other] = [{ facets: 1 }, { facets: -1 }, { leastFacetMm: 1 }].map(meanFacets);
    expect(more).toBeGreaterThan(other + 8);
    expect(fewer).toBeLessThan(other - 4);
  });
});

describe("a guess from few rays", () => {
  const NAMES = ["back", "through", "inside", "sparkle"] as const;
  // of all kinds, as their searches make them; asked for what needs no rays, so that they come fast
  const plans = Object.values(WISHES).flatMap((own) => {
    const plain: IdeaWish = { ...own, limits: {}, want: wish.want, across: "facets", up: "skinShare" };
    const judge = createJudge(plain);
    return [3, 4, 5].flatMap((seed) =>
      candidatesOf({ tries: 144, seed }, plain)
        .filter((tiers) => judge(tiers, { edges: null, best: [] }).meets)
        .slice(-15)
        .map((tiers) => solvePlan(planOfIdea(own, tiers, ""))),
    );
  });
  const looked = plans.map((solved) => {
    const looks = new Looks(rayBodyOf(solved), true, lookRoom());
    const guesses = LEVELS.map((level) => guessFrom(looks.upTo(level.parts), level));
    return { guesses, all: looks.upTo(ALL_PARTS) };
  });

  it("holds what all rays come to as often as is stated", () => {
    expect(looked).toHaveLength(270);
    LEVELS.forEach((_, k) => {
      const held = looked.flatMap(({ guesses, all }) =>
        NAMES.map((name) => {
          const [least, most] = guesses[k][name] ?? [1, 0];
          const value = all[name] ?? Number.NaN;
          return value >= least && value <= most;
        }),
      );
      // five of six, less what these may be off by where the four of a plan go together: two standard errors of 270 draws
      expect(held.filter(Boolean).length / held.length).toBeGreaterThan(
        5 / 6 - 2 * Math.sqrt(5 / 36 / plans.length),
      );
    });
  });

  it("is the nearer the more there are", () => {
    for (const name of NAMES) {
      const widths = LEVELS.map((_, k) => {
        const wide = looked.map(({ guesses }) => {
          const [least, most] = guesses[k][name] ?? [1, 0];
          return most - least;
        });
        return wide.reduce((sum, width) => sum + width, 0) / wide.length;
      });
      for (const [k, width] of widths.entries()) if (k > 0) expect(width).toBeLessThan(widths[k - 1] + 1e-12);
      // about a ninth of the rays
      const ninth = LEVELS.findIndex(({ parts }) => parts >= ALL_PARTS / 9);
      const mean = looked.reduce((sum, { all }) => sum + (all[name] ?? Number.NaN), 0) / looked.length;
      expect(widths[ninth]).toBeLessThan(0.1 + 0.3 * mean);
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
