/** What to do after a mishap at the lap: one facet ground too deep, or a chip. Always by asking the plan again, never by eye. */

import { designsToClear, reachOf } from "../../check/inside-clearance.ts";
import { meetingPairs } from "../../check/pairs.ts";
import { cutBall } from "../../geometry/solid.ts";
import { dot, normalize, scale, type Vec3 } from "../../geometry/vec.ts";
import type { Plan } from "../../plan/document.ts";
import { solvePlan, toleranceOf } from "../../plan/solve.ts";
import type { SolvedPlan } from "../../plan/solved.ts";

/** How a tier comes out after a mend. */
interface TierChange {
  readonly tier: string;
  readonly depthMm: number;
  readonly deeperMm: number;
  readonly widthMm: number;
  readonly widerMm: number;
  /** Whether its depth rule can still be met. */
  readonly met: boolean;
}

export interface Mended {
  readonly plan: Plan;
  /** Tiers whose depth or width changes, in plan order. */
  readonly changes: readonly TierChange[];
  /** Glass that the piece has less than planned; below 0 when tiers still to cut come out shallower. */
  readonly removedMm3: number;
  /** True when every pair that met before still meets, and every rule that was met still is. */
  readonly stillMeets: boolean;
  /** Pairs, by facet id, that met before and don't any more. */
  readonly lost: readonly (readonly [string, string])[];
}

/** A change of width or depth smaller than this can't be told at the bench, mm. */
const TELLABLE_MM = 0.005;

/** The plan with one tier at a fixed depth. */
function withDepth(plan: Plan, tierIndex: number, mm: number): Plan {
  const tier = { ...plan.tiers[tierIndex], depth: { rule: "depth", mm } as const };
  return { ...plan, tiers: plan.tiers.with(tierIndex, tier) };
}

interface State {
  readonly solved: SolvedPlan;
  readonly volume: number;
  readonly widths: readonly number[];
  readonly meets: ReadonlyMap<string, readonly [string, string]>;
}

function stateOf(plan: Plan): State {
  const solved = solvePlan(plan);
  const solid = cutBall(solved.planes);
  const R = solved.radiusMm;
  const pairs = meetingPairs(solved, solid, toleranceOf(plan) / R).filter((p) => p.state !== "gap");
  return {
    solved,
    volume: solid.volume * R ** 3,
    widths: solved.tiers.map(({ first, count }) =>
      Math.max(0, ...solid.facets.slice(first, first + count).map((f) => f.width * R)),
    ),
    meets: new Map(
      pairs.map(({ a, b }) => [`${a} ${b}`, [solved.facets[a].id, solved.facets[b].id] as const]),
    ),
  };
}

/** The plan with one tier deepened; tiers that are cut already and would come out shallower stay as they are. */
function deepened(before: State, tierIndex: number, depthMm: number, cutTiers: number): Plan {
  return before.solved.tiers.slice(0, cutTiers).reduce(
    (plan, tier, i) => {
      const isShallower = i !== tierIndex && solvePlan(plan).tiers[i].depthMm < tier.depthMm;
      return isShallower ? withDepth(plan, i, tier.depthMm) : plan;
    },
    withDepth(before.solved.plan, tierIndex, depthMm),
  );
}

/**
 * Compares the plan with one tier deepened to `depthMm`, everything that follows it solved again, with the plan as it was.
 * @param cutTiers how many tiers, in cutting order, are on the piece already: glass can't be put back
 */
function deepen(before: State, tierIndex: number, depthMm: number, cutTiers: number): Mended {
  const plan = deepened(before, tierIndex, depthMm, cutTiers);
  const after = stateOf(plan);
  const changes = after.solved.tiers.map((tier, i): TierChange => {
    const was = before.solved.tiers[i];
    return {
      tier: tier.tierId,
      depthMm: tier.depthMm,
      deeperMm: tier.depthMm - was.depthMm,
      widthMm: after.widths[i],
      widerMm: after.widths[i] - before.widths[i],
      met: tier.met,
    };
  });
  const lost = [...before.meets].filter(([key]) => !after.meets.has(key)).map(([, ids]) => ids);
  const rulesHold = after.solved.tiers.every((tier, i) => tier.met || !before.solved.tiers[i].met);
  return {
    plan,
    changes: changes.filter(
      (c) => Math.abs(c.deeperMm) > TELLABLE_MM || Math.abs(c.widerMm) > TELLABLE_MM || !c.met,
    ),
    removedMm3: before.volume - after.volume,
    stillMeets: lost.length === 0 && rulesHold,
    lost,
  };
}

/**
 * One facet was ground too deep: the whole tier is brought to it, tiers still to cut are solved again.
 * @param depthMm depth of that facet, deeper than its tier's
 */
