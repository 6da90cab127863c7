/**
 * What happens to light at a smooth boundary between two clear media: Fresnel, Snell, total internal reflection.
 * Unit vectors. `d` runs with the light, `n` stands against it (cosI = -d.n >= 0), `eta` = index left / index entered.
 */
import type { Vec3 } from "../geometry/vec.ts";

/**
 * Squared cosine of the refracted angle, negative under total internal reflection.
 * Snell: sin t = eta sin i.
 */
export const cos2Refracted = (cosI: number, eta: number): number => 1 - eta * eta * (1 - cosI * cosI);

/**
 * Reflectance for unpolarised light, 0 .. 1; 1 under total internal reflection.
 * Exact dielectric equations (Born and Wolf, Principles of Optics, 1.5.2), mean of both polarisations.
 */
export function fresnel(cosI: number, eta: number): number {
  const cos2T = cos2Refracted(cosI, eta);
  if (cos2T <= 0) return 1;
  const cosT = Math.sqrt(cos2T);
  const s = (eta * cosI - cosT) / (eta * cosI + cosT);
  const p = (cosI - eta * cosT) / (cosI + eta * cosT);
  return 0.5 * (s * s + p * p);
}

/** Mirror direction d + 2 cosI n. */
export const reflectRay = (d: Vec3, n: Vec3, cosI: number): Vec3 => [
  d[0] + 2 * cosI * n[0],
  d[1] + 2 * cosI * n[1],
  d[2] + 2 * cosI * n[2],
];

/** Refracted unit direction. Asks that the ray is not totally reflected; at the critical angle it runs along the surface. */
export function refractRay(d: Vec3, n: Vec3, cosI: number, eta: number): Vec3 {
  const k = eta * cosI - Math.sqrt(Math.max(0, cos2Refracted(cosI, eta)));
  return [eta * d[0] + k * n[0], eta * d[1] + k * n[1], eta * d[2] + k * n[2]];
}
