/** Two circles that planes cut out of the unit sphere: how far apart, and where they meet. */
import type { Plane } from "./plane.ts";
import { EPSILON } from "./tolerance.ts";
import { addScaled, angleBetween, dot, normalize, scale, type Vec3 } from "./vec.ts";

/** Angular radius of a plane's circle, 0 .. pi. */
export const angularRadius = (plane: Plane): number => Math.acos(Math.max(-1, Math.min(1, plane.h)));

/** Signed distance along the sphere between two uncut circles, radians: delta - rho_a - rho_b. */
export const gapBetween = (a: Plane, b: Plane): number =>
  angleBetween(a.n, b.n) - angularRadius(a) - angularRadius(b);

/** The middle of that gap, on the great circle from a to b: where the circles touch when the gap is zero. */
export function meetingPoint(a: Plane, b: Plane): Vec3 {
  const toward = normalize(addScaled(b.n, a.n, -dot(a.n, b.n)));
  const angle = angularRadius(a) + gapBetween(a, b) / 2;
  return addScaled(scale(a.n, Math.cos(angle)), toward, Math.sin(angle));
}

/** True when the cap of a plane other than a and b covers a point of the sphere, such as the one where their circles meet. */
export function isCovered(point: Vec3, a: number, b: number, planes: readonly Plane[]): boolean {
  return planes.some((plane, c) => c !== a && c !== b && dot(plane.n, point) > plane.h + EPSILON);
}
