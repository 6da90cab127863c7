/** Vectors of three doubles: plain readonly tuples, every function pure. Right-handed axes, +z to the front. */

export type Vec3 = readonly [number, number, number];

/** A vector by its components. */
export const vec3 = (of: (k: 0 | 1 | 2) => number): Vec3 => [of(0), of(1), of(2)];
export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, s: number): Vec3 => [a[0] * s, a[1] * s, a[2] * s];
/** a + s b */
export const addScaled = (a: Vec3, b: Vec3, s: number): Vec3 => [
  a[0] + s * b[0],
  a[1] + s * b[1],
  a[2] + s * b[2],
];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** Of lengths near 1, where nothing overflows: a plain root is as exact as Math.hypot and many times faster. */
export const length = (a: Vec3): number => Math.sqrt(dot(a, a));
export const distance = (a: Vec3, b: Vec3): number => length(sub(a, b));
/** The unit vector along a; a zero vector stays zero. */
export const normalize = (a: Vec3): Vec3 => {
  const l = length(a);
  return l === 0 ? a : scale(a, 1 / l);
};
export const mix = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];
/** Angle between two unit vectors, 0..pi, accurate for nearly parallel and nearly opposite ones (Kahan: 2 atan2(|a-b|, |a+b|)). */
export const angleBetween = (a: Vec3, b: Vec3): number =>
  2 * Math.atan2(length(sub(a, b)), length(add(a, b)));
