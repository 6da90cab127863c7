/**
 * What an edge of the cut mesh really is, and where a plane meets it. On a round blank (unit sphere) an edge between two
 * skin faces stands for a great-circle arc and an edge between a facet and skin for an arc of the facet's circle; between
 * two facets, and everywhere on other blanks, an edge is a straight line.
 * Both kinds of arc lie in a carrier plane m.x = c, so one pair of formulas serves: with v the unit part of a plane's
 * normal across m, the plane and the arc meet at c m + (v.x) v +- t (m x v).
 */
import { endOf, type HalfEdges } from "./mesh-half-edges.ts";
import type { Plane } from "./plane.ts";
import { SKIN } from "./solid-types.ts";
import type { Vec3 } from "./vec.ts";

/** The arc of a half-edge: the carrier plane about whose normal it runs counter-clockwise (turn 1) or clockwise (-1). */
interface Arc {
  mx: number;
  my: number;
  mz: number;
  c: number;
  turn: 1 | -1;
}
const arc: Arc = { mx: 0, my: 0, mz: 0, c: 0, turn: 1 };

/** A point, written by `findCrossing` and `findExtreme`. */
export const found = { x: 0, y: 0, z: 0 };

/** Fills `arc` for half-edge h of a round mesh; false when the edge is a straight line between facets, or has no length. */
function findArc(m: HalfEdges, planes: readonly Plane[], h: number): boolean {
  const left = m.plane[m.face[h]];
  const right = m.plane[m.face[m.twin[h]]];
  if (left !== SKIN && right !== SKIN) return false;
  if (left === SKIN && right === SKIN) {
    const a = 3 * m.start[h];
    const b = 3 * endOf(m, h);
    const { at } = m;
    const mx = at[a + 1] * at[b + 2] - at[a + 2] * at[b + 1];
    const my = at[a + 2] * at[b] - at[a] * at[b + 2];
    const mz = at[a] * at[b + 1] - at[a + 1] * at[b];
    const l = Math.sqrt(mx * mx + my * my + mz * mz);
    if (l === 0) return false;
    arc.mx = mx / l;
    arc.my = my / l;
    arc.mz = mz / l;
    arc.c = 0;
    arc.turn = 1;
    return true;
  }
  const { n, h: c } = planes[left === SKIN ? right : left];
  arc.mx = n[0];
  arc.my = n[1];
  arc.mz = n[2];
  arc.c = c;
  arc.turn = left === SKIN ? -1 : 1;
  return true;
}

/** Whether `found` lies no farther from either end of the edge than the ends lie apart. */
function foundIsBetween(m: HalfEdges, a: number, b: number): boolean {
  const { at } = m;
  const toA = (found.x - at[a]) ** 2 + (found.y - at[a + 1]) ** 2 + (found.z - at[a + 2]) ** 2;
  const toB = (found.x - at[b]) ** 2 + (found.y - at[b + 1]) ** 2 + (found.z - at[b + 2]) ** 2;
  const apart = (at[b] - at[a]) ** 2 + (at[b + 1] - at[a + 1]) ** 2 + (at[b + 2] - at[a + 2]) ** 2;
  return toA <= apart && toB <= apart;
}

/** How a plane n.x = h stands to the arc's carrier: v, the unit part of n across m, and where its line runs: v.x = offset. */
const across = { vx: 0, vy: 0, vz: 0, sine: 0, offset: 0 };

/**
 * Fills `across`; false when the plane is parallel to the carrier. Worked from n - m (or n + m), which is exact for nearly
 * parallel planes: n.m = +-(1 - |n -+ m|^2 / 2).
 */
function findAcross({ n, h }: Plane): boolean {
  const { mx, my, mz, c } = arc;
  const sign = mx * n[0] + my * n[1] + mz * n[2] < 0 ? -1 : 1;
  const ex = n[0] - sign * mx;
  const ey = n[1] - sign * my;
  const ez = n[2] - sign * mz;
  const lack = (sign * (ex * ex + ey * ey + ez * ez)) / 2;
  const vx = ex + lack * mx;
  const vy = ey + lack * my;
  const vz = ez + lack * mz;
  const sine = Math.sqrt(vx * vx + vy * vy + vz * vz);
  if (sine === 0) return false;
  across.vx = vx / sine;
  across.vy = vy / sine;
  across.vz = vz / sine;
  across.sine = sine;
  across.offset = (h - sign * c + c * lack) / sine;
  return true;
}

