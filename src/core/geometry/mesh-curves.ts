/**
 * What an edge of the cut mesh really is, and where a plane meets it. On a round blank (unit sphere) an edge between two
 * skin faces stands for a great-circle arc and an edge between a facet and skin for an arc of the facet's circle; between
 * two facets, and everywhere on other blanks, an edge is a straight line.
 * Both kinds of arc lie in a carrier plane m.x = c, so one pair of formulas serves: two planes and the unit sphere meet at
 * x0 +- t d with d = m x n.
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
  [arc.mx, arc.my, arc.mz] = n;
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

/** Where planes m.x = c and n.x = h meet the unit sphere, on the side where the arc climbs through the second plane. */
function crossArc({ n, h }: Plane): void {
  const { mx, my, mz, c, turn } = arc;
  const mn = mx * n[0] + my * n[1] + mz * n[2];
  const dx = my * n[2] - mz * n[1];
  const dy = mz * n[0] - mx * n[2];
  const dz = mx * n[1] - my * n[0];
  const dd = dx * dx + dy * dy + dz * dz;
  // x0 = p m + q n is the point of both planes nearest to the centre
  const p = (c - h * mn) / dd;
  const q = (h - c * mn) / dd;
  const x0 = p * mx + q * n[0];
  const y0 = p * my + q * n[1];
  const z0 = p * mz + q * n[2];
  const t = -turn * Math.sqrt(Math.max(0, 1 - x0 * x0 - y0 * y0 - z0 * z0) / dd);
  found.x = x0 + t * dx;
  found.y = y0 + t * dy;
  found.z = z0 + t * dz;
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
    crossArc(plane);
    if (foundIsBetween(m, a, b)) return s;
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
  if (!findArc(m, planes, h)) return -Infinity;
  const { mx, my, mz, c } = arc;
  const [nx, ny, nz] = plane.n;
  const mn = mx * nx + my * ny + mz * nz;
  const ux = nx - mn * mx;
  const uy = ny - mn * my;
  const uz = nz - mn * mz;
  const l = Math.sqrt(ux * ux + uy * uy + uz * uz);
  if (l === 0) return -Infinity;
  const r = (sign * Math.sqrt(Math.max(0, 1 - c * c))) / l;
  found.x = c * mx + r * ux;
  found.y = c * my + r * uy;
  found.z = c * mz + r * uz;
  if (!foundIsBetween(m, 3 * m.start[h], 3 * endOf(m, h))) return -Infinity;
  return sign * (nx * found.x + ny * found.y + nz * found.z - plane.h);
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
  const [ux, uy, uz, vx, vy, vz] = [at[a], at[a + 1], at[a + 2], at[b], at[b + 1], at[b + 2]];
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
