/** Where the wheel's stops differ from what the plan asks. */
import { askedAzimuth, evenCounts, stopsOf } from "../plan/place.ts";
import { degrees, many, mm } from "../plan/say.ts";
import type { Finding, SolvedPlan } from "../plan/solved.ts";

/** Signed turn from b to a, degrees, (-180, 180]. */
const turnBetween = (a: number, b: number): number => {
  const d = (((a - b) % 360) + 360) % 360;
  return d > 180 ? d - 360 : d;
};

/** Below this a start is on its stop: the last digits of a typed angle (0.01 deg is 5 um on a 60 mm marble). */
const ON_STOP_DEG = 0.005;

export function wheelFindings(solved: SolvedPlan): Finding[] {
  const { plan, radiusMm } = solved;
  return plan.tiers.flatMap((tier, i): Finding[] => {
    const stops = stopsOf(plan, tier.side);
    if (stops === null) return [];
    const { first, count } = solved.tiers[i];
    const errors = solved.facets
      .slice(first, first + count)
      .map((f, k) => turnBetween(f.azimuthDeg, askedAzimuth(tier, k)));
    if (stops % tier.count === 0) {
      const moved = errors[0];
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
          text: `Tier ${tier.id} starts between two stops: the wheel puts it ${degrees(Math.abs(moved))} away, at ${degrees(solved.facets[first].azimuthDeg)}.`,
        },
      ];
    }
    // Steps between next neighbours, against the even step.
    const even = 360 / tier.count;
    const worstStep = Math.max(...errors.map((e, k) => Math.abs(errors[(k + 1) % count] - e)));
    const errorDeg = Math.max(...errors.map(Math.abs));
    const gapMm = ((worstStep * Math.PI) / 180) * radiusMm * Math.cos((tier.armAngleDeg * Math.PI) / 180);
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
        text: `${many(tier.count, "facet")} don't divide a wheel of ${stops} stops: tier ${tier.id} is up to ${degrees(errorDeg)} off, which opens or narrows gaps by ${mm(gapMm)}. This wheel can do ${counts.filter((n) => n <= 120).join(", ")}; ${nearest} is nearest.`,
      },
    ];
  });
}
