/**
 * A sensible next tier: as many facets as the last one, steeper on the same side, turned by half a facet, to its corners;
 * after a flat on the front pole, the first ring of the back; where one stands already, a ring where there is most room.
 */
import { cosDeg } from "../../../core/geometry/plane.ts";
import type { Plan, Tier } from "../../../core/plan/document.ts";
import { COUNTS } from "../../../core/plan/limits.ts";
import { evenCounts, stopsOf } from "../../../core/plan/place.ts";
import { freshTierId } from "../../../state/commands.ts";

const FIRST_COUNT = 12;
const FIRST_ANGLE = 30;
/** From here a further ring would be crowded: the next tier is a flat at the pole. */
const STEEPEST_RING = 68;

/** Whether a plan takes one more tier of `count` facets. */
const hasRoomFor = ({ tiers }: Plan, count: number): boolean =>
  tiers.length < COUNTS.tiers && tiers.reduce((sum, tier) => sum + tier.count, count) <= COUNTS.facets;

/** The even count of this wheel nearest to the wished one, at least 3. */
function countFor(plan: Plan, wished: number): number {
  const stops = stopsOf(plan, "front");
  if (stops === null) return wished;
  const even = evenCounts(stops).filter((count) => count >= 3 && count <= 120);
  if (even.length === 0) return Math.min(wished, stops);
  return even.reduce((best, count) => (Math.abs(count - wished) < Math.abs(best - wished) ? count : best));
}

/**
 * Arm angle of a ring of `count` facets that stands one facet's width nearer the pole than the ring at `armAngleDeg`:
 * touching facets span half of 360/count degrees times the cosine of their angle.
 */
function angleAbove(armAngleDeg: number, count: number): number {
  const spanDeg = (360 / count) * cosDeg(armAngleDeg);
  return Math.round(armAngleDeg + Math.max(spanDeg * 0.9, 8));
}

/** From here down a ring goes round the waist, and the back may start at its corners. */
const WAIST_DEG = 15;

/** The back's first ring: on from a ring round the waist, or the front's first ring once more. */
function firstOfBack(plan: Plan, id: string, name: string): Tier {
  const first = plan.tiers.find(({ count }) => count >= 3) ?? plan.tiers[0];
  const isWaist = first.armAngleDeg <= WAIST_DEG;
  return {
    id,
    name,
    side: "back",
    armAngleDeg: isWaist
      ? Math.min(STEEPEST_RING, angleAbove(first.armAngleDeg, first.count))
      : first.armAngleDeg,
    count: first.count,
    startDeg: isWaist ? first.startDeg + 180 / first.count : first.startDeg,
    depth: isWaist ? { rule: "corners", of: first.id } : { rule: "touch" },
  };
}

/** Latitude on the piece, degrees: +90 at the front pole. */
const latitudeOf = ({ side, armAngleDeg }: Tier): number => (side === "front" ? armAngleDeg : -armAngleDeg);

/** Midway in the widest gap between tiers and poles, turned by half a facet against the ring beside it. */
function ringInWidestGap(plan: Plan, id: string, name: string): Tier {
  const places = [
    { latitude: -90, tier: null },
    ...plan.tiers.map((tier) => ({ latitude: latitudeOf(tier), tier })),
    { latitude: 90, tier: null },
  ].sort((a, b) => a.latitude - b.latitude);
  const gaps = places
    .slice(1)
    .map((to, i) => ({ from: places[i], to, width: to.latitude - places[i].latitude }));
  const { from, to } = gaps.reduce((best, gap) => (gap.width > best.width ? gap : best));
  const latitude = Math.round((from.latitude + to.latitude) / 2);
  const beside = [from.tier, to.tier].find((tier) => tier && tier.count >= 3);
  const count = beside?.count ?? countFor(plan, FIRST_COUNT);
  return {
    id,
    name,
    side: latitude >= 0 ? "front" : "back",
    armAngleDeg: Math.abs(latitude),
    count,
    startDeg: (beside?.startDeg ?? 0) + 180 / count,
    depth: { rule: "depth", mm: plan.piece.diameterMm / 40 },
  };
}

/** @returns a tier that the plan can take, null when it holds as many tiers or facets as a plan may */
export function nextTier(plan: Plan, name: string): Tier | null {
  const tier = wishedTier(plan, name);
  return hasRoomFor(plan, tier.count) ? tier : null;
}

function wishedTier(plan: Plan, name: string): Tier {
  const id = freshTierId(plan.tiers);
  const last = plan.tiers.at(-1);
  if (!last)
    return {
      id,
      name,
      side: "front",
      armAngleDeg: FIRST_ANGLE,
      count: countFor(plan, FIRST_COUNT),
      startDeg: 0,
      depth: { rule: "touch" },
    };
  const isFrontDone = last.side === "front" && last.armAngleDeg === 90;
  if (isFrontDone && plan.tiers.every(({ side }) => side === "front")) return firstOfBack(plan, id, name);
  const angle = angleAbove(last.armAngleDeg, last.count);
  const isFlat = last.count < 3 || angle > STEEPEST_RING;
  const armAngleDeg = isFlat ? 90 : angle;
  if (plan.tiers.some((tier) => tier.side === last.side && Math.abs(tier.armAngleDeg - armAngleDeg) < 1))
    return ringInWidestGap(plan, id, name);
  return {
    id,
    name,
    side: last.side,
    armAngleDeg,
    count: isFlat ? 1 : last.count,
    startDeg: isFlat ? 0 : last.startDeg + 180 / last.count,
    depth:
      last.count < 3 ? { rule: "depth", mm: plan.piece.diameterMm / 20 } : { rule: "corners", of: last.id },
  };
}
