/**
 * Searching that takes longer than a frame, off the main thread: mends, and counts and angles that work. Answers come
 * one at a time; between two of them the worker listens for the word to stop.
 */
import { expose } from "comlink";
import { lossesIn } from "../core/check/losses.ts";
import { type AngleRange, meetingAngles, meetingCounts } from "../core/check/meeting-range.ts";
import { type Mend, mendsOf } from "../core/check/mends.ts";
import { reckon } from "../core/check/reckon.ts";
import type { Plan } from "../core/plan/document.ts";
import type { PlanFinding } from "../core/plan/finding.ts";
import { type Suggestion, suggestFor, type Wish } from "../core/plan/suggest.ts";
import { breathe } from "./breathe.ts";
import { letGo } from "./let-go.ts";

const stopped = new Set<number>();

/**
 * Hands on what a generator finds, but for nulls, until it ends or its job is stopped. Each find is taken before the next: it
 * travels by a way of its own, and the last would else come after the end was told, when nobody listens any more.
 */
async function run<T>(
  job: number,
  steps: Iterable<T | null>,
  found: (step: T) => void | Promise<void>,
): Promise<void> {
  try {
    for (const step of steps) {
      if (step !== null) await found(step);
      await breathe();
      if (stopped.delete(job)) return;
    }
  } finally {
    letGo(found);
  }
}

const api = {
  /** @param found called for each mend, the likeliest first */
  mends: (
    job: number,
    plan: Plan,
    finding: PlanFinding,
    planBefore: Plan | null,
    found: (mend: Mend) => void,
  ) => run(job, mendsOf(plan, finding, planBefore), found),
  /** @param found called once, with what the wheel and the last edit cost */
  losses: (
    job: number,
    plan: Plan,
    planBefore: Plan | null,
    found: (findings: readonly PlanFinding[]) => void,
  ) => run(job, lossesIn(plan, planBefore), found),
  /** @param found called once a count, with all that works for it */
  suggestions: (
    job: number,
    plan: Plan,
    tierIndex: number,
    wish: Wish,
    found: (some: readonly Suggestion[]) => void,
  ) => run(job, suggestFor(plan, tierIndex, wish), found),
  /** @param found called once, or never where no angle lets all meet */
  angles: (job: number, plan: Plan, tierIndex: number, found: (range: AngleRange) => void) =>
    run(job, meetingAngles(plan, tierIndex), found),
  /** @param found called for each count with which all meets */
  counts: (job: number, plan: Plan, tierIndex: number, found: (count: number) => void) =>
    run(job, meetingCounts(plan, tierIndex), found),
  /** @throws InexactCut */
  reckon,
  stop: (job: number) => {
    stopped.add(job);
  },
};

export type PlanWorkerApi = typeof api;
expose(api);
