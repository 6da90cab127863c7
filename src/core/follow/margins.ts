/**
 * By how much two facets meet, or planes come to a corner, as numbers that change steadily with the planes: what a search
 * follows. Closed forms on lines and points, unit sphere; the exact solid has the last word.
 */
import { gapBetween, meetingPoint } from "../geometry/circles.ts";
import type { Plane } from "../geometry/plane.ts";
import { COINCIDENT } from "../geometry/tolerance.ts";
import { add, addScaled, cross, dot, length, scale, type Vec3 } from "../geometry/vec.ts";

/** What planes through one point leave each other, by rounding: not cut away. */
const ROUNDING = 1e-12;
/** A plane that takes so little of a corner, as a part of the tolerance, leaves corners that count as one with it. */
const NICK = 1 / 8;
/** Less than nothing by more than anything can be. */
export const GONE = -2;

interface Line {
  /** Nearest the centre. */
  readonly foot: Vec3;
  readonly along: Vec3;
}

function lineOf(a: Plane, b: Plane): Line | null {
  const direction = cross(a.n, b.n);
  const sine2 = dot(direction, direction);
  if (sine2 <= COINCIDENT) return null;
  const c = dot(a.n, b.n);
  const foot = add(scale(a.n, (a.h - b.h * c) / sine2), scale(b.n, (b.h - a.h * c) / sine2));
  return { foot, along: scale(direction, 1 / Math.sqrt(sine2)) };
}

/** Circles that overlap by less than this touch. */
const JUST_TOUCHING = 1e-7;

export interface Edge {
  /** Length of the line that two planes share; below 0 the farther it is cut away or outside the ball. */
  readonly length: number;
  readonly from: Vec3;
  readonly to: Vec3;
}

/** The edge that planes a and b would share in the ball cut by the first `count` planes. */
export function edgeBetween(a: number, b: number, planes: readonly Plane[], count = planes.length): Edge {
  const line = lineOf(planes[a], planes[b]);
  const nowhere = { from: planes[a].n, to: planes[a].n };
  if (!line) return { length: GONE, ...nowhere };
  const { foot, along } = line;
  const half2 = 1 - dot(foot, foot);
  if (half2 <= 0) return { length: half2, ...nowhere };
  let hi = Math.sqrt(half2);
  let lo = -hi;
  for (let k = 0; k < count; k++) {
    if (k === a || k === b) continue;
    const { n, h } = planes[k];
    const slope = dot(n, along);
    const room = h - dot(n, foot);
    if (Math.abs(slope) <= COINCIDENT) {
      if (room < -ROUNDING) return { length: Math.max(GONE, room), ...nowhere };
    } else if (slope > 0) hi = Math.min(hi, room / slope);
    else lo = Math.max(lo, room / slope);
  }
  return {
    length: Math.max(GONE, hi - lo),
    from: addScaled(foot, along, lo),
    to: addScaled(foot, along, hi),
  };
}

/** How far the meeting point of two circles stands clear of all other planes; below 0 where one covers it. */
function clearance(a: number, b: number, planes: readonly Plane[], count: number): number {
  const at = meetingPoint(planes[a], planes[b]);
  let least = 2;
  for (let k = 0; k < count; k++)
    if (k !== a && k !== b) least = Math.min(least, planes[k].h - dot(planes[k].n, at));
  return least + ROUNDING;
}

/** Whether, and by how much, two facets meet: more than 0 where their edge is longer than the tolerance, or they touch within it. */
export function pairMargin(
  a: number,
  b: number,
  planes: readonly Plane[],
  tolerance: number,
  count = planes.length,
): number {
  const gap = gapBetween(planes[a], planes[b]);
  const edge = edgeBetween(a, b, planes, count).length - tolerance;
  if (edge > 0) return edge;
  const touch = Math.min(tolerance - Math.abs(gap), clearance(a, b, planes, count));
  // Circles that touch or stand apart share no edge, however they turn a little: only the touch can be mended.
  return gap > -JUST_TOUCHING ? touch : Math.max(edge, touch);
}

/** The point nearest to planes, by least squares; null where they have none in common that could be told. */
function commonPoint(planes: readonly Plane[]): Vec3 | null {
  let best: Vec3 | null = null;
  let greatest = COINCIDENT;
  // Of three planes the triple that is least flat; of more, the same over those with the first: enough for a point.
  for (let i = 1; i < planes.length; i++) {
    for (let j = i + 1; j < planes.length; j++) {
      const [a, b, c] = [planes[0], planes[i], planes[j]];
      const bc = cross(b.n, c.n);
      const det = dot(a.n, bc);
      if (Math.abs(det) <= greatest) continue;
      greatest = Math.abs(det);
      const sum = add(add(scale(bc, a.h), scale(cross(c.n, a.n), b.h)), scale(cross(a.n, b.n), c.h));
      best = scale(sum, 1 / det);
    }
  }
  return best;
}

/** Whether, and by how much, planes come to one corner of the piece: above 0 where they do and no other plane cuts it off. */
export function cornerMargin(
  facets: readonly number[],
  planes: readonly Plane[],
  tolerance: number,
  count = planes.length,
): number {
  const own = facets.map((k) => planes[k]);
  const at = commonPoint(own);
  if (!at) return GONE;
  const miss = own.reduce((most, { n, h }) => Math.max(most, Math.abs(dot(n, at) - h)), 0);
  let least = Math.min(tolerance / 2 - miss, 1 - length(at) + ROUNDING);
  for (let k = 0; k < count; k++) {
    if (facets.includes(k)) continue;
    least = Math.min(least, planes[k].h - dot(planes[k].n, at) + NICK * tolerance);
  }
  return least;
}
