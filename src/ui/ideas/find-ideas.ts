/** A search for ideas in the page: batches are made here, judged by workers, and what the wall holds is told now and then. */
import { answerOf, type IdeasAnswer, leftToMeasure } from "../../core/ideas/answer.ts";
import { type Found, Search, type SearchOptions } from "../../core/ideas/search.ts";
import type { WallEdges } from "../../core/ideas/wall.ts";
import type { IdeaWish } from "../../core/ideas/wish.ts";
import type { Measures } from "../../core/measure/measures.ts";
import type { Plan } from "../../core/plan/document.ts";
import type { IdeasJobs } from "../../worker/ideas-jobs.ts";
import { createPool } from "../../worker/pool.ts";

/** Whoever presses Stop has both cores back within a tenth of a second: the candidate in hand can take longer, ms. */
const PATIENCE_MS = 80;

const pool = createPool<IdeasJobs>(
  () => new Worker(new URL("../../worker/ideas-worker.ts", import.meta.url), { type: "module" }),
  { patienceMs: PATIENCE_MS },
);

/** Rays take a while: measured in a worker.  @throws the signal's reason when stopped */
export async function measureIdea(plan: Plan, signal: AbortSignal): Promise<Measures> {
  const [measures] = await pool.run("measure", [plan], { signal });
  return measures;
}

/** Candidates that a worker gets at a time. */
const AT_A_TIME = 8;

export interface WallNow {
  readonly found: readonly Found[];
  readonly edges: WallEdges;
  readonly tried: number;
  readonly meeting: number;
}

const pieces = <T>(list: readonly T[]): T[][] =>
  Array.from({ length: Math.ceil(list.length / AT_A_TIME) }, (_, k) =>
    list.slice(k * AT_A_TIME, (k + 1) * AT_A_TIME),
  );

/**
 * @param onWall told after every batch; the last time with what the answer is about, in its order
 * @throws the signal's reason when stopped
 */
export async function findIdeas(
  wish: IdeaWish,
  options: SearchOptions,
  signal: AbortSignal,
  onWall: (wall: WallNow) => void,
): Promise<IdeasAnswer> {
  const started = performance.now();
  const search = new Search(wish, options);
  const going = new Set<Promise<void>>();
  while (!search.isDone) {
    for (const { index, candidates, ask } of search.pending.splice(0)) {
      const parts = pieces(candidates).map((some) =>
        pool.run("judge", { wish, candidates: some, ask }, { signal }),
      );
      const work = Promise.all(parts).then((verdicts) => {
        search.take(index, verdicts.flat());
        const { tried, meeting } = search.counts;
        onWall({ found: search.found, edges: search.wall, tried, meeting });
        going.delete(work);
      });
      going.add(work);
    }
    await Promise.race(going);
  }
  const plans = leftToMeasure(wish, search);
  const measured = await Promise.all(plans.map((plan) => pool.run("measure", [plan], { signal })));
  return answerOf(wish, search, measured.flat(), (performance.now() - started) / 1000);
}
