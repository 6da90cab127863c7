/** Spreads a search for ideas over threads: pieces of batches are judged by whoever is free, the answer stays the same. */
import { Worker } from "node:worker_threads";
import { answerOf, type IdeasAnswer, leftToMeasure, measureAll } from "../core/ideas/answer.ts";
import { type Ask, createJudge, type Verdict } from "../core/ideas/judge.ts";
import { type Batch, type Candidate, Search, type SearchOptions } from "../core/ideas/search.ts";
import type { IdeaWish } from "../core/ideas/wish.ts";
import type { Measures } from "../core/measure/measures.ts";
import type { Plan } from "../core/plan/document.ts";

export type Task =
  | {
      readonly kind: "judge";
      readonly id: number;
      readonly candidates: readonly Candidate[];
      readonly ask: Ask;
    }
  | { readonly kind: "measure"; readonly id: number; readonly plans: readonly Plan[] };
export interface TaskDone {
  readonly id: number;
  readonly answers: readonly unknown[];
}

/** Candidates that a thread gets at a time: few, so that none waits long for another. */
const AT_A_TIME = 4;

/** Does a search's work; whoever does it must be closed. */
export interface Crew {
  judge(batch: Batch): Promise<readonly Verdict[]>;
  measure(plans: readonly Plan[]): Promise<readonly Measures[]>;
  close(): Promise<unknown>;
}

/** All in this thread. */
function crewOfOne(wish: IdeaWish): Crew {
  const judge = createJudge(wish);
  return {
    judge: async ({ candidates, ask }) => candidates.map(({ tiers }) => judge(tiers, ask)),
    measure: async (plans) => measureAll(plans),
    close: async () => {},
  };
}

/** What a thread runs: bundled, its own bundle beside this one; from the sources, a module that registers the loader first. */
const THREAD = new URL(
  import.meta.url.endsWith(".ts") ? "./ideas-thread.mjs" : "./ideas-worker.js",
  import.meta.url,
);

type Job =
  | { readonly kind: "judge"; readonly candidates: readonly Candidate[]; readonly ask: Ask }
  | {
      readonly kind: "measure";
      readonly plans: readonly Plan[];
    };
interface Waiting {
  readonly task: Task;
  readonly done: (answers: readonly unknown[]) => void;
  readonly failed: (error: unknown) => void;
}

/** So many threads, each busy with one task at a time. */
export function crewOf(wish: IdeaWish, threads: number): Crew {
  let ids = 0;
  const queue: Waiting[] = [];
  const running = new Map<Worker, Waiting>();
  const workers = Array.from({ length: threads }, () => new Worker(THREAD, { workerData: wish }));
  const giveNext = (worker: Worker): void => {
    const next = queue.shift();
    if (!next) return;
    running.set(worker, next);
    worker.postMessage(next.task);
  };
  for (const worker of workers) {
    worker.on("message", ({ answers }: TaskDone) => {
      const own = running.get(worker);
      running.delete(worker);
      own?.done(answers);
      giveNext(worker);
    });
    const fail = (error: unknown) => {
      for (const one of [...running.values(), ...queue.splice(0)]) one.failed(error);
      running.clear();
    };
    worker.on("error", fail);
    // one that is gone without a word is told too
    worker.on("exit", () => fail(new Error("a thread ended while it was at work")));
  }
  const ask = (job: Job) =>
    new Promise<readonly unknown[]>((done, failed) => {
      queue.push({ task: { ...job, id: ids++ }, done, failed });
      for (const worker of workers) if (!running.has(worker)) giveNext(worker);
    });
  const pieces = <T>(list: readonly T[], size: number): T[][] =>
    Array.from({ length: Math.ceil(list.length / size) }, (_, k) => list.slice(k * size, (k + 1) * size));
  return {
    judge: async ({ candidates, ask: asked }) =>
      (
        await Promise.all(
          pieces(candidates, AT_A_TIME).map((some) => ask({ kind: "judge", candidates: some, ask: asked })),
        )
      ).flat() as Verdict[],
    measure: async (plans) =>
      (
        await Promise.all(pieces(plans, 1).map((some) => ask({ kind: "measure", plans: some })))
      ).flat() as Measures[],
    close: () => Promise.all(workers.map((worker) => worker.terminate())),
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
    await crew.close();
  }
}
