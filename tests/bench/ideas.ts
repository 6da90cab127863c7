/**
 * How fast ideas come and how good they are: candidates decided and ideas fully measured a minute, the share turned away before any
 * ray and before all rays, and the sum of best scores against candidates all made out of nothing, as many of them, in the same run,
 * on the wall that these divide and on that of the search. Three wishes: one that asks for light sent back within an evening's work,
 * one for sparkle, whose rays are many, one for both from few facets in clear glass. In the second the wall itself bounds the sum:
 * sparkle is its axis, and counts for no more than 1 from 5 per cent a degree on, which chance finds too. What is printed is the
 * median over seeds 1 to 5, or as many as are asked for (`npm run bench -- ideas 2`). Speeds are by processor time, as if each thread
 * had a core for itself: other work on the machine still makes them lower, but far less than by the clock.
 */
import { availableParallelism, cpus, loadavg } from "node:os";
import { type Crew, crewOf, runSearch } from "../../src/cli/ideas-threads.ts";
import { Search, type WayName } from "../../src/core/ideas/search.ts";
import type { WallEdges } from "../../src/core/ideas/wall.ts";
import type { IdeaWish } from "../../src/core/ideas/wish.ts";

const TRIES = 3000;
const SEEDS = 5;

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
  clear: {
    ...base,
    piece: { diameterMm: 25, glass: "soda-lime" },
    rig: { wheelStops: 80 },
    facets: [12, 70],
    limits: { skinShare: [0, 0.5] },
    want: { back: 1, sparkle: 0.5, facets: -0.3 },
    across: "skinShare",
    up: "back",
  },
};

const rounded = (x: number): number => Number(x.toPrecision(3));

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = (sorted.length - 1) / 2;
  return rounded((sorted[Math.floor(half)] + sorted[Math.ceil(half)]) / 2);
}

interface Run {
  readonly tried: number;
  readonly measured: number;
  /** For which no ray was followed. */
  readonly unlooked: number;
  /** Processor time of all threads, minutes. */
  readonly minutes: number;
  readonly cells: number;
  readonly sum: number;
  readonly wall: WallEdges;
}

async function run(
  wish: IdeaWish,
  threads: number,
  seed: number,
  ways: WayName,
  wall?: WallEdges,
): Promise<Run> {
  const crew = crewOf(wish, threads);
  try {
    const search = new Search(wish, { tries: TRIES, seed, ways, ...(wall ? { wall } : {}) });
    let unlooked = 0;
    const counting: Crew = {
      ...crew,
      judge: async (batch) => {
        const verdicts = await crew.judge(batch);
        unlooked += verdicts.filter(({ isLooked }) => !isLooked).length;
        return verdicts;
      },
    };
    const started = process.cpuUsage();
    await runSearch(search, counting);
    const { user, system } = process.cpuUsage(started);
    const { tried, measured } = search.counts;
    const sum = search.found.reduce((all, { score }) => all + score, 0);
    const minutes = (user + system) / 60e6;
    return { tried, measured, unlooked, minutes, cells: search.found.length, sum, wall: search.wall };
  } finally {
    crew.close();
  }
}

async function compared(wish: IdeaWish, threads: number, seed: number) {
  const found = await run(wish, threads, seed, "open");
  const plain = await run(wish, threads, seed, "plain");
  // what chance finds, hung on the same wall: of two walls that are divided differently one may have the better cells
  const onSameWall = await run(wish, threads, seed, "plain", found.wall);
  return { found, plain, onSameWall };
}

async function benchWish(wish: IdeaWish, threads: number, seeds: readonly number[]): Promise<object> {
  const runs: Awaited<ReturnType<typeof compared>>[] = [];
  for (const seed of seeds) runs.push(await compared(wish, threads, seed));
  const ratios = runs.map(({ found, plain }) => found.sum / plain.sum);
  const ratiosOnSameWall = runs.map(({ found, onSameWall }) => found.sum / onSameWall.sum);
  return {
    candidatesAMinute: median(runs.map(({ found }) => (threads * found.tried) / found.minutes)),
    measuredAMinute: median(runs.map(({ found }) => (threads * found.measured) / found.minutes)),
    turnedAwayBeforeAnyRay: median(runs.map(({ found }) => found.unlooked / found.tried)),
    turnedAwayBeforeAllRays: median(runs.map(({ found }) => 1 - found.measured / found.tried)),
    cellsFilled: median(runs.map(({ found }) => found.cells)),
    sumOfScores: median(runs.map(({ found }) => found.sum)),
    plain: {
      cellsFilled: median(runs.map(({ plain }) => plain.cells)),
      sumOfScores: median(runs.map(({ plain }) => plain.sum)),
      measured: median(runs.map(({ plain }) => plain.measured)),
    },
    ratio: median(ratios),
    ratios: ratios.map(rounded),
    plainOnSameWall: {
      cellsFilled: median(runs.map(({ onSameWall }) => onSameWall.cells)),
      sumOfScores: median(runs.map(({ onSameWall }) => onSameWall.sum)),
    },
    ratioOnSameWall: median(ratiosOnSameWall),
    ratiosOnSameWall: ratiosOnSameWall.map(rounded),
  };
}

/** @param asked how many seeds; 5 where it is no number of 1 or more */
export async function bench([asked]: readonly string[] = process.argv.slice(3)): Promise<object> {
  const threads = availableParallelism();
  const many = Number(asked);
  const seeds = Array.from({ length: many >= 1 ? Math.floor(many) : SEEDS }, (_, k) => k + 1);
  const wishes: Record<string, object> = {};
  for (const [name, wish] of Object.entries(WISHES)) wishes[name] = await benchWish(wish, threads, seeds);
  return {
    bench: "ideas",
    tries: TRIES,
    seeds,
    threads,
    wishes,
    cpu: cpus()[0]?.model ?? "unknown",
    // other work on the machine while this ran: above its number of threads, speeds are too low
    loadAverage: rounded(loadavg()[0]),
  };
}
