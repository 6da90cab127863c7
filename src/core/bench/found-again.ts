/**
 * An arm angle that is found again is never quite the same. What it costs: the plane, turned by d about the facet's
 * width, must go deeper until it clears the whole of the old face. Points of the old face satisfy n.x = h, so on the new normal
 * n' = n cos d + m sin d they stand at h cos d + y sin d, y the way up the meridian; the lowest decides.
 */
import { facetFrame } from "../geometry/plane.ts";
import { cutBall } from "../geometry/solid.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { depthsBefore, gapBetween, neighbourPairs, planesAt, sizeAt, tierFacets, UNCUT } from "./half-cut.ts";

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

export interface FoundAgain {
  readonly offDeg: number;
  /** Extra depth needed to clean the whole face, the worse of steeper and shallower, mm. */
  readonly extraDepthMm: number;
  /** How much the gap between neighbours of the tier changes, mm (below 0 closes); null for a facet alone. */
  readonly gapChangeMm: number | null;
  /** How much the edge they share changes, mm, mean over pairs; null when they share none before or after. */
  readonly edgeChangeMm: number | null;
}

/** Extra depth of a plane turned by `offDeg` that clears a face reaching from `low` to `high` along its meridian, mm. */
export function extraDepth(planeMm: number, low: number, high: number, offDeg: number): number {
  const [c, s] = [Math.cos(offDeg * DEG), Math.sin(Math.abs(offDeg) * DEG)];
  const steeper = planeMm - (planeMm * c + low * s);
  const shallower = planeMm - (planeMm * c - high * s);
  return Math.max(0, steeper, shallower);
}

/** The plan's facets of one tier at another angle. */
function tilted(solved: SolvedPlan, tierIndex: number, armAngleDeg: number): SolvedPlan {
  const tier = solved.tiers[tierIndex];
  const { side } = solved.plan.tiers[tierIndex];
  const angle = Math.min(90, Math.max(0, armAngleDeg));
  const planes = solved.planes.map((plane, k) =>
    k < tier.first || k >= tier.first + tier.count
      ? plane
      : { n: facetFrame(angle, solved.facets[k].azimuthDeg, side).n, h: plane.h },
  );
  return { ...solved, planes };
}

/** Mean length of the edges that neighbours of a tier share with the tier at a depth, earlier tiers final, mm; 0 without any. */
function meanEdge(solved: SolvedPlan, tierIndex: number, depthMm: number): number {
  const tier = solved.tiers[tierIndex];
  const depths = depthsBefore(solved, tierIndex);
  for (const k of tierFacets(tier)) depths[k] = depthMm;
  const cut = depths.flatMap((depth, k) => (depth > UNCUT ? [k] : []));
  const { edges } = cutBall(planesAt(solved, depths).filter((_, k) => depths[k] > UNCUT));
  const pairs = neighbourPairs(tier.count).map(([a, b]) => [
    cut.indexOf(tier.first + a),
    cut.indexOf(tier.first + b),
  ]);
  const lengths = pairs.map(
    ([a, b]) => edges.find((e) => (e.a === a && e.b === b) || (e.a === b && e.b === a))?.length ?? 0,
  );
  return (solved.radiusMm * lengths.reduce((sum, l) => sum + l, 0)) / Math.max(1, lengths.length);
}

/** What finding a tier's angle again `offDeg` off costs its facets and their meets. */
export function foundAgain(solved: SolvedPlan, tierIndex: number, offDeg: number): FoundAgain {
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
  const { armAngleDeg } = solved.plan.tiers[tierIndex];
  const turned = tilted(solved, tierIndex, armAngleDeg + offDeg);
  const deeper = tier.depthMm + extraDepthMm;
  const gaps = neighbourPairs(tier.count).map(([a, b]) => {
    const [i, j] = [tier.first + a, tier.first + b];
    return gapBetween(turned, i, j, deeper, deeper) - gapBetween(solved, i, j, tier.depthMm, tier.depthMm);
  });
  const [before, after] = [meanEdge(solved, tierIndex, tier.depthMm), meanEdge(turned, tierIndex, deeper)];
  return {
    offDeg,
    extraDepthMm,
    gapChangeMm: gaps.length ? Math.max(...gaps) : null,
    edgeChangeMm: before > 0 || after > 0 ? after - before : null,
  };
}
