/** Where the wheel's stops differ from what the plan asks. */
import type { PlanFinding } from "../plan/finding.ts";
import { askedAzimuth, evenCounts, stopsOf } from "../plan/place.ts";
import type { SolvedPlan } from "../plan/solved.ts";

/** Signed turn from b to a, degrees, (-180, 180]. */
const turnBetween = (a: number, b: number): number => {
  const d = (((a - b) % 360) + 360) % 360;
  return d > 180 ? d - 360 : d;
};

/** Below this a start is on its stop: the last digits of a typed angle (0.01 deg is 5 um on a 60 mm marble). */
export const ON_STOP_DEG = 0.005;

/** How far each facet of a tier stands from where it was asked, signed degrees, and what that does to the gaps. */
export interface WheelErrors {
  readonly offDeg: readonly number[];
  /** Greatest distance of a facet from its place, degrees. */
  readonly errorDeg: number;
  /** Of all gaps between next neighbours the most that one is opened or narrowed, mm along the skin. */
  readonly gapMm: number;
}

export function wheelErrors(solved: SolvedPlan, tierIndex: number): WheelErrors {
  const tier = solved.plan.tiers[tierIndex];
  const { first, count } = solved.tiers[tierIndex];
  const offDeg = solved.facets
    .slice(first, first + count)
    .map((f, k) => turnBetween(f.azimuthDeg, askedAzimuth(tier, k)));
  const worstStep = Math.max(...offDeg.map((e, k) => Math.abs(offDeg[(k + 1) % count] - e)));
  return {
    offDeg,
    errorDeg: Math.max(...offDeg.map(Math.abs)),
    gapMm: ((worstStep * Math.PI) / 180) * solved.radiusMm * Math.cos((tier.armAngleDeg * Math.PI) / 180),
  };
}

export function wheelFindings(solved: SolvedPlan): PlanFinding[] {
  const { plan } = solved;
  return plan.tiers.flatMap((tier, i): PlanFinding[] => {
    const stops = stopsOf(plan, tier.side);
    if (stops === null) return [];
    const { first } = solved.tiers[i];
    const { offDeg, errorDeg, gapMm } = wheelErrors(solved, i);
    if (stops % tier.count === 0) {
      const moved = offDeg[0];
      if (Math.abs(moved) <= ON_STOP_DEG || tier.armAngleDeg === 90) return [];
      return [
        {
          code: "start-moved",
          severity: "info",
          tier: tier.id,
          data: {
            stops,
            movedDeg: moved,
            startDeg: tier.startDeg,
            placedDeg: solved.facets[first].azimuthDeg,
          },
        },
      ];
    }
    const even = 360 / tier.count;
    const counts = evenCounts(stops);
    const nearest = counts
      .filter((n) => n <= 120)
      .sort((a, b) => Math.abs(a - tier.count) - Math.abs(b - tier.count))[0];
    return [
      {
        code: "uneven",
        severity: "warn",
        tier: tier.id,
        data: { stops, count: tier.count, errorDeg, gapMm, evenStepDeg: even, counts, nearestCount: nearest },
      },
    ];
  });
}
