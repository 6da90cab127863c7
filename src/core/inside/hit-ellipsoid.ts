/** How light meets balls and ellipsoids: the closed forms that cores, bubbles, pictures and what holds a speckle share. */
import { dot, normalize, type Vec3 } from "../geometry/vec.ts";
import { type Hit, type SceneDesign, toLocal, turnToLocal, turnToWorld } from "./scene-design.ts";

/** Both distances at which a ray crosses a ball or ellipsoid with half axes `size` (local ray), or null. */
export function crossEllipsoid(size: Vec3, o: Vec3, d: Vec3): readonly [number, number] | null {
  const p: Vec3 = [o[0] / size[0], o[1] / size[1], o[2] / size[2]];
  const v: Vec3 = [d[0] / size[0], d[1] / size[1], d[2] / size[2]];
  const a = dot(v, v);
  const b = dot(p, v);
  const disc = b * b - a * (dot(p, p) - 1);
  if (disc <= 0) return null;
  const root = Math.sqrt(disc);
  return [(-b - root) / a, (-b + root) / a];
}

/** Length of the part of a ray, within 0 .. tMax, that runs through a tinted core. */
export function lengthWithin(s: SceneDesign, o: Vec3, d: Vec3, tMax: number): number {
  const t = crossEllipsoid(s.size, toLocal(s, o), turnToLocal(s, d));
  return t ? Math.max(0, Math.min(tMax, t[1]) - Math.max(0, t[0])) : 0;
}

/** True when p lies within a ball or ellipsoid design. */
export function isWithin(s: SceneDesign, p: Vec3): boolean {
  const q = toLocal(s, p);
  return (q[0] / s.size[0]) ** 2 + (q[1] / s.size[1]) ** 2 + (q[2] / s.size[2]) ** 2 < 1;
}

/** Distance from inside a bubble to its wall. */
export function bubbleExit(s: SceneDesign, o: Vec3, d: Vec3): number {
  const t = crossEllipsoid(s.size, toLocal(s, o), turnToLocal(s, d));
  return t ? Math.max(0, t[1]) : 0;
}

/** Outward normal of a ball design at p. */
export const bubbleNormal = (s: SceneDesign, p: Vec3): Vec3 =>
  normalize([p[0] - s.centre[0], p[1] - s.centre[1], p[2] - s.centre[2]]);

export const hitEllipsoid: Hit = (s, o, d, tMax, from) => {
  if (from >= 0) return null;
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const t = crossEllipsoid(s.size, p, v);
  if (!t || t[1] <= 0 || t[0] >= tMax) return null;
  // A facet that cuts into the design shows it right behind the glass.
  if (t[0] <= 0) return { t: 0, n: [-d[0], -d[1], -d[2]], rgb: s.rgb, grain: 0 };
  const local: Vec3 = [
    (p[0] + t[0] * v[0]) / s.size[0] ** 2,
    (p[1] + t[0] * v[1]) / s.size[1] ** 2,
    (p[2] + t[0] * v[2]) / s.size[2] ** 2,
  ];
  return { t: t[0], n: turnToWorld(s, normalize(local)), rgb: s.rgb, grain: 0 };
};
