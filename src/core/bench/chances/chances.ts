/** Counting pieces cut by chance: how often all pairs meet, how far gaps stray, and the extra depth that makes 95 in 100 meet. */
import type { Random } from "./chance.ts";
import { cutByChance, type PlannedPair, type Simulation, type Trial, trialGap } from "./simulate.ts";

/** Extra depths searched, unit sphere; beyond this no margin would help. */
const MOST_MARGIN = 0.25;
const HALVINGS = 20;

/** The least extra depth of all facets with which a trial's pair meets; Infinity when none within reach does. */
export function marginNeeded(trial: Trial, pair: PlannedPair, tolerance: number): number {
  if (trialGap(trial, pair) <= tolerance) return 0;
  if (trialGap(trial, pair, MOST_MARGIN) > tolerance) return Number.POSITIVE_INFINITY;
  let [short, enough] = [0, MOST_MARGIN];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (short + enough) / 2;
    if (trialGap(trial, pair, middle) <= tolerance) enough = middle;
    else short = middle;
  }
  return enough;
}

/** What a number of trials gave; tallies of several chunks are added with `addTallies`. */
export interface Tally {
  readonly trials: number;
  readonly allMet: number;
  /** How often each planned pair met. */
  readonly met: readonly number[];
  /** Extra depth that each trial would have needed, mm. */
  readonly marginsMm: readonly number[];
  /** Sums for the deviation of each pair's gap, mm and mm2. */
  readonly gapSum: readonly number[];
  readonly gapSquares: readonly number[];
}

export const emptyTally = (sim: Simulation): Tally => ({
  trials: 0,
  allMet: 0,
  met: sim.pairs.map(() => 0),
  marginsMm: [],
  gapSum: sim.pairs.map(() => 0),
  gapSquares: sim.pairs.map(() => 0),
});

export const addTallies = (x: Tally, y: Tally): Tally => ({
  trials: x.trials + y.trials,
  allMet: x.allMet + y.allMet,
  met: x.met.map((n, i) => n + y.met[i]),
  marginsMm: [...x.marginsMm, ...y.marginsMm],
  gapSum: x.gapSum.map((n, i) => n + y.gapSum[i]),
  gapSquares: x.gapSquares.map((n, i) => n + y.gapSquares[i]),
});

/** Monte Carlo tolerance analysis: cuts `trials` pieces by chance and counts. */
export function runTrials(sim: Simulation, trials: number, random: Random): Tally {
  const { pairs, tolerance, solved } = sim;
  const sums = emptyTally(sim);
  const [met, gapSum, gapSquares] = [[...sums.met], [...sums.gapSum], [...sums.gapSquares]];
  const marginsMm: number[] = [];
  for (let t = 0; t < trials; t++) {
    const trial = cutByChance(sim, random);
    let margin = 0;
    pairs.forEach((pair, i) => {
      const gapMm = trialGap(trial, pair) * solved.radiusMm;
      gapSum[i] += gapMm;
      gapSquares[i] += gapMm * gapMm;
      const needed = marginNeeded(trial, pair, tolerance);
      if (needed === 0) met[i]++;
      margin = Math.max(margin, needed);
    });
    marginsMm.push(margin * solved.radiusMm);
  }
  return {
    trials,
    allMet: marginsMm.filter((mm) => mm === 0).length,
    met,
    marginsMm,
    gapSum,
    gapSquares,
  };
}

export interface Chances {
  readonly trials: number;
  /** Share of pieces on which every planned pair meets, and the standard error of that share. */
  readonly allMeet: number;
  readonly standardError: number;
  readonly pairs: readonly (PlannedPair & {
    readonly meets: number;
    readonly gapMeanMm: number;
    readonly gapSdMm: number;
  })[];
  /** Extra depth for every facet with which 95 in 100 meet; null when none within reach does, or nothing was tried. */
  readonly marginMm: number | null;
}

const WANTED_SHARE = 0.95;

/** What the tally says (the yield). Without planned pairs everything meets. */
export function chancesOf(sim: Simulation, tally: Tally): Chances {
  const { trials, allMet } = tally;
  const share = trials > 0 ? allMet / trials : 0;
  const sorted = [...tally.marginsMm].sort((a, b) => a - b);
  const margin = sorted[Math.ceil(WANTED_SHARE * trials) - 1];
  return {
    trials,
    allMeet: share,
    standardError: trials > 0 ? Math.sqrt((share * (1 - share)) / trials) : 0,
    pairs: sim.pairs.map((pair, i) => {
      const mean = tally.gapSum[i] / trials;
      const variance = tally.gapSquares[i] / trials - mean * mean;
      return {
        ...pair,
        meets: tally.met[i] / trials,
        gapMeanMm: mean,
        gapSdMm: Math.sqrt(Math.max(0, variance)),
      };
    }),
    marginMm: margin !== undefined && Number.isFinite(margin) ? margin : null,
  };
}
