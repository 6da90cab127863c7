/**
 * How fast ideas come and how good they are: candidates decided and ideas fully measured a minute, the share turned away before any
 * ray and before all rays, and the sum of best scores against candidates all made out of nothing, as many of them, in the same run.
 * Three wishes: one that asks for light sent back within an evening's work, one for sparkle, whose rays are many, one for both from
 * few facets in clear glass.
 *
 * `ratio` has each on the wall that it divides itself, as a person would see it. Where what is wanted is an axis too, as in all three,
 * part of it is the walls': whoever meets better ones first has higher rows, and a cell holds no more than its row. So both fill one
 * wall as well, that of the search and that of chance (`onSearchWall`, `onPlainWall`), and `room` says what such a wall could hold:
 * all cells filled up to their edges, with the best that either found of all else.
 *
 * What is printed is the median over seeds 1 to 5, or as many as are asked for (`npm run bench -- ideas 2`). Speeds are by processor
 * time, as if each thread had a core for itself: other work on the machine still makes them lower, but far less than by the clock.
 */
import { availableParallelism, cpus, loadavg } from "node:os";
import { type Crew, crewOf, runSearch } from "../../src/cli/ideas-threads.ts";
import { type Found, Search, type WayName } from "../../src/core/ideas/search.ts";
import { CELLS, rangesOf, type WallEdges } from "../../src/core/ideas/wall.ts";
import { type IdeaWish, type Limits, type MeasureName, scoreOf } from "../../src/core/ideas/wish.ts";

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
export const WISHES: Readonly<Record<string, IdeaWish>> = {
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
  readonly found: readonly Found[];
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
    const minutes = (user + system) / 60e6;
    return { tried, measured, unlooked, minutes, found: search.found, wall: search.wall };
  } finally {
    crew.close();
  }
}

const sumOf = ({ found }: Run): number => found.reduce((all, { score }) => all + score, 0);

/** What two measures alone count for. */
const scoreOfAxes = (wish: IdeaWish, across: number, up: number): number =>
  scoreOf(wish, { [wish.across]: across, [wish.up]: up });

/** What a wall could hold: each cell filled up to its better edges, with the best that was found of all else. */
function roomOf(wish: IdeaWish, wall: WallEdges, found: readonly Found[]): number {
  const best = (name: MeasureName, [least, most]: Limits): number =>
    (wish.want[name] ?? 0) > 0 ? most : least;
  const rest = Math.max(...found.map(({ score, across, up }) => score - scoreOfAxes(wish, across, up)));
  return Array.from({ length: CELLS }, (_, cell) => {
    const { across, up } = rangesOf(wall, cell);
    return rest + scoreOfAxes(wish, best(wish.across, across), best(wish.up, up));
  }).reduce((all, score) => all + score, 0);
}

/** Both on their own walls, and each on the other's. */
async function compared(wish: IdeaWish, threads: number, seed: number) {
  const search = await run(wish, threads, seed, "open");
  const plain = await run(wish, threads, seed, "plain");
  const searchOnPlainWall = await run(wish, threads, seed, "open", plain.wall);
  const plainOnSearchWall = await run(wish, threads, seed, "plain", search.wall);
  return { search, plain, searchOnPlainWall, plainOnSearchWall };
}

/** Of one kind of run: how many cells it filled, the sum of what they hold and the mean. */
function filledBy(runs: readonly Run[]): object {
  return {
    cellsFilled: median(runs.map(({ found }) => found.length)),
    sumOfScores: median(runs.map(sumOf)),
    meanBest: median(runs.map((own) => sumOf(own) / Math.max(1, own.found.length))),
  };
}

function ratiosOf(runs: readonly Run[], peers: readonly Run[]): { ratio: number; ratios: number[] } {
  const ratios = runs.map((own, k) => sumOf(own) / sumOf(peers[k]));
  return { ratio: median(ratios), ratios: ratios.map(rounded) };
}

/** Both on one wall. */
function onOneWall(wish: IdeaWish, search: readonly Run[], plain: readonly Run[], walls: readonly Run[]) {
  const rooms = walls.map(({ wall }, k) => roomOf(wish, wall, [...search[k].found, ...plain[k].found]));
  return {
    search: filledBy(search),
    plain: filledBy(plain),
    room: median(rooms),
    ...ratiosOf(search, plain),
  };
}

async function benchWish(wish: IdeaWish, threads: number, seeds: readonly number[]): Promise<object> {
  const runs: Awaited<ReturnType<typeof compared>>[] = [];
  for (const seed of seeds) runs.push(await compared(wish, threads, seed));
  const search = runs.map((own) => own.search);
  const plain = runs.map((own) => own.plain);
  return {
    candidatesAMinute: median(search.map(({ tried, minutes }) => (threads * tried) / minutes)),
    measuredAMinute: median(search.map(({ measured, minutes }) => (threads * measured) / minutes)),
    turnedAwayBeforeAnyRay: median(search.map(({ unlooked, tried }) => unlooked / tried)),
    turnedAwayBeforeAllRays: median(search.map(({ measured, tried }) => 1 - measured / tried)),
    search: filledBy(search),
    plain: { ...filledBy(plain), measured: median(plain.map(({ measured }) => measured)) },
    ...ratiosOf(search, plain),
    onSearchWall: onOneWall(
      wish,
      search,
      runs.map((own) => own.plainOnSearchWall),
      search,
    ),
    onPlainWall: onOneWall(
      wish,
      runs.map((own) => own.searchOnPlainWall),
      plain,
      plain,
    ),
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
