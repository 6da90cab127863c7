/**
 * Searching that takes longer than a frame, off the main thread: mends, and counts and angles that work. Answers come
 * one at a time; between two of them other searches go on, and the word to stop is heard.
 */
import { lossesIn } from "../core/check/losses.ts";
import { type AngleRange, meetingAngles, meetingCounts } from "../core/check/meeting-range.ts";
import { type Mend, mendsOf } from "../core/check/mends.ts";
import { reckon } from "../core/check/reckon.ts";
import type { Plan } from "../core/plan/document.ts";
import type { PlanFinding } from "../core/plan/finding.ts";
import { type Suggestion, suggestFor, type Wish } from "../core/plan/suggest.ts";
import { serveJobs, type Ticket } from "./job.ts";

interface TierQuestion {
  readonly plan: Plan;
  readonly tierIndex: number;
}
interface LossQuestion {
  readonly plan: Plan;
  /** The plan before its last edit, for what was lost by it. */
  readonly planBefore: Plan | null;
}

/** Hands on what a generator finds, but for nulls, until it ends or its job is stopped. */
async function handOn<T>(steps: Iterable<T | null>, ticket: Ticket<T>): Promise<void> {
  for (const step of steps) {
    if (step !== null) await ticket.found(step);
    await ticket.rest();
  }
}

const jobs = {
  /** Finds mends, the likeliest first. */
  mends: (
    { plan, finding, planBefore }: LossQuestion & { readonly finding: PlanFinding },
    ticket: Ticket<Mend>,
  ) => handOn(mendsOf(plan, finding, planBefore), ticket),
  /** Finds once what the wheel and the last edit cost. */
  losses: ({ plan, planBefore }: LossQuestion, ticket: Ticket<readonly PlanFinding[]>) =>
    handOn(lossesIn(plan, planBefore), ticket),
  /** Finds once a count all that works for it. */
  suggestions: (
    { plan, tierIndex, wish }: TierQuestion & { readonly wish: Wish },
    ticket: Ticket<readonly Suggestion[]>,
  ) => handOn(suggestFor(plan, tierIndex, wish), ticket),
  /** Finds one range, or none where no angle lets all meet. */
  angles: ({ plan, tierIndex }: TierQuestion, ticket: Ticket<AngleRange>) =>
    handOn(meetingAngles(plan, tierIndex), ticket),
  /** Finds each count with which all meets. */
  counts: ({ plan, tierIndex }: TierQuestion, ticket: Ticket<number>) =>
    handOn(meetingCounts(plan, tierIndex), ticket),
  /** @throws InexactCut */
  reckon: (plan: Plan) => reckon(plan),
};

export type PlanJobs = typeof jobs;
serveJobs(jobs, self);
