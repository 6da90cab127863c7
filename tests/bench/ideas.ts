/**
 * How fast ideas come and how good they are: candidates decided and ideas fully measured a minute, the share turned away before
 * rays, and the sum of best scores against candidates all made out of nothing, as many of them, in the same run, on the wall that
 * these divide and on that of the search. Two wishes: one that asks for light sent back within an evening's work, one for
 * sparkle, whose rays are many. In the second the wall itself bounds the sum: sparkle is its axis, and counts for no more than 1
 * from 5 per cent a degree on, which chance finds too.
 */
import { availableParallelism, cpus, loadavg } from "node:os";
import { crewOf, runSearch } from "../../src/cli/ideas-threads.ts";
import { Search, type WayName } from "../../src/core/ideas/search.ts";
import type { WallEdges } from "../../src/core/ideas/wall.ts";
import type { IdeaWish } from "../../src/core/ideas/wish.ts";

const TRIES = 3000;
const SEED = 1;

const base = {
  format: "glintwright-wish",
  version: 1,
  piece: {
    diameterMm: 30,
    glass: "borosilicate",
    inside: [{ kind: "core", diameterMm: 6, rgb: [0.8, 0.3, 0.1] }],
  },
  rig: { wheelStops: 96 },
  sides: "both",
  tiers: [2, 6],
  facets: [8, 60],
} as const;
const WISHES: Readonly<Record<string, IdeaWish>> = {
  evening: {
    ...base,
    limits: { minutes: [0, 480] },
    want: { back: 1, inside: 0.5, minutes: -0.2 },
    across: "minutes",
    up: "back",
  },
  sparkle: { ...base, want: { sparkle: 1, inside: 0.3 }, across: "minutes", up: "sparkle" },
};

const rounded = (x: number): number => Number(x.toPrecision(3));

async function run(wish: IdeaWish, threads: number, ways: WayName, wall?: WallEdges) {
  const crew = crewOf(wish, threads);
  try {
    const search = new Search(wish, { tries: TRIES, seed: SEED, ways, ...(wall ? { wall } : {}) });
    const started = performance.now();
    await runSearch(search, crew);
    const minutes = (performance.now() - started) / 60_000;
    const { tried, meeting, measured } = search.counts;
    const sum = search.found.reduce((all, { score }) => all + score, 0);
    return { tried, meeting, measured, minutes, cells: search.found.length, sum, wall: search.wall };
  } finally {
    crew.close();
  }
}

export async function bench(): Promise<object> {
  const threads = availableParallelism();
  const wishes: Record<string, object> = {};
  for (const [name, wish] of Object.entries(WISHES)) {
    const found = await run(wish, threads, "open");
    const plain = await run(wish, threads, "plain");
    // what chance finds, hung on the same wall: of two walls that are divided differently one may have the better cells
    const onSameWall = await run(wish, threads, "plain", found.wall);
    wishes[name] = {
      candidatesAMinute: rounded(found.tried / found.minutes),
      measuredAMinute: rounded(found.measured / found.minutes),
      turnedAwayBeforeRays: rounded(1 - found.measured / found.tried),
      cellsFilled: found.cells,
      sumOfScores: rounded(found.sum),
      plain: { cellsFilled: plain.cells, sumOfScores: rounded(plain.sum), measured: plain.measured },
      ratio: rounded(found.sum / plain.sum),
      plainOnSameWall: { cellsFilled: onSameWall.cells, sumOfScores: rounded(onSameWall.sum) },
      ratioOnSameWall: rounded(found.sum / onSameWall.sum),
    };
  }
  return {
    bench: "ideas",
    tries: TRIES,
    seed: SEED,
    threads,
    wishes,
    cpu: cpus()[0]?.model ?? "unknown",
    // other work on the machine while this ran: above its number of threads, speeds are too low
    loadAverage: rounded(loadavg()[0]),
  };
}
