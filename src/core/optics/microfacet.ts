/**
 * A rough boundary between two clear media, as a random walk on a Smith microsurface with GGX slopes: a ray bounces and
 * refracts from micro-facet to micro-facet until it leaves, so no light is lost whatever the roughness.
 * Source: E. Heitz, J. Hanika, E. d'Eon, C. Dachsbacher, Multiple-Scattering Microfacet BSDFs with the Smith Model,
 * ACM Trans. Graph. 35(4), 2016, sections 3 to 5; heights uniform in -1 .. 1 (the result does not depend on that choice).
 *
 * Local frame: z along the outward normal of the facet. `outside` tells the side of the microsurface a ray is on.
 */
import type { Vec3 } from "../geometry/vec.ts";
import { cos2Refracted, fresnel } from "./fresnel.ts";
import { nextRandom, type Random } from "./random.ts";

/** Steps after which a walk is cut short; fewer than one in a million gets there, and it then leaves along its last direction. */
const MOST_SCATTERINGS = 64;
/** Height of the start: just under the top, so that the first meeting is with the surface itself. */
const TOP = 1;
/** Directions this close to level or upright take the limit of the height formula. */
const LEVEL = 1e-4;
const UPRIGHT = 0.9999;

/** GGX distribution of normals, per solid angle; alpha > 0, m.z > 0. Source: Walter et al., EGSR 2007, eq. 33. */
export function ggxDistribution(m: Vec3, alpha: number): number {
  if (m[2] <= 0) return 0;
  const a2 = alpha * alpha;
  const s = (m[0] * m[0] + m[1] * m[1]) / a2 + m[2] * m[2];
  return 1 / (Math.PI * a2 * s * s);
}

/** Smith's Lambda for GGX, signed: -1 - Lambda for directions below the horizon. Source: Heitz 2014, eq. 72. */
export function smithLambda(cosTheta: number, alpha: number): number {
  const c = Math.max(-1, Math.min(1, cosTheta));
  if (c > UPRIGHT) return 0;
  if (c < -UPRIGHT) return -1;
  const tan2 = (1 - c * c) / (c * c);
  return 0.5 * (-1 + Math.sign(c) * Math.sqrt(1 + alpha * alpha * tan2));
}

/**
 * A visible normal seen from `w` (unit, any side of the horizon), chosen with density <w,m> D(m) / projected area.
 * Source: E. Heitz, Sampling the GGX Distribution of Visible Normals, JCGT 7(4), 2018. Its construction holds below the
 * horizon too, where the microsurface is seen from beneath its mean level.
 */
export function sampleVisibleNormal(w: Vec3, alpha: number, u1: number, u2: number): Vec3 {
  // Stretch to the hemisphere of roughness 1.
  const [sx, sy, sz] = [alpha * w[0], alpha * w[1], w[2]];
  const sl = 1 / Math.sqrt(sx * sx + sy * sy + sz * sz);
  const [vx, vy, vz] = [sx * sl, sy * sl, sz * sl];
  const level = vx * vx + vy * vy;
  const inv = level > 0 ? 1 / Math.sqrt(level) : 0;
  const [ax, ay] = level > 0 ? [-vy * inv, vx * inv] : [1, 0];
  const [bx, by, bz] = [-vz * ay, vz * ax, vx * ay - vy * ax];
  // A point of the projected hemisphere: a half disc and a half ellipse squashed by the view.
  const r = Math.sqrt(u1);
  const phi = 2 * Math.PI * u2;
  const t1 = r * Math.cos(phi);
  const s = 0.5 * (1 + vz);
  const t2 = (1 - s) * Math.sqrt(Math.max(0, 1 - t1 * t1)) + s * r * Math.sin(phi);
  const t3 = Math.sqrt(Math.max(0, 1 - t1 * t1 - t2 * t2));
  // Back to the ellipsoid.
  const nx = alpha * (t1 * ax + t2 * bx + t3 * vx);
  const ny = alpha * (t1 * ay + t2 * by + t3 * vy);
  const nz = Math.max(0, t2 * bz + t3 * vz);
  const nl = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz);
  return [nx * nl, ny * nl, nz * nl];
}

/** Share of the microsurface below height h (uniform heights), and its inverse. */
const shareBelow = (h: number): number => Math.max(0, Math.min(1, 0.5 * (h + 1)));
const heightAt = (share: number): number => 2 * share - 1;

/**
 * Height at which a ray in direction `cosTheta` (cosine to the normal) that starts at height h next meets the surface;
 * Infinity when it gets away. Source: Heitz et al. 2016, algorithm 1.
 */
function nextHeight(cosTheta: number, h: number, alpha: number, u: number): number {
  if (cosTheta > UPRIGHT) return Number.POSITIVE_INFINITY;
  if (cosTheta < -UPRIGHT) return heightAt(u * shareBelow(h));
  if (Math.abs(cosTheta) < LEVEL) return h;
  const lambda = smithLambda(cosTheta, alpha);
  const away = cosTheta <= 0 ? 0 : shareBelow(h) ** lambda;
  if (u > 1 - away) return Number.POSITIVE_INFINITY;
  return heightAt(Math.min(1, shareBelow(h) / (1 - u) ** (1 / lambda)));
}

export interface Crossing {
  readonly d: Vec3;
  readonly outside: boolean;
}

/**
 * Sends one ray across the rough boundary; its weight stays 1.
 * @param d unit direction in the local frame, running towards the boundary
 * @param outside the side it comes from
 * @param alpha GGX roughness > 0
 * @param eta index outside / index inside
 */
export function walkMicrosurface(
  d: Vec3,
  outside: boolean,
  alpha: number,
  eta: number,
  random: Random,
): Crossing {
  // Below the surface everything is mirrored: heights and directions change sign.
  let side = outside ? 1 : -1;
  let w = d;
  let h = TOP;
  for (let scattering = 0; scattering < MOST_SCATTERINGS; scattering++) {
    h = nextHeight(side * w[2], h, alpha, nextRandom(random));
    if (h === Number.POSITIVE_INFINITY) return { d: w, outside: side > 0 };
    // The micro-facet it meets, as seen from its own side.
    const v: Vec3 = [-side * w[0], -side * w[1], -side * w[2]];
    const m = sampleVisibleNormal(v, alpha, nextRandom(random), nextRandom(random));
    const cosI = v[0] * m[0] + v[1] * m[1] + v[2] * m[2];
    const etaHere = side > 0 ? eta : 1 / eta;
    // Mirror, or cross: on the other side the same height counts from the other end.
    if (nextRandom(random) < fresnel(cosI, etaHere)) {
      w = [side * (2 * cosI * m[0] - v[0]), side * (2 * cosI * m[1] - v[1]), side * (2 * cosI * m[2] - v[2])];
    } else {
      const k = etaHere * cosI - Math.sqrt(Math.max(0, cos2Refracted(cosI, etaHere)));
      w = [
        side * (k * m[0] - etaHere * v[0]),
        side * (k * m[1] - etaHere * v[1]),
        side * (k * m[2] - etaHere * v[2]),
      ];
      side = -side;
      h = -h;
    }
  }
  return { d: [w[0], w[1], side * Math.max(LEVEL, Math.abs(w[2]))], outside: side > 0 };
}
