/**
 * How the circles of two planes lie on the unit sphere: they cross in two points, or all of the one lies on one side of
 * the other. Two that overlap by less than a chord of 2 sqrt(TANGENT) touch, and touching is no crossing. Asked once for
 * each pair of planes, and whoever needs the answer gets that one.
 */
import type { Plane } from "./plane.ts";
import { COINCIDENT, TANGENT } from "./tolerance.ts";
import { addScaled, cross, dot, scale, type Vec3 } from "./vec.ts";

/** Where circle i runs through plane k. Walked counter-clockwise about n_i, it leaves k's inner side at `exit`. */
export interface CircleCrossing {
  readonly exit: Vec3;
  readonly entry: Vec3;
  /** Middles of circle i's parts beyond and within plane k. */
  readonly farthestOut: Vec3;
  readonly farthestIn: Vec3;
  /** Angle of a point about n_i, counter-clockwise, from the middle of the part within. */
  readonly angleOf: (point: Vec3) => number;
}

/** How plane k lies to plane i. "same": they coincide. "in", "out": all of i's disc is on k's inner or outer side. */
export type Crossing = "same" | "in" | "out" | CircleCrossing;

/** A quick test decides only what is at least this clear. */
const CLEARLY = 1e-6;

/**
 * True when plane k's line clearly misses disc i, which stays. Cheap and careful: what is near touching, or nearly parallel,
 * is asked in full.
 */
export function isClear(i: Plane, k: Plane): boolean {
  const cosine = i.n[0] * k.n[0] + i.n[1] * k.n[1] + i.n[2] * k.n[2];
  const sine2 = 1 - cosine * cosine;
  if (sine2 < CLEARLY) return false;
  // the line's squared distance from the centre is this over sine2
  const reach2 = i.h * i.h + k.h * k.h - 2 * i.h * k.h * cosine;
  return reach2 > sine2 * (1 + CLEARLY) && k.h > i.h * cosine;
}

/**
 * Differences of nearly equal vectors are exact, so that the line keeps its digits for nearly parallel planes:
 * n_i.n_k = s (1 - |n_k - s n_i|^2 / 2) with s the sign of the product.
 */
export function crossingOf(i: Plane, k: Plane): Crossing {
  if (isClear(i, k)) return "in";
  const sign = dot(i.n, k.n) < 0 ? -1 : 1;
  const d: Vec3 = [k.n[0] - sign * i.n[0], k.n[1] - sign * i.n[1], k.n[2] - sign * i.n[2]];
  const toward = addScaled(d, i.n, -dot(d, i.n));
  const sine = Math.sqrt(dot(toward, toward));
  const offset = k.h - sign * i.h + (sign * i.h * dot(d, d)) / 2;
  if (sine <= COINCIDENT) {
    if (sign > 0 && Math.abs(offset) <= COINCIDENT) return "same";
    return offset > COINCIDENT ? "in" : "out";
  }
  const c = offset / sine;
  const radius = Math.sqrt(Math.max(0, (1 - i.h) * (1 + i.h)));
  const half2 = (radius - c) * (radius + c);
  if (half2 <= TANGENT) return c > 0 ? "in" : "out";
  const u = scale(toward, 1 / sine);
  const along = cross(i.n, u);
  const half = Math.sqrt(half2);
  const centre = scale(i.n, i.h);
  const foot = addScaled(centre, u, c);
  return {
    exit: addScaled(foot, along, -half),
    entry: addScaled(foot, along, half),
    farthestOut: addScaled(centre, u, radius),
    farthestIn: addScaled(centre, u, -radius),
    angleOf: (p) => Math.atan2(-dot(p, along), -dot(p, u)),
  };
}
