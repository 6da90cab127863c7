/**
 * An arm angle that is found again is never quite the same. What it costs: the plane, turned by d about the facet's
 * width, must go deeper until it clears the whole of the old face. Points of the old face satisfy n.x = h, so on the new normal
 * n' = n cos d + m sin d they stand at h cos d + y sin d, y the way up the meridian; the lowest decides.
 */
import { type MeetingPair, meetingPairs } from "../../check/pairs.ts";
import { gapBetween as circleGap, isCovered, meetingPoint } from "../../geometry/circles.ts";
import { facetFrame, type Plane } from "../../geometry/plane.ts";
import { type Slice, sliceFacet } from "../../geometry/slice.ts";
import { cutBall } from "../../geometry/solid.ts";
import type { SolidVertex } from "../../geometry/solid-types.ts";
import { dot } from "../../geometry/vec.ts";
import type { Rig } from "../../plan/document.ts";
import { toleranceOf } from "../../plan/solve.ts";
import type { SolvedPlan } from "../../plan/solved.ts";
import {
  depthsBefore,
  gapBetween,
  neighbourPairs,
  overlaps,
  planesAt,
  sizeAt,
  tierFacets,
  UNCUT,
} from "../stages/half-cut.ts";

const DEG = Math.PI / 180;

/** How to find an angle again; the words belong to the screens. */
export const FINDING_STEPS = [
  "set-pivot-height",
  "ink-facet",
  "touch-lightly",
  "read-ink",
  "adjust-height",
  "repeat-until-even",
] as const;

/** What an angle found again costs; of steeper and flatter by as much, the worse. */
export interface FoundAgain {
  readonly offDeg: number;
  /** Extra depth needed to clean the whole face, mm. */
  readonly extraDepthMm: number;
  /** How much the gap between neighbours of the tier changes, mm (below 0 closes); null for a facet alone. */
  readonly gapChangeMm: number | null;
  /** How much the edge they share changes, mm, mean over pairs; null when they share none before or after. */
  readonly edgeChangeMm: number | null;
  /** How far the turned planes miss the finished piece's corners that lie on this tier, mm; null when none does. */
  readonly cornerMissMm: number | null;
  /** Pairs of the finished piece that meet as planned and no longer do. */
  readonly meetsLost: number;
}

/** How far off an angle that is found again by ink comes back: common practice, no source. */
const DEFAULT_AGAIN_DEG = 0.5;
export const againDegOf = (rig: Rig): number => rig.spread?.againDeg ?? DEFAULT_AGAIN_DEG;

/** Extra depth of a plane turned by `offDeg` that clears a face reaching from `low` to `high` along its meridian, mm. */
export function extraDepth(planeMm: number, low: number, high: number, offDeg: number): number {
  const [c, s] = [Math.cos(offDeg * DEG), Math.sin(Math.abs(offDeg) * DEG)];
  const steeper = planeMm - (planeMm * c + low * s);
  const shallower = planeMm - (planeMm * c - high * s);
  return Math.max(0, steeper, shallower);
}

/** The plan with one tier's facets turned by `offDeg` and `extraMm` deeper. */
function turned(solved: SolvedPlan, tierIndex: number, offDeg: number, extraMm: number): SolvedPlan {
  const { first, count } = solved.tiers[tierIndex];
  const { side, armAngleDeg } = solved.plan.tiers[tierIndex];
  const planes = solved.planes.map((plane, k) =>
    k < first || k >= first + count
      ? plane
      : {
          n: facetFrame(armAngleDeg + offDeg, solved.facets[k].azimuthDeg, side).n,
          h: plane.h - extraMm / solved.radiusMm,
        },
  );
  return { ...solved, planes };
}

/** Length of the edge that a facet's outline shares with facet `b`, on the unit sphere; 0 without one. */
function edgeWith(slice: Slice, b: number): number {
  const { xs, ys, labels } = slice;
  return labels.reduce((sum, label, i) => {
    const next = (i + 1) % labels.length;
    return label === b ? sum + Math.hypot(xs[next] - xs[i], ys[next] - ys[i]) : sum;
  }, 0);
}

/** Mean length of the edges that neighbours of a tier share with the tier at a depth, earlier tiers final, mm; 0 without any. */
function meanEdge(solved: SolvedPlan, tierIndex: number, depthMm: number): number {
  const tier = solved.tiers[tierIndex];
  const depths = depthsBefore(solved, tierIndex);
  for (const k of tierFacets(tier)) depths[k] = depthMm;
  const planes = planesAt(solved, depths);
  const pairs = neighbourPairs(tier.count);
  const lengths = pairs.map(([a, b]) =>
    edgeWith(
      sliceFacet(tier.first + a, planes, (k) => depths[k] <= UNCUT),
      tier.first + b,
    ),
  );
  return (solved.radiusMm * lengths.reduce((sum, l) => sum + l, 0)) / Math.max(1, lengths.length);
}

/** The finished piece as planned, for comparing. */
interface Finished {
  readonly corners: readonly SolidVertex[];
  /** Pairs that meet. */
  readonly meets: readonly MeetingPair[];
  readonly planes: readonly Plane[];
}