export const matchTooDeep = (plan: Plan, tierIndex: number, depthMm: number): Mended =>
  deepen(stateOf(plan), tierIndex, depthMm, tierIndex + 1);

/** A chip: `at` the direction from the centre to its middle, `depthMm` from the surface there, `diameterMm` across. */
export interface Chip {
  readonly at: Vec3;
  readonly depthMm: number;
  readonly diameterMm: number;
}

export interface Recut extends Mended {
  readonly tier: string;
  readonly facet: string;
  /** How much deeper the tier goes. */
  readonly deeperMm: number;
  /** How far the recut breaks into the design inside where the finished piece did not, mm; 0 where it stays clear. */
  readonly intoInsideMm: number;
}

/** How far the planes reach into the design inside at most, mm; 0 or less where they stay clear of it. */
function intoInside({ planes, radiusMm, plan }: SolvedPlan): number {
  const designs = designsToClear(plan.piece);
  const reaches = planes.flatMap(({ n, h }) => designs.map((design) => reachOf(design, n) - h));
  return Math.max(Number.NEGATIVE_INFINITY, ...reaches) * radiusMm;
}

/** How far the finished surface is from the centre in a direction, unit sphere. */
function surfaceAlong(solved: SolvedPlan, u: Vec3): number {
  return solved.planes.reduce((least, { n, h }) => {
    const c = dot(n, u);
    return c > 0 ? Math.min(least, h / c) : least;
  }, 1);
}

/**
 * Least distance over a chip's bottom along a facet's normal, unit sphere: the plane must come this far in to take the
 * whole chip. The bottom is a disc square to `at`.
 */
function bottomAlong(n: Vec3, u: Vec3, bottom: number, chipRadius: number): number {
  const c = dot(n, u);
  return bottom * c - chipRadius * Math.sqrt(Math.max(0, 1 - c * c));
}

/**
 * Every recut that takes a chip away, the one that costs the least glass first; those that still meet before those that
 * don't, and those that break into the design inside last. Each deepens one tier of the finished piece, and those that refer to it as far as they
 * must follow. A tier that would have to come to the centre
 * or beyond is left out. Empty when the chip is outside the finished piece already, or no facet faces it.
 */
export function recutsFor(plan: Plan, chip: Chip): readonly Recut[] {
  const before = stateOf(plan);
  const { solved } = before;
  const u = normalize(chip.at);
  const bottom = surfaceAlong(solved, u) - chip.depthMm / solved.radiusMm;
  const was = intoInside(solved);
  const recuts = solved.tiers.flatMap((tier, tierIndex): Recut[] => {
    const reaches = Array.from({ length: tier.count }, (_, i) => {
      const k = tier.first + i;
      const { n, h } = solved.planes[k];
      return { k, h, to: bottomAlong(n, u, bottom, chip.diameterMm / 2 / solved.radiusMm) };
    });
    // The facet of the tier that takes the chip with the least deepening.
    const best = reaches.reduce((a, b) => (b.h - b.to < a.h - a.to ? b : a));
    if (best.to <= 0 || best.to >= best.h) return [];
    const deeperMm = (best.h - best.to) * solved.radiusMm;
    const mended = deepen(before, tierIndex, tier.depthMm + deeperMm, solved.tiers.length);
    const into = intoInside(solvePlan(mended.plan));
    const intoInsideMm = into > Math.max(0, was) + TELLABLE_MM ? into : 0;
    return [{ ...mended, tier: tier.tierId, facet: solved.facets[best.k].id, deeperMm, intoInsideMm }];
  });
  return recuts.sort(
    (a, b) =>
      Number(a.intoInsideMm > 0) - Number(b.intoInsideMm > 0) ||
      Number(b.stillMeets) - Number(a.stillMeets) ||
      a.removedMm3 - b.removedMm3,
  );
}

/** Direction of a place on a facet, `upMm` from its foot towards the pole and `acrossMm` to the right, for pointing at a chip. */
export function placeOnFacet(solved: SolvedPlan, k: number, acrossMm: number, upMm: number): Vec3 {
  const { frame, tierIndex } = solved.facets[k];
  const up = solved.plan.tiers[tierIndex].side === "front" ? 1 : -1;
  const { n, h } = solved.planes[k];
  const [x, y] = [(up * acrossMm) / solved.radiusMm, (up * upMm) / solved.radiusMm];
  const [foot, right, above] = [scale(n, h), scale(frame.across, x), scale(frame.meridian, y)];
  return normalize([
    foot[0] + right[0] + above[0],
    foot[1] + right[1] + above[1],
    foot[2] + right[2] + above[2],
  ]);
}
