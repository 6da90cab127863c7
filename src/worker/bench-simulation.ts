/** Many pieces cut by chance, off the main thread, in both ways of stopping a facet, with progress. */
import { seeded } from "../core/bench/chance.ts";
import { sourcesByWeight } from "../core/bench/propagate.ts";
import {
  addTallies,
  type Chances,
  chancesOf,
  createSimulation,
  emptyTally,
  runTrials,
  type Simulation,
} from "../core/bench/simulate.ts";
import { type Source, type StopBy, spreadOf } from "../core/bench/spread.ts";
import type { Plan } from "../core/plan/document.ts";
import { solvePlan } from "../core/plan/solve.ts";
import { serveJobs, type Ticket } from "./job.ts";

export interface SimulationQuestion {
  readonly plan: Plan;
  /** Pieces to cut, each way. */
  readonly trials: number;
  readonly seed: number;
  /** One standard deviation of the width at which a facet is stopped, mm; a default when missing. */
  readonly widthSdMm?: number;
}
export interface SimulationAnswer {
  readonly width: Chances;
  readonly depth: Chances;
  /** What each setting moves the gaps, greatest first, one list a way. */
  readonly sources: Readonly<
    Record<StopBy, readonly { readonly source: Source; readonly gapSdMm: number }[]>
  >;
  /** The way with the greater share of pieces on which all meet; null when the difference is within twice its error. */
  readonly safer: StopBy | null;
}

/** Small enough that progress and cancelling come through many times a second. */
const CHUNK = 5;

async function chances(
  sim: Simulation,
  { trials, seed }: SimulationQuestion,
  report: (share: number) => Promise<void>,
): Promise<Chances> {
  const random = seeded(seed);
  let tally = emptyTally(sim);
  while (tally.trials < trials) {
    tally = addTallies(tally, runTrials(sim, Math.min(CHUNK, trials - tally.trials), random));
    await report(tally.trials / trials);
  }
  return chancesOf(sim, tally);
}

function saferOf(width: Chances, depth: Chances): StopBy | null {
  const lead = width.allMeet - depth.allMeet;
  const error = Math.hypot(width.standardError, depth.standardError);
  if (Math.abs(lead) <= 2 * error) return null;
  return lead > 0 ? "width" : "depth";
}

async function simulate(question: SimulationQuestion, ticket: Ticket): Promise<SimulationAnswer> {
  const solved = solvePlan(question.plan);
  const spread = spreadOf(question.plan, question.widthSdMm);
  const [byDepth, byWidth] = (["depth", "width"] as const).map((way) =>
    createSimulation(solved, spread, way),
  );
  // Following widths takes nearly all of the time.
  const depth = await chances(byDepth, question, (share) => ticket.report(share * 0.1));
  const width = await chances(byWidth, question, (share) => ticket.report(0.1 + share * 0.9));
  return {
    width,
    depth,
    sources: { width: sourcesByWeight(byWidth), depth: sourcesByWeight(byDepth) },
    safer: saferOf(width, depth),
  };
}

const jobs = { simulate };
export type BenchSimulationJobs = typeof jobs;
serveJobs(jobs, self);
