/**
 * Where rays meet the body: a ball of radius 1 cut by planes, hence convex, so the next meeting is the nearest plane or the
 * ball. A surface just left is skipped by its number, never by shifting the start, and a ray from inside always meets one.
 */
import type { Vec3 } from "../geometry/vec.ts";
import type { Scene } from "./scene.ts";

/** Surfaces of the body: planes by their position, the ball is SKIN. */
export const SKIN = -1;
export const NOWHERE = -2;

export interface BodyHit {
  readonly t: number;
  /** Plane's position, or SKIN. */
  readonly surface: number;
}

/** First meeting of a ray from outside with the body, or null. The farthest entry among all surfaces, if before the first exit. */
export function enterBody(scene: Scene, o: Vec3, d: Vec3): BodyHit | null {
  const hit = meetFromOutside(scene, o, d);
  return hit && hit.t > 0 ? hit : null;
}

/** The same for a start that may lie on the body, as on a table that a facet rests on: rounding may put it a hair within. */
export function enterTouchingBody(scene: Scene, o: Vec3, d: Vec3): BodyHit | null {
  const hit = meetFromOutside(scene, o, d);
  return hit && { t: Math.max(0, hit.t), surface: hit.surface };
}

/** The body ahead, met at a distance that may be negative when the ray starts within it. */
function meetFromOutside(scene: Scene, o: Vec3, d: Vec3): BodyHit | null {
  const b = o[0] * d[0] + o[1] * d[1] + o[2] * d[2];
  // Squared distance of the ray's line from the centre, free of cancellation for far cameras.
  const cx = o[1] * d[2] - o[2] * d[1];
  const cy = o[2] * d[0] - o[0] * d[2];
  const cz = o[0] * d[1] - o[1] * d[0];
  const disc = 1 - (cx * cx + cy * cy + cz * cz);
  if (disc <= 0) return null;
  const root = Math.sqrt(disc);
  let enter = -b - root;
  let exit = -b + root;
  let surface = SKIN;
  const { planes, planeCount } = scene;
  for (let i = 0; i < planeCount; i++) {
    const k = 4 * i;
    const facing = planes[k] * d[0] + planes[k + 1] * d[1] + planes[k + 2] * d[2];
    const above = planes[k + 3] - (planes[k] * o[0] + planes[k + 1] * o[1] + planes[k + 2] * o[2]);
    if (facing === 0) {
      if (above < 0) return null;
      continue;
    }
    const t = above / facing;
    if (facing > 0) exit = Math.min(exit, t);
    else if (t > enter) {
      enter = t;
      surface = i;
    }
  }
  return enter < exit && exit > 0 ? { t: enter, surface } : null;
}

/**
 * Next meeting of a ray inside the body that starts on `from` (NOWHERE for a start within). Rounding may put the start a hair
 * outside a neighbouring surface: that one is then met at distance 0, so nothing leaks at edges.
 */
export function nextOnBody(scene: Scene, o: Vec3, d: Vec3, from: number): BodyHit {
  const { planes, planeCount } = scene;
  const ox = o[0];
  const oy = o[1];
  const oz = o[2];
  const dx = d[0];
  const dy = d[1];
  const dz = d[2];
  const b = ox * dx + oy * dy + oz * dz;
  const c = ox * ox + oy * oy + oz * oz - 1;
  // From the ball to itself the chord is exactly 2 cos.
  let t = Math.max(0, from === SKIN ? -2 * b : -b + Math.sqrt(Math.max(0, b * b - c)));
  let surface = SKIN;
  for (let i = 0, k = 0; i < planeCount; i++, k += 4) {
    const nx = planes[k];
    const ny = planes[k + 1];
    const nz = planes[k + 2];
    const facing = nx * dx + ny * dy + nz * dz;
    if (facing <= 0 || i === from) continue;
    const above = planes[k + 3] - (nx * ox + ny * oy + nz * oz);
    // Compare before dividing: most planes lie farther away.
    if (above < t * facing) {
      t = Math.max(0, above / facing);
      surface = i;
    }
  }
  return { t, surface };
}

/** Outward normal of a surface at p. */
export function bodyNormal(scene: Scene, surface: number, p: Vec3): Vec3 {
  if (surface !== SKIN) {
    const k = 4 * surface;
    return [scene.planes[k], scene.planes[k + 1], scene.planes[k + 2]];
  }
  const l = 1 / Math.sqrt(p[0] * p[0] + p[1] * p[1] + p[2] * p[2]);
  return [p[0] * l, p[1] * l, p[2] * l];
}

/** Point at distance t along the ray, put back onto the surface it lies on, so that roundings do not add up. */
export function pointOnBody(scene: Scene, o: Vec3, d: Vec3, t: number, surface: number): Vec3 {
  const p: Vec3 = [o[0] + t * d[0], o[1] + t * d[1], o[2] + t * d[2]];
  if (surface === SKIN) return bodyNormal(scene, SKIN, p);
  const k = 4 * surface;
  const nx = scene.planes[k];
  const ny = scene.planes[k + 1];
  const nz = scene.planes[k + 2];
  const off = scene.planes[k + 3] - (nx * p[0] + ny * p[1] + nz * p[2]);
  return [p[0] + off * nx, p[1] + off * ny, p[2] + off * nz];
}
