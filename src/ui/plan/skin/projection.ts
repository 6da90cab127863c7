/**
 * How the round surface is laid out as a strip: the cylindrical equal-area projection (Lambert 1772, with the
 * standard parallel of Behrmann 1910).
 *
 * Why this one. A strip that shows wheel stops along its edge must have azimuth running straight and evenly along x,
 * which leaves the cylindrical projections; among those only Lambert's (and its stretched forms) keeps areas, so that
 * a facet that looks twice as large is twice as large. The standard parallel of 30 degrees, where shapes are also
 * true, sits in the middle of where facets are usually ground. In a low box the parallel moves toward the equator, which
 * makes the strip longer and leaves areas as they are.
 *
 * Facets lie below the round surface; they are carried out to it along rays from the centre, so a facet's area on the
 * strip is the share of the round surface that it took. A piece ground past its centre is carried out from a point
 * inside what is left: the skin stays where it is, and every facet is seen. Conventions: azimuth in radians grows to the right, the front
 * pole is the upper border (y = 0), the back pole the lower. Units are those of `width`.
 */
import { addScaled, dot, sub, type Vec3 } from "../../../core/geometry/vec.ts";

/** Latitude at which shapes are true, radians. */
export const STANDARD_PARALLEL = Math.PI / 6;

/** Height of a full strip over its length with a standard parallel: 1 / (pi cos^2). */
const aspectAt = (parallel: number): number => Math.cos(parallel) ** -2 / Math.PI;
export const STRIP_ASPECT = aspectAt(STANDARD_PARALLEL);
/** The longest strip: shapes true at the equator, Lambert's own. */
export const LONGEST_ASPECT = aspectAt(0);

/** Directions within this of the axis (sine of the angle) have no azimuth of their own. */
const POLE = 1e-9;

export interface Strip {
  /** Length of one full turn. */
  readonly width: number;
  /** From the front pole to the back pole. */
  readonly height: number;
  /** Azimuth at the left border, radians. */
  readonly left: number;
  /** Point inside the piece from which facets are carried out to the round surface. */
  readonly centre: Vec3;
}

export const ORIGIN: Vec3 = [0, 0, 0];

/** A strip one turn of which is `width` long, starting at azimuth `left`. */
export const stripOf = (width: number, left: number, aspect = STRIP_ASPECT, centre = ORIGIN): Strip => ({
  width,
  height: width * aspect,
  left,
  centre,
});

/**
 * Where a point of the piece lies on the round surface, as a direction: the ray from the strip's centre through the point,
 * as far as the unit sphere. Points of the sphere stay where they are. The centre itself: returned as it is.
 */
export function carriedOut({ centre }: Strip, v: Vec3): Vec3 {
  if (centre === ORIGIN) return v;
  const along = sub(v, centre);
  const a = dot(along, along);
  const b = dot(centre, along);
  if (a === 0) return v;
  const t = (Math.sqrt(Math.max(0, b * b - a * (dot(centre, centre) - 1))) - b) / a;
  return addScaled(centre, along, t);
}

/** Azimuth (radians, -pi..pi) of a direction, or null on the axis. */
export function azimuthOf(v: Vec3): number | null {
  const r = Math.hypot(v[0], v[1]);
  return r <= POLE * Math.hypot(r, v[2]) ? null : Math.atan2(v[1], v[0]);
}

/** Sine of the elevation of a direction, -1..1; 0 for the zero vector. */
export function sineOfElevation(v: Vec3): number {
  const l = Math.hypot(v[0], v[1], v[2]);
  return l === 0 ? 0 : v[2] / l;
}

/** Place of an (unwrapped) azimuth along the strip; not reduced to one turn. */
export const stripX = (strip: Strip, azimuth: number): number =>
  ((azimuth - strip.left) / (2 * Math.PI)) * strip.width;

/** Place of an elevation's sine down the strip. */
export const stripY = (strip: Strip, sine: number): number => ((1 - sine) / 2) * strip.height;

/** Azimuth of a place along the strip, radians, unwrapped. */
export const azimuthAt = (strip: Strip, x: number): number => strip.left + (x / strip.width) * 2 * Math.PI;

/** Elevation (radians, -pi/2..pi/2) of a place down the strip; places beyond a border count as the pole. */
export const elevationAt = (strip: Strip, y: number): number =>
  Math.asin(Math.min(1, Math.max(-1, 1 - (2 * y) / strip.height)));
