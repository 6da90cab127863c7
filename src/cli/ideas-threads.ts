/** Spreads a search for ideas over threads: pieces of batches are judged by whoever is free, the answer stays the same. */
import { answerOf, type IdeasAnswer, leftToMeasure, measureAll } from "../core/ideas/answer.ts";
import { createJudge, type Verdict } from "../core/ideas/judge.ts";
import { type Batch, Search, type SearchOptions } from "../core/ideas/search.ts";
import type { IdeaWish } from "../core/ideas/wish.ts";
import type { Measures } from "../core/measure/measures.ts";
import type { Plan } from "../core/plan/document.ts";
import type { IdeasJobs } from "../worker/ideas-jobs.ts";
import { createPool } from "../worker/pool.ts";
import { startThread, threadFile } from "./thread.ts";

/** Candidates that a thread gets at a time: few, so that none waits long for another. */
const AT_A_TIME = 4;

/** A thread pool: does a search's work; whoever does it must be closed. */
export interface Crew {
  judge(batch: Batch): Promise<readonly Verdict[]>;
  measure(plans: readonly Plan[]): Promise<readonly Measures[]>;
  close(): void;
}

/** All in this thread. */
function crewOfOne(wish: IdeaWish): Crew {
  const judge = createJudge(wish);
  return {
    judge: async ({ candidates, ask }) => candidates.map(({ tiers }) => judge(tiers, ask)),
    measure: async (plans) => measureAll(plans),
    close: () => {},
  };
}

const pieces = <T>(list: readonly T[], size: number): T[][] =>
  Array.from({ length: Math.ceil(list.length / size) }, (_, k) => list.slice(k * size, (k + 1) * size));

/** So many threads, each busy with a few candidates or one plan at a time. */
export function crewOf(wish: IdeaWish, threads: number): Crew {
  const pool = createPool<IdeasJobs>(() => startThread(threadFile("ideas")), { size: threads });
  return {
    judge: async ({ candidates, ask }) => {
      const some = pieces(candidates, AT_A_TIME);
      return (await Promise.all(some.map((own) => pool.run("judge", { wish, candidates: own, ask })))).flat();
    },
    measure: async (plans) => (await Promise.all(plans.map((plan) => pool.run("measure", [plan])))).flat(),
    close: () => pool.close(),
  };
}

/** Lets a crew judge all batches of a search, as many at a time as the search makes. */
export async function runSearch(search: Search, crew: Crew): Promise<void> {
  const going = new Set<Promise<void>>();
  while (!search.isDone) {
    for (const batch of search.pending.splice(0)) {
      const work = crew.judge(batch).then((verdicts) => {
        search.take(batch.index, verdicts);
        going.delete(work);
      });
      going.add(work);
    }
    await Promise.race(going);
  }
}

/** @param threads 1: all in this thread */
export async function findIdeas(
  wish: IdeaWish,
  options: SearchOptions,
  threads: number,
): Promise<IdeasAnswer> {
  const started = performance.now();
  const crew = threads < 2 ? crewOfOne(wish) : crewOf(wish, threads);
  try {
    const search = new Search(wish, options);
    await runSearch(search, crew);
    const measures = await crew.measure(leftToMeasure(wish, search));
    return answerOf(wish, search, measures, (performance.now() - started) / 1000);
  } finally {
    crew.close();
  }
}
