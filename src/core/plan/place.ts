/** Puts every facet of a plan on the wheel's real stops. Degrees; azimuth counts from +x, seen from the front. */
import { facetFrame } from "../geometry/plane.ts";
import type { Plan, Side, Tier } from "./document.ts";
import type { PlacedFacet } from "./solved.ts";

/** Added before rounding, in stops: an azimuth meant to fall half-way goes up whatever its last digit. */
const HALF_STOP_NUDGE = 1e-9;

/** Into [0, 360). */
export const wrapDeg = (deg: number): number => {
  const d = deg % 360;
  return d < 0 ? (d + 360 === 360 ? 0 : d + 360) : d + 0;
};

/** Stops of the wheel in one side's set-up; null for a free protractor. */
export const stopsOf = (plan: Plan, side: Side): number | null => {
  const own = plan.rig.setUps?.[side]?.wheelStops;
  return own === undefined ? plan.rig.wheelStops : own;
};

/** Azimuth at which stop 0 of one side's set-up stands. */
export const zeroOf = (plan: Plan, side: Side): number => plan.rig.setUps?.[side]?.zeroDeg ?? 0;

/** Azimuth asked of facet k (0-based) of a tier, before the wheel has its say. */
export const askedAzimuth = (tier: Tier, k: number): number => (tier.startDeg % 360) + (360 * k) / tier.count;

/** The nearest stop to an azimuth: k = floor(x + 0.5 + 1e-9) mod N. */
export function nearestStop(azimuthDeg: number, stops: number, zeroDeg = 0): number {
  const x = ((azimuthDeg - zeroDeg) * stops) / 360;
  const k = Math.floor(x + 0.5 + HALF_STOP_NUDGE) % stops;
  return k < 0 ? k + stops : k + 0;
}

/** Counts that this wheel divides evenly, ascending. */
export const evenCounts = (stops: number): number[] =>
  Array.from({ length: stops }, (_, i) => i + 1).filter((n) => stops % n === 0);

/** All facets in plan order: tiers in cutting order, facets in the order of their azimuth asked. */
export function placeFacets(plan: Plan): PlacedFacet[] {
  return plan.tiers.flatMap((tier, tierIndex) => {
    const stops = stopsOf(plan, tier.side);
    const zero = zeroOf(plan, tier.side);
    return Array.from({ length: tier.count }, (_, k): PlacedFacet => {
      const asked = askedAzimuth(tier, k);
      const wheelStop = stops === null ? null : nearestStop(asked, stops, zero);
      const azimuthDeg = wrapDeg(
        stops === null || wheelStop === null ? asked : zero + (360 * wheelStop) / stops,
      );
      return {
        id: `${tier.id}/${k + 1}`,
        tierIndex,
        armAngleDeg: tier.armAngleDeg,
        azimuthDeg,
        wheelStop,
        frame: facetFrame(tier.armAngleDeg, azimuthDeg, tier.side),
      };
    });
  });
}
