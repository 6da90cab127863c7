/**
 * How wide a patch of round skin is: the diameter, along the surface, of the largest circle that fits between the facets
 * bordering it. The circle touches three of them (Apollonius on the sphere): its centre x obeys n_i.x = cos(rho_i + r)
 * for three planes, which is linear in (cos r, sin r) and closed by |x| = 1. Unit sphere.
 */
import { angularRadius } from "../geometry/circles.ts";
import type { Plane } from "../geometry/plane.ts";
import type { SkinPatch } from "../geometry/solid-types.ts";
import { EPSILON, SAME_PLACE } from "../geometry/tolerance.ts";
import { add, angleBetween, cross, dot, scale, type Vec3 } from "../geometry/vec.ts";

/** The x with n_i.x = c_i, for three normals whose triple product is not 0. */
function solveThree(n: readonly [Vec3, Vec3, Vec3], c: Vec3, det: number): Vec3 {
  const sum = add(
    add(scale(cross(n[1], n[2]), c[0]), scale(cross(n[2], n[0]), c[1])),
    scale(cross(n[0], n[1]), c[2]),
  );
  return scale(sum, 1 / det);
}

/** Circles that touch three planes' circles from outside: centre and angular radius r > 0. */
function touchingThree(planes: readonly [Plane, Plane, Plane]): { at: Vec3; r: number }[] {
  const n = [planes[0].n, planes[1].n, planes[2].n] as const;
  const det = dot(n[0], cross(n[1], n[2]));
  if (Math.abs(det) < EPSILON) return [];
  const rho = planes.map(angularRadius);
  // x = A cos r + B sin r
  const a = solveThree(n, [Math.cos(rho[0]), Math.cos(rho[1]), Math.cos(rho[2])], det);
  const b = solveThree(n, [-Math.sin(rho[0]), -Math.sin(rho[1]), -Math.sin(rho[2])], det);
  // |x| = 1: A.A c^2 + 2 A.B s c + B.B s^2 = c^2 + s^2, a quadratic in t = tan r.
  const [qa, qb, qc] = [dot(b, b) - 1, 2 * dot(a, b), dot(a, a) - 1];
  const under = qb * qb - 4 * qa * qc;
  if (under < 0 || Math.abs(qa) < EPSILON) return [];
  return [1, -1].flatMap((sign) => {
    const r = Math.atan((-qb + sign * Math.sqrt(under)) / (2 * qa));
    return [r, r + Math.PI]
      .filter((angle) => angle > 0 && angle < Math.PI)
      .map((angle) => ({ at: add(scale(a, Math.cos(angle)), scale(b, Math.sin(angle))), r: angle }));
  });
}

/** Planes of a patch beyond which all triples are too many to try; then every k-th is taken. */
const MOST_PLANES = 48;

/** Diameter of the largest circle within the patch, radians; null when no three facets border it. */
export function widthOfPatch(patch: SkinPatch, planes: readonly Plane[]): number | null {
  const every = Math.ceil(patch.facets.length / MOST_PLANES);
  const own = patch.facets.filter((_, i) => i % every === 0);
  const rho = planes.map(angularRadius);
  const isFree = (at: Vec3, r: number) =>
    planes.every((plane, i) => angleBetween(plane.n, at) - rho[i] >= r - SAME_PLACE);
  let widest = 0;
  for (let i = 0; i < own.length; i++)
    for (let j = i + 1; j < own.length; j++)
      for (let k = j + 1; k < own.length; k++)
        for (const { at, r } of touchingThree([planes[own[i]], planes[own[j]], planes[own[k]]]))
          if (2 * r > widest && isFree(at, r)) widest = 2 * r;
  return widest > 0 ? widest : null;
}
