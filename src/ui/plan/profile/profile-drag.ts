/** What movements mean in the profile: along the arc the arm angle, in and out the depth. */
import type { Plan, Tier } from "../../../core/plan/document.ts";
import { CATCH_PX, DRAG_STARTS_PX } from "../drag/drag-maths.ts";
import type { DragPicture, ScreenPoint } from "../drag/tier-hold.ts";
import { type ProfileFrame, tierDirection, toSection } from "./profile-geometry.ts";

const DEG = 180 / Math.PI;
/**
 * In and out, the hand works as in a profile of at least this radius: most cuts take a fiftieth of the radius, which is a
 * pixel of a small picture, and a hand that meant to begin would be past every meeting.
 */
const LEAST_DEPTH_RADIUS_PX = 200;

/** @param fresh the tier that would come next, which may be taken hold of too */
export function profileDrag(plan: Plan, frame: ProfileFrame, fresh: Tier | null = null): DragPicture {
  const radiusMm = plan.piece.diameterMm / 2;
  const depthRadiusPx = Math.max(frame.radius, LEAST_DEPTH_RADIUS_PX);
  const tierOf = (tierId: string): Tier | undefined =>
    plan.tiers.find((t) => t.id === tierId) ?? (fresh?.id === tierId ? fresh : undefined);
  /** Elevation on the tier's own side, degrees, from the equator; and the distance from the centre over the radius. */
  const polar = (tier: Tier | undefined, [x, y]: ScreenPoint): readonly [number, number] => {
    const [r, z] = toSection(frame, x, y);
    return [Math.atan2(tier?.side === "back" ? -z : z, r) * DEG, Math.hypot(r, z)];
  };
  return {
    meant: (tierId, from, to) => {
      const tier = tierOf(tierId);
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      if (!tier || Math.hypot(dx, dy) < DRAG_STARTS_PX) return null;
      const [r, z] = tierDirection(tier.side, tier.armAngleDeg);
      // The section's z runs up, the screen's y down.
      const inward = Math.abs(dx * r - dy * z);
      const along = Math.abs(dx * z + dy * r);
      return along >= inward ? "angle" : "depth";
    },
    delta: (value, tierId, from, to) => {
      const tier = tierOf(tierId);
      const [a, b] = [polar(tier, from), polar(tier, to)];
      return value === "angle" ? b[0] - a[0] : (a[1] - b[1]) * radiusMm * (frame.radius / depthRadiusPx);
    },
    reach: (value) =>
      value === "angle" ? (CATCH_PX / frame.radius) * DEG : (CATCH_PX / depthRadiusPx) * radiusMm,
  };
}
