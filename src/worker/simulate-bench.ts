/** Cuts a plan by chance, many times, in both ways of stopping; tells its progress and can be stopped at any report. */

import { seeded } from "../core/bench/chances/chance.ts";
import { addTallies, type Chances, chancesOf, emptyTally, runTrials } from "../core/bench/chances/chances.ts";
import { sourcesByWeight } from "../core/bench/chances/propagate.ts";
import { createSimulation } from "../core/bench/chances/simulate.ts";
import { type Source, type StopBy, spreadOf } from "../core/bench/chances/spread.ts";
import type { Plan } from "../core/plan/document.ts";
import { solvePlan } from "../core/plan/solve.ts";
import type { Ticket } from "./job.ts";

export interface SimulateQuestion {
  readonly plan: Plan;
  /** Pieces cut in each way. */
  readonly trials: number;
  /** The same seed gives the same answer. */
  readonly seed: number;
}

export interface Simulated {
  readonly stopBy: StopBy;
  readonly chances: Chances;
  readonly sources: readonly { readonly source: Source; readonly gapSdMm: number }[];
}

/** Trials between two reports: a few dozen milliseconds of work. */
const CHUNK = 5;

export async function simulate(
  { plan, trials, seed }: SimulateQuestion,
  ticket: Ticket,
): Promise<readonly Simulated[]> {
  const solved = solvePlan(plan);
  const spread = spreadOf(plan);
  const ways: readonly StopBy[] = ["width", "depth"];
  const answers: Simulated[] = [];
  for (const [done, stopBy] of ways.entries()) {
    const sim = createSimulation(solved, spread, stopBy);
    const random = seeded(seed);
    let tally = emptyTally(sim);
    while (tally.trials < trials) {
      tally = addTallies(tally, runTrials(sim, Math.min(CHUNK, trials - tally.trials), random));
      await ticket.report((done + tally.trials / trials) / ways.length);
    }
    answers.push({ stopBy, chances: chancesOf(sim, tally), sources: sourcesByWeight(sim) });
  }
  return answers;
}
