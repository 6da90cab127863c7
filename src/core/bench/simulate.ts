/**
 * How likely the facets meet when the hand, the wheel and the marble are as they are: many pieces cut by chance.
 *
 * Stopping by depth puts a plane at a fixed distance from the wheel's axis, whatever the skin does there. Stopping by width follows the
 * skin: the plane lies where the facet, on the skin as it is there, has its planned width. The skin near a facet is
 * taken as a ball of the plan's radius moved along the normal to where the ellipsoid's skin lies. A pair that should meet
 * does when the gap between its circles on that skin is within the tolerance. Work goes in chunks, so that a worker can
 * tell its progress.
 */

import { meetingPairs } from "../check/pairs.ts";
import { gapBetween } from "../geometry/circles.ts";
import { facetFrame, type Plane } from "../geometry/plane.ts";
import { sliceFacet, widthOf } from "../geometry/slice.ts";
import { cutBall } from "../geometry/solid.ts";
import { dot, type Vec3 } from "../geometry/vec.ts";
import type { Side } from "../plan/document.ts";
import { toleranceOf } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { stagesOf } from "./bench.ts";
import { normal, type Random, randomRotation } from "./chance.ts";
import { overlaps } from "./half-cut.ts";
import type { SpreadSetting, StopBy } from "./spread.ts";
import { facetStages, stageDepths } from "./stages.ts";

export interface PlannedPair {
  readonly a: number;
  readonly b: number;
}

export interface Simulation {
  readonly solved: SolvedPlan;
  readonly spread: SpreadSetting;
  readonly stopBy: StopBy;
  readonly tolerance: number;
  /** Pairs that meet in the plan, in plan order. */
  readonly pairs: readonly PlannedPair[];
  /** Width at which each facet is stopped in its last pass, unit sphere. */
  readonly targets: readonly number[];
  /** Distance at which facets not yet in their last pass stand, one a tier, unit sphere. */
  readonly waitingH: readonly number[];
}

export function createSimulation(solved: SolvedPlan, spread: SpreadSetting, stopBy: StopBy): Simulation {
  const stages = stagesOf(solved.plan.rig);
  const tolerance = toleranceOf(solved.plan) / solved.radiusMm;
  const pairs = meetingPairs(solved, cutBall(solved.planes), tolerance).filter((p) => p.state !== "gap");
  const targets = solved.tiers.flatMap((_, i) =>
    facetStages(solved, i, stages).map((own) => (own.at(-1)?.widthWhileGroundMm ?? 0) / solved.radiusMm),
  );
  const waitingH = solved.tiers.map(({ depthMm }) => {
    const before = stageDepths(depthMm, stages).at(-2) ?? 0;
    return 1 - before / solved.radiusMm;
  });
  return {
    solved,
    spread,
    stopBy,
    tolerance,
    pairs: pairs.map(({ a, b }) => ({ a, b })),
    targets,
    waitingH,
  };
}

/** One piece cut by chance: planes about the wheel's axis, and how far the skin stands out at each (unit sphere). */
export interface Trial {
  readonly planes: readonly Plane[];
  readonly skin: readonly number[];
}

/** Support of the ellipsoid in a direction, less the plan's radius, unit sphere: how far the skin stands out there. */
function skinRise(semiAxes: readonly number[], rows: readonly Vec3[], n: Vec3, radiusMm: number): number {
  const squares = rows.map((row, i) => (semiAxes[i] * dot(row, n)) ** 2);
  return Math.sqrt(squares[0] + squares[1] + squares[2]) / radiusMm - 1;
}

/** The planes with errors of arm angle and stop; all distances as planned. */
function turnedPlanes({ solved, spread }: Simulation, random: Random): Plane[] {
  const armErrors = solved.tiers.map(() => normal(random) * spread.armDeg);
  return solved.facets.map((facet, k) => {
    const { side } = solved.plan.tiers[facet.tierIndex];
    const angle = facet.armAngleDeg + armErrors[facet.tierIndex];
    const azimuth = facet.azimuthDeg + normal(random) * spread.stopDeg;
    const n = facet.armAngleDeg === 90 ? solved.planes[k].n : facetFrame(angle, azimuth, side).n;
    return { n, h: solved.planes[k].h };
  });
}

/** Offset of the piece's centre from the wheel's axis, one a side: its direction is chance. */
function runOuts({ solved, spread }: Simulation, random: Random): Readonly<Record<Side, Vec3>> {
  const offset = (mm: number): Vec3 => {
    const t = 2 * Math.PI * random();
    const r = mm / solved.radiusMm;
    return [r * Math.cos(t), r * Math.sin(t), 0];
  };
  return { front: offset(spread.runOutMm.front), back: offset(spread.runOutMm.back) };
}

