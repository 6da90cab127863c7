/** The numbers of one tier that a person watches while it moves, in millimetres and degrees. */
import { gapBetween } from "../../../core/geometry/circles.ts";
import type { Solid } from "../../../core/geometry/solid-types.ts";
import type { SolvedPlan } from "../../../core/plan/solved.ts";

export interface TierNumbers {
  readonly armAngleDeg: number;
  readonly depthMm: number;
  /** Of its widest facet; 0 when all are swallowed. */
  readonly widthMm: number;
  /** Between its next neighbours, the widest; null for one facet alone. */
  readonly gapMm: number | null;
  /** Shared by its next neighbours, the shortest; 0 where a pair shares none. */
  readonly edgeMm: number;
  /** Azimuth of its first facet. */
  readonly startDeg: number;
  /** Whether its depth rule could be met. */
  readonly met: boolean;
}

export function tierNumbers(solved: SolvedPlan, solid: Solid, tierIndex: number): TierNumbers {
  const { radiusMm, planes, facets, plan } = solved;
  const { first, count, depthMm, met } = solved.tiers[tierIndex];
  const own = Array.from({ length: count }, (_, k) => first + k);
  const pairs = count >= 3 ? count : count - 1;
  let gap: number | null = null;
  let edge = pairs > 0 ? Number.POSITIVE_INFINITY : 0;
  for (let k = 0; k < pairs; k++) {
    const [a, b] = [first + k, first + ((k + 1) % count)];
    gap = Math.max(gap ?? Number.NEGATIVE_INFINITY, gapBetween(planes[a], planes[b]));
    const shared = solid.edges.find((e) => e.a === Math.min(a, b) && e.b === Math.max(a, b));
    edge = Math.min(edge, shared?.length ?? 0);
  }
  return {
    armAngleDeg: plan.tiers[tierIndex].armAngleDeg,
    depthMm,
    widthMm: Math.max(...own.map((k) => solid.facets[k].width)) * radiusMm,
    gapMm: gap === null ? null : gap * radiusMm,
    edgeMm: edge * radiusMm,
    startDeg: facets[first].azimuthDeg,
    met,
  };
}

/** Tiers whose rule was met before and is not now: what a drag costs further on. */
export function lostRules(before: SolvedPlan, now: SolvedPlan): string[] {
  const met = new Map(before.tiers.map((t) => [t.tierId, t.met]));
  return now.tiers.filter((t) => !t.met && met.get(t.tierId)).map((t) => t.tierId);
}
