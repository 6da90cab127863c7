/**
 * How likely the facets meet when the hand, the wheel and the marble are as they are: many pieces cut by chance.
 *
 * Stopping by depth puts a plane at a fixed distance from the wheel's axis, whatever the skin does there. Stopping by width follows the
 * skin: the plane lies where the facet, on the skin as it is there, has its planned width. The skin near a facet is
 * taken as a ball of the plan's radius moved along the normal to where the ellipsoid's skin lies. A pair that should meet
 * does when the gap between its circles on that skin is within the tolerance. Work goes in chunks, so that a worker can
 * tell its progress.
 */

import { meetingPairs } from "../../check/pairs.ts";
import { gapBetween } from "../../geometry/circles.ts";
import { facetFrame, type Plane } from "../../geometry/plane.ts";
import { sliceFacet, widthOf } from "../../geometry/slice.ts";
import { cutBall } from "../../geometry/solid.ts";
import { dot, type Vec3 } from "../../geometry/vec.ts";
import type { Side } from "../../plan/document.ts";
import { toleranceOf } from "../../plan/solve.ts";
import type { SolvedPlan } from "../../plan/solved.ts";
import { stagesOf } from "../stages/default-stages.ts";
import { overlaps } from "../stages/half-cut.ts";
import { facetStages, stageCount, tierStageDepths } from "../stages/stages.ts";
import { normal, type Random, randomRotation } from "./chance.ts";
import type { SpreadSetting, StopBy } from "./spread.ts";

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
  const counts = solved.plan.tiers.map((tier) => stageCount(tier, stages));
  const targets = solved.tiers.flatMap((_, i) =>
    facetStages(solved, i, stages).map(
      (own) => (own[counts[i] - 1]?.widthWhileGroundMm ?? 0) / solved.radiusMm,
    ),
  );
  const waitingH = solved.tiers.map((_, i) => {
    const before = tierStageDepths(solved, i, stages)[counts[i] - 2] ?? 0;
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
