/** Half-spaces that cut the ball, and the frame in which a facet's outline is drawn. Unit sphere, radians. */
import { cross, type Vec3 } from "./vec.ts";

/** Keeps the side n.x <= h. `n` is the unit outward normal, `h` the signed distance from the centre (h = 1 - depth). */
export interface Plane {
  readonly n: Vec3;
  readonly h: number;
}

/** Right-handed frame of a facet: `across` and `meridian` = n x across, both unit, lie in the facet's plane. */
export interface FacetFrame {
  readonly n: Vec3;
  readonly across: Vec3;
  readonly meridian: Vec3;
}

/** Sine or cosine that is exact at whole multiples of 90 degrees and where 30 degrees makes a half. */
function exactSinDeg(deg: number): number {
  const d = ((deg % 360) + 360) % 360;
  if (d % 180 === 0) return 0;
  if (d === 90) return 1;
  if (d === 270) return -1;
  if (d === 30 || d === 150) return 0.5;
  if (d === 210 || d === 330) return -0.5;
  return Math.sin((d * Math.PI) / 180);
}

export const sinDeg = exactSinDeg;
export const cosDeg = (deg: number): number => exactSinDeg(deg + 90);

/**
 * Outward normal and frame of a facet.
 * @param armAngleDeg 0 (on the equator) .. 90 (a flat at the pole)
 * @param azimuthDeg any finite number, counted counter-clockwise seen from the front, for back facets too
 * @param side a back facet has its normal mirrored, z becomes -z
 * At arm angle 90 the azimuth counts as 0, so that across = +y whatever the azimuth.
 */
export function facetFrame(armAngleDeg: number, azimuthDeg: number, side: "front" | "back"): FacetFrame {
  const t = armAngleDeg === 90 ? 0 : azimuthDeg;
  const [ca, sa, ct, st] = [cosDeg(armAngleDeg), sinDeg(armAngleDeg), cosDeg(t), sinDeg(t)];
  const n: Vec3 = [ca * ct, ca * st, side === "front" ? sa : -sa];
  const across: Vec3 = [-st, ct, 0];
  return { n, across, meridian: cross(n, across) };
}

/** The same frame from the normal alone; a normal along the axis has across = +y. */
export function frameOf(n: Vec3): FacetFrame {
  const level = Math.hypot(n[0], n[1]);
  const across: Vec3 = level === 0 ? [0, 1, 0] : [-n[1] / level, n[0] / level, 0];
  return { n, across, meridian: cross(n, across) };
}
