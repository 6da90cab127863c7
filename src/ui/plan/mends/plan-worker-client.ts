/** The worker that searches for mends and for what works, and the one that reckons plans, each made when it is first asked. */
import type { AngleRange } from "../../../core/check/meeting-range.ts";
import type { Mend } from "../../../core/check/mends.ts";
import type { Reckoned } from "../../../core/check/reckon.ts";
import type { Plan } from "../../../core/plan/document.ts";
import type { PlanFinding } from "../../../core/plan/finding.ts";
import type { Suggestion, Wish } from "../../../core/plan/suggest.ts";
import type { PlanJobs } from "../../../worker/plan-worker.ts";
import { createPool, type JobWorker } from "../../../worker/pool.ts";

const spawn = (): JobWorker =>
  new Worker(new URL("../../../worker/plan-worker.ts", import.meta.url), { type: "module" });

/** One for all searches: each lets the others come between its answers. */
const searches = createPool<PlanJobs>(spawn, { size: 1, atOnce: Number.POSITIVE_INFINITY });
/** Of its own: a search never keeps it waiting. */
const reckoner = createPool<PlanJobs>(spawn, { size: 1 });

export interface Asked {
  /** Settles when all is found or the search was stopped. @throws (rejects) `WorkerLost` when the worker died over it */
  readonly done: Promise<void>;
  /** Nothing that is found is handed on from then on. */
  readonly stop: () => void;
}

function ask(start: (signal: AbortSignal) => Promise<void>): Asked {
  const own = new AbortController();
  const done = start(own.signal).catch((error: unknown) => {
    if (!own.signal.aborted) throw error;
  });
  return { done, stop: () => own.abort() };
}

/** Rejects with an error named as `InexactCut` is. */
export const askReckoned = (plan: Plan): Promise<Reckoned> => reckoner.run("reckon", plan);

/** @param planBefore the plan before its last edit, for what was lost by it */
export const askMends = (
  plan: Plan,
  finding: PlanFinding,
  planBefore: Plan | null,
  onFound: (mend: Mend) => void,
): Asked => ask((signal) => searches.run("mends", { plan, finding, planBefore }, { signal, onFound }));

export const askLosses = (
  plan: Plan,
  planBefore: Plan | null,
  onFound: (findings: readonly PlanFinding[]) => void,
): Asked => ask((signal) => searches.run("losses", { plan, planBefore }, { signal, onFound }));

export const askSuggestions = (
  plan: Plan,
  tierIndex: number,
  wish: Wish,
  onFound: (some: readonly Suggestion[]) => void,
): Asked => ask((signal) => searches.run("suggestions", { plan, tierIndex, wish }, { signal, onFound }));

export const askAngles = (plan: Plan, tierIndex: number, onFound: (range: AngleRange) => void): Asked =>
  ask((signal) => searches.run("angles", { plan, tierIndex }, { signal, onFound }));

export const askCounts = (plan: Plan, tierIndex: number, onFound: (count: number) => void): Asked =>
  ask((signal) => searches.run("counts", { plan, tierIndex }, { signal, onFound }));