/** Widths settle within this, unit sphere: a hundredth of what calipers tell. */
const WIDTH_SETTLED = 1e-5;
const MOST_TRIES = 12;
/** Depth searched about the planned one, unit sphere: more than any artist would be off. */
const SEARCH = 0.05;

/**
 * The distance at which facet k has `width`, with the planes before it cut, its tier's later ones waiting and later tiers
 * uncut. False position (Illinois); when no distance within SEARCH has that width, the nearer end.
 */
function distanceForWidth(sim: Simulation, planes: readonly Plane[], k: number, width: number): number {
  const { solved, waitingH } = sim;
  const { tierIndex } = solved.facets[k];
  const { first, count } = solved.tiers[tierIndex];
  const around = planes
    .slice(0, first + count)
    .map((plane, j) => (j > k ? { n: plane.n, h: waitingH[tierIndex] } : plane));
  const isWaitingUncut = waitingH[tierIndex] >= 1;
  const missAt = (h: number) => {
    const own = { n: planes[k].n, h };
    around[k] = own;
    const bearsNot = (j: number) => (j > k && isWaitingUncut) || !overlaps(own, around[j]);
    return widthOf(sliceFacet(k, around, bearsNot)) - width;
  };
  const planned = solved.planes[k].h;
  let [deep, shallow] = [Math.max(-0.999, planned - SEARCH), Math.min(1, planned + SEARCH)];
  let [missDeep, missShallow] = [missAt(deep), missAt(shallow)];
  if (missDeep <= 0) return deep;
  if (missShallow >= 0) return shallow;
  for (let i = 0; i < MOST_TRIES; i++) {
    const h = (deep * missShallow - shallow * missDeep) / (missShallow - missDeep);
    const miss = missAt(h);
    if (Math.abs(miss) < WIDTH_SETTLED) return h;
    if (miss > 0) {
      [deep, missDeep] = [h, miss];
      missShallow /= 2;
    } else {
      [shallow, missShallow] = [h, miss];
      missDeep /= 2;
    }
  }
  return (deep + shallow) / 2;
}

/** Where each plane ends when every facet is stopped at a depth: distances from the wheel's axis, less the run-out. */
function stoppedByDepth(
  sim: Simulation,
  planes: Plane[],
  outs: Readonly<Record<Side, Vec3>>,
  random: Random,
): Plane[] {
  const { solved, spread } = sim;
  return planes.map(({ n, h }, k) => {
    const { side } = solved.plan.tiers[solved.facets[k].tierIndex];
    const error = (normal(random) * spread.depthMm) / solved.radiusMm;
    return { n, h: h - error - dot(outs[side], n) };
  });
}

/** Where each plane ends when every facet is stopped at its width, on the skin as it stands there. */
function stoppedByWidth(sim: Simulation, planes: Plane[], skin: readonly number[], random: Random): Plane[] {
  const cut = planes.map((plane) => ({ ...plane }));
  for (let k = 0; k < cut.length; k++) {
    const width = sim.targets[k] + (normal(random) * sim.spread.widthMm) / sim.solved.radiusMm;
    // The ball that stands for the skin here lies `skin[k]` out along this normal.
    const moved = cut.map(({ n, h }) => ({ n, h: h - skin[k] * dot(n, cut[k].n) }));
    cut[k] = { n: cut[k].n, h: distanceForWidth(sim, moved, k, Math.max(0, width)) + skin[k] };
  }
  return cut;
}

/** Cuts one piece by chance. */
export function cutByChance(sim: Simulation, random: Random): Trial {
  const { solved, spread } = sim;
  const turned = turnedPlanes(sim, random);
  const outs = runOuts(sim, random);
  const rows = randomRotation(random);
  const skin = turned.map(({ n }) => skinRise(spread.semiAxesMm, rows, n, solved.radiusMm));
  const planes =
    sim.stopBy === "depth"
      ? stoppedByDepth(sim, turned, outs, random)
      : stoppedByWidth(sim, turned, skin, random);
  return { planes, skin };
}

/** The gap between two circles on the skin as it stands at each, with both planes `deeper` by this; unit sphere. */
export function trialGap({ planes, skin }: Trial, { a, b }: PlannedPair, deeper = 0): number {
  const onSkin = (k: number): Plane => ({ n: planes[k].n, h: planes[k].h - skin[k] - deeper });
  return gapBetween(onSkin(a), onSkin(b));
}

/** Extra depths searched, unit sphere; beyond this no margin would help. */
const MOST_MARGIN = 0.25;
const HALVINGS = 20;

/** The least extra depth of all facets with which a trial's pair meets; Infinity when none within reach does. */
function marginNeeded(trial: Trial, pair: PlannedPair, tolerance: number): number {
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

/** Cuts `trials` pieces by chance and counts. */
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

/** What the tally says. Without planned pairs everything meets. */
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
