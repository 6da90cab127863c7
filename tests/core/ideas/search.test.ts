/** Which candidates a search tries, and what it keeps of them: on a wish that needs no rays, against chance and by hand. */
import { describe, expect, it } from "vitest";
import { createJudge } from "../../../src/core/ideas/judge.ts";
import { type Found, Search, type SearchOptions } from "../../../src/core/ideas/search.ts";
import type { IdeaWish } from "../../../src/core/ideas/wish.ts";

/** Large facets are wanted and are an axis; how many there are is the other. */
const wish: IdeaWish = {
  format: "glintwright-wish",
  version: 1,
  piece: { diameterMm: 26, glass: "soda-lime" },
  rig: { wheelStops: 72 },
  sides: "both",
  tiers: [2, 5],
  facets: [8, 60],
  want: { leastFacetMm: 1 },
  across: "facets",
  up: "leastFacetMm",
};

interface Tried {
  readonly across: number;
  readonly up: number;
  readonly score: number;
}
/** A whole search, and of all candidates those that were measured, in their order. */
function searched(own: IdeaWish, options: Partial<SearchOptions> = {}) {
  const search = new Search(own, { tries: 480, seed: 6, ...options });
  const judge = createJudge(own);
  const tried: Tried[] = [];
  while (!search.isDone)
    for (const { index, candidates, ask } of search.pending.splice(0)) {
      const verdicts = candidates.map(({ tiers }) => judge(tiers, ask));
      for (const { across, up, score } of verdicts)
        if (across !== null && up !== null && score !== null) tried.push({ across, up, score });
      search.take(index, verdicts);
    }
  return { search, tried };
}
const sumOf = (found: readonly Found[]): number => found.reduce((sum, { score }) => sum + score, 0);

const open = searched(wish);

describe("a search", () => {
  it("hangs the best of each cell of all that it measured", () => {
    const { search, tried } = open;
    const { across, up } = search.wall;
    const isIn = ({ cell }: Found, own: Tried) =>
      (cell[0] === 0 || own.across >= across[cell[0]]) &&
      (cell[1] === 0 || own.up >= up[cell[1]]) &&
      (cell[0] === 4 || own.across < across[cell[0] + 1]) &&
      (cell[1] === 3 || own.up < up[cell[1] + 1]);
    expect(search.found.length).toBeGreaterThan(9);
    for (const own of search.found) {
      const best = Math.max(...tried.filter((one) => isIn(own, one)).map(({ score }) => score));
      expect(own.score).toBe(best);
    }
    // nor is a cell empty that something was measured for
    for (const one of tried) expect(search.found.some((own) => isIn(own, one))).toBe(true);
  });

  it("divides its wall by better ones than chance meets first", () => {
    const { search: plain } = searched(wish, { ways: "plain" });
    for (const k of [1, 2, 3]) expect(open.search.wall.up[k]).toBeGreaterThan(1.2 * plain.wall.up[k]);
  });

  it("fills the wall of chance better than chance does", () => {
    // axes that are not wanted: what a cell may hold is not bounded by its row
    const free: IdeaWish = { ...wish, up: "skinShare" };
    const many = { tries: 2000, seed: 1 };
    const { search: plain } = searched(free, { ...many, ways: "plain" });
    const { search } = searched(free, { ...many, wall: plain.wall });
    expect(sumOf(search.found)).toBeGreaterThan(1.08 * sumOf(plain.found));
    expect(search.counts.meeting).toBeGreaterThan(1.4 * plain.counts.meeting);
  });
});