const toleranceIn = (solved: SolvedPlan): number => toleranceOf(solved.plan) / solved.radiusMm;

function finishedOf(solved: SolvedPlan): Finished {
  const solid = cutBall(solved.planes);
  const pairs = meetingPairs(solved, solid, toleranceIn(solved));
  return {
    corners: solid.vertices,
    meets: pairs.filter(({ state }) => state !== "gap"),
    planes: solved.planes,
  };
}

/** How many pairs of the finished piece neither share an edge nor touch any more when one tier's planes stand as in `after`. */
function lostMeets(after: SolvedPlan, tierIndex: number, was: Finished): number {
  const { planes } = after;
  const tolerance = toleranceIn(after);
  const own = tierFacets(after.tiers[tierIndex]);
  const slices = new Map<number, Slice>();
  const sliceOf = (k: number): Slice => {
    const slice = slices.get(k) ?? sliceFacet(k, planes);
    slices.set(k, slice);
    return slice;
  };
  // A pair is as it was unless it has a facet of the tier, or one that stands differently reaches both of the pair's circles.
  const moves = ({ a, b }: MeetingPair): boolean =>
    own.some(
      (k) =>
        k === a ||
        k === b ||
        [was.planes[k], planes[k]].some((plane) => overlaps(plane, planes[a]) && overlaps(plane, planes[b])),
    );
  const touches = (a: number, b: number) =>
    Math.abs(circleGap(planes[a], planes[b])) <= tolerance &&
    !isCovered(meetingPoint(planes[a], planes[b]), a, b, planes);
  return was.meets.filter(
    (pair) => moves(pair) && edgeWith(sliceOf(pair.a), pair.b) <= tolerance && !touches(pair.a, pair.b),
  ).length;
}

/**
 * One direction of being off: gaps, edges, corners and meets with the tier turned and deep enough to be clean.
 * @param edgeBefore what `meanEdge` is as planned
 */
function inDirection(
  solved: SolvedPlan,
  tierIndex: number,
  offDeg: number,
  extraMm: number,
  was: Finished,
  edgeBefore: number,
) {
  const tier = solved.tiers[tierIndex];
  const after = turned(solved, tierIndex, offDeg, extraMm);
  const deeper = tier.depthMm + extraMm;
  const gaps = neighbourPairs(tier.count).map(([a, b]) => {
    const [i, j] = [tier.first + a, tier.first + b];
    return gapBetween(after, i, j, deeper, deeper) - gapBetween(solved, i, j, tier.depthMm, tier.depthMm);
  });
  const edgeAfter = meanEdge(after, tierIndex, deeper);
  const isOwn = (k: number) => k >= tier.first && k < tier.first + tier.count;
  const misses = was.corners.flatMap(({ at, facets }) =>
    facets.filter(isOwn).map((k) => Math.abs(dot(after.planes[k].n, at) - after.planes[k].h)),
  );
  return {
    gap: gaps.length ? Math.max(...gaps) : null,
    edge: edgeBefore > 0 || edgeAfter > 0 ? edgeAfter - edgeBefore : null,
    miss: misses.length ? solved.radiusMm * Math.max(...misses) : null,
    lost: lostMeets(after, tierIndex, was),
  };
}

/** Of two values the one further from 0; null when neither is there. */
const further = (x: number | null, y: number | null): number | null =>
  x === null || (y !== null && Math.abs(y) > Math.abs(x)) ? y : x;

/** What finding one tier's angle again `offDeg` off costs its facets and what they meet. */
function ofTier(solved: SolvedPlan, tierIndex: number, offDeg: number, was: Finished): FoundAgain {
  const tier = solved.tiers[tierIndex];
  const depths = depthsBefore(solved, tierIndex);
  for (const k of tierFacets(tier)) depths[k] = tier.depthMm;
  const planeMm = solved.radiusMm - tier.depthMm;
  const extraDepthMm = Math.max(
    ...tierFacets(tier).map((k) => {
      const [low, high] = sizeAt(solved, depths, k).polewardMm;
      return extraDepth(planeMm, low, high, offDeg);
    }),
  );
  const edgeBefore = meanEdge(solved, tierIndex, tier.depthMm);
  const [steeper, flatter] = [offDeg, -offDeg].map((off) =>
    inDirection(solved, tierIndex, off, extraDepthMm, was, edgeBefore),
  );
  return {
    offDeg,
    extraDepthMm,
    gapChangeMm: further(steeper.gap, flatter.gap),
    edgeChangeMm: further(steeper.edge, flatter.edge),
    cornerMissMm: further(steeper.miss, flatter.miss),
    meetsLost: Math.max(steeper.lost, flatter.lost),
  };
}

/** What each tier's angle found again `offDeg` off costs, in tier order; null for a tier that cuts nothing. */
export function foundAgain(
  solved: SolvedPlan,
  offDeg: number = againDegOf(solved.plan.rig),
): readonly (FoundAgain | null)[] {
  const was = finishedOf(solved);
  return solved.tiers.map((tier, i) => (tier.depthMm > 0 ? ofTier(solved, i, offDeg, was) : null));
}