/** Where the carrier, a plane and the unit sphere meet, on the side where the arc climbs through the plane. */
function crossArc(plane: Plane): boolean {
  if (!findAcross(plane)) return false;
  const { mx, my, mz, c, turn } = arc;
  const { vx, vy, vz, offset } = across;
  const t = -turn * Math.sqrt(Math.max(0, 1 - c * c - offset * offset));
  found.x = c * mx + offset * vx + t * (my * vz - mz * vy);
  found.y = c * my + offset * vy + t * (mz * vx - mx * vz);
  found.z = c * mz + offset * vz + t * (mx * vy - my * vx);
  return true;
}

/**
 * Writes to `found` where half-edge h, which starts inside `plane` and ends outside, passes through it.
 * @param below signed distance of its start from the plane, < 0
 * @param above that of its end, > 0
 * @returns how far along the chord, 0..1, the straight edge passes through (for what is interpolated)
 * Where the arc is too short for its carrier to be known, the straight crossing is taken.
 */
export function findCrossing(
  m: HalfEdges,
  planes: readonly Plane[],
  isRound: boolean,
  h: number,
  plane: Plane,
  below: number,
  above: number,
): number {
  const a = 3 * m.start[h];
  const b = 3 * endOf(m, h);
  const s = below / (below - above);
  if (isRound && findArc(m, planes, h)) {
    if (crossArc(plane) && foundIsBetween(m, a, b)) return s;
  }
  const { at } = m;
  found.x = at[a] + s * (at[b] - at[a]);
  found.y = at[a + 1] + s * (at[b + 1] - at[a + 1]);
  found.z = at[a + 2] + s * (at[b + 2] - at[a + 2]);
  return s;
}

/**
 * Writes to `found` the point of h's arc that reaches farthest along `sign` times the plane's normal.
 * @returns its signed distance from the plane, times `sign`; -Infinity when that point is not strictly between the ends
 */
export function findExtreme(
  m: HalfEdges,
  planes: readonly Plane[],
  h: number,
  plane: Plane,
  sign: 1 | -1,
): number {
  if (!findArc(m, planes, h) || !findAcross(plane)) return -Infinity;
  const { mx, my, mz, c } = arc;
  const { vx, vy, vz, sine, offset } = across;
  const r = Math.sqrt(Math.max(0, 1 - c * c));
  found.x = c * mx + sign * r * vx;
  found.y = c * my + sign * r * vy;
  found.z = c * mz + sign * r * vz;
  if (!foundIsBetween(m, 3 * m.start[h], 3 * endOf(m, h))) return -Infinity;
  return sine * (r - sign * offset);
}

/**
 * Writes to `found` the point of the circle of plane (n, h) that stands `angle` radians, counter-clockwise about n, from
 * the circle's point at coordinates a, a + 1, a + 2 of `at`.
 */
export function findOnCircle({ n, h }: Plane, at: Float64Array, a: number, angle: number): void {
  const ux = at[a] - h * n[0];
  const uy = at[a + 1] - h * n[1];
  const uz = at[a + 2] - h * n[2];
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  found.x = h * n[0] + cos * ux + sin * (n[1] * uz - n[2] * uy);
  found.y = h * n[1] + cos * uy + sin * (n[2] * ux - n[0] * uz);
  found.z = h * n[2] + cos * uz + sin * (n[0] * uy - n[1] * ux);
}

/** Angle from point a to point b (their places in `at`) counter-clockwise about axis n through the origin, -pi..pi. */
export function turnAbout(n: Vec3, at: Float64Array, a: number, b: number): number {
  const ux = at[a];
  const uy = at[a + 1];
  const uz = at[a + 2];
  const vx = at[b];
  const vy = at[b + 1];
  const vz = at[b + 2];
  const sin = n[0] * (uy * vz - uz * vy) + n[1] * (uz * vx - ux * vz) + n[2] * (ux * vy - uy * vx);
  const un = ux * n[0] + uy * n[1] + uz * n[2];
  const vn = vx * n[0] + vy * n[1] + vz * n[2];
  return Math.atan2(sin, ux * vx + uy * vy + uz * vz - un * vn);
}

/** The same counted on, 0..2 pi. */
export function angleOnCircle({ n }: Plane, at: Float64Array, a: number, b: number): number {
  const turn = turnAbout(n, at, a, b);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}
