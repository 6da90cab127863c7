/** The one worker that searches for mends and for what works, made when it is first asked. */
import { proxy, type Remote, wrap } from "comlink";
import type { AngleRange } from "../../../core/check/meeting-range.ts";
import type { Mend } from "../../../core/check/mends.ts";
import type { Reckoned } from "../../../core/check/reckon.ts";
import type { Plan } from "../../../core/plan/document.ts";
import type { PlanFinding } from "../../../core/plan/finding.ts";
import type { Suggestion, Wish } from "../../../core/plan/suggest.ts";
import type { PlanWorkerApi } from "../../../worker/plan-worker.ts";

let remote: Remote<PlanWorkerApi> | null = null;
let lastJob = 0;

const worker = (): Remote<PlanWorkerApi> => {
  remote ??= wrap<PlanWorkerApi>(
    new Worker(new URL("../../../worker/plan-worker.ts", import.meta.url), { type: "module" }),
  );
  return remote;
};

export interface Asked {
  /** Settles when all is found or the search was stopped. */
  readonly done: Promise<void>;
  readonly stop: () => void;
}

/** Starts a job; nothing that it finds is handed on after `stop`. */
function ask<T>(
  start: (job: number, found: (item: T) => void) => Promise<void>,
  found: (item: T) => void,
): Asked {
  const job = ++lastJob;
  let isOpen = true;
  const done = start(
    job,
    proxy((item: T) => {
      if (isOpen) found(item);
    }),
  ).finally(() => {
    isOpen = false;
  });
  return {
    done,
    stop: () => {
      if (!isOpen) return;
      isOpen = false;
      void worker().stop(job);
    },
  };
}

let reckoner: Remote<PlanWorkerApi> | null = null;
/** Reckons a plan in a worker of its own: a search never keeps it waiting. Rejects with an error named as `InexactCut` is. */
export const askReckoned = (plan: Plan): Promise<Reckoned> => {
  reckoner ??= wrap<PlanWorkerApi>(
    new Worker(new URL("../../../worker/plan-worker.ts", import.meta.url), { type: "module" }),
  );
  return reckoner.reckon(plan);
};

/** @param planBefore the plan before its last edit, for what was lost by it */
export const askMends = (
  plan: Plan,
  finding: PlanFinding,
  planBefore: Plan | null,
  found: (mend: Mend) => void,
): Asked => ask<Mend>((job, hand) => worker().mends(job, plan, finding, planBefore, hand), found);

export const askLosses = (
  plan: Plan,
  planBefore: Plan | null,
  found: (findings: readonly PlanFinding[]) => void,
): Asked => ask<readonly PlanFinding[]>((job, hand) => worker().losses(job, plan, planBefore, hand), found);

export const askSuggestions = (
  plan: Plan,
  tierIndex: number,
  wish: Wish,
  found: (some: readonly Suggestion[]) => void,
): Asked =>
  ask<readonly Suggestion[]>((job, hand) => worker().suggestions(job, plan, tierIndex, wish, hand), found);

export const askAngles = (plan: Plan, tierIndex: number, found: (range: AngleRange) => void): Asked =>
  ask<AngleRange>((job, hand) => worker().angles(job, plan, tierIndex, hand), found);

export const askCounts = (plan: Plan, tierIndex: number, found: (count: number) => void): Asked =>
  ask<number>((job, hand) => worker().counts(job, plan, tierIndex, hand), found);
