/**
 * By how much two facets meet, or planes come to a corner, as numbers that change steadily with the planes: what a search
 * follows. Closed forms on lines and points, unit sphere; the exact solid has the last word.
 */
import { gapBetween, meetingPoint } from "../geometry/circles.ts";
import type { Plane } from "../geometry/plane.ts";
import { COINCIDENT } from "../geometry/tolerance.ts";
import { add, addScaled, cross, distance, dot, length, scale, type Vec3 } from "../geometry/vec.ts";

/** What planes through one point leave each other, by rounding: not cut away. */
const ROUNDING = 1e-12;
/** What planes that rules bring to one point may miss it by, by rounding. */
const CONCURRENT = 1e-10;
/** A plane that takes so little of a corner, as a part of the tolerance, leaves corners that count as one with it. */
const NICK = 1 / 8;
/** Less than nothing by more than anything can be. */
const GONE = -2;

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

/**
 * By how much two facets whose circles touch face each other with no other facet on the way between their normals: none lies
 * there when the foot of each normal is on its own facet.
 */
function facing(a: number, b: number, planes: readonly Plane[]): number {
  let least = 2;
  for (const own of [planes[a], planes[b]])
    for (const other of planes) least = Math.min(least, other.h - own.h * dot(other.n, own.n));
  return least + ROUNDING;
}

/**
 * Whether, and by how much, two facets meet: more than 0 where their edge is longer than the tolerance, or they touch within it.
 * @param areNext next to each other in one tier: they are neighbours whatever lies between
 */
export function pairMargin(
  a: number,
  b: number,
  planes: readonly Plane[],
  tolerance: number,
  areNext: boolean,
): number {
  const count = planes.length;
  const gap = gapBetween(planes[a], planes[b]);
  const edge = edgeBetween(a, b, planes, count).length - tolerance;
  if (edge > 0) return edge;
  const clear = clearance(a, b, planes, count);
  const touch = Math.min(tolerance - Math.abs(gap), areNext ? clear : Math.min(clear, facing(a, b, planes)));
  // Circles that touch or stand apart share no edge, however they turn a little: only the touch can be mended.
  return gap > -JUST_TOUCHING ? touch : Math.max(edge, touch);
}

/** The point of three planes; null where they have none that could be told. */
function pointOf(a: Plane, b: Plane, c: Plane): Vec3 | null {
  const bc = cross(b.n, c.n);
  const det = dot(a.n, bc);
  if (Math.abs(det) <= COINCIDENT) return null;
  const sum = add(add(scale(bc, a.h), scale(cross(c.n, a.n), b.h)), scale(cross(a.n, b.n), c.h));
  return scale(sum, 1 / det);
}

/** Farther apart than that, no points are taken for one corner: lets the search see where to go. */
const FAR = 0.5;

/**
 * Where planes that are to make one corner meet by threes, with none of them cutting the place off: one point, or several near
 * each other when they miss it. `missing` is how far above them the one stands that takes no part, 0 where all do.
 */
function placesOf(planes: readonly Plane[]): { places: Vec3[]; missing: number } {
  const places: Vec3[] = [];
  for (let i = 0; i < planes.length; i++)
    for (let j = i + 1; j < planes.length; j++)
      for (let k = j + 1; k < planes.length; k++) {
        const at = pointOf(planes[i], planes[j], planes[k]);
        if (at && length(at) < 1 + FAR && planes.every(({ n, h }) => dot(n, at) <= h + CONCURRENT))
          places.push(at);
      }
  const room = ({ n, h }: Plane) => places.reduce((least, at) => Math.min(least, h - dot(n, at)), 2);
  const missing = planes.reduce((most, plane) => Math.max(most, room(plane)), 0);
  return { places, missing: missing <= CONCURRENT ? 0 : missing };
}

/**
 * Room to the ball's surface; outside it half the edge that is missing, not the depth: two facets that come apart by a
 * hair have no corner any more, and how far the point then stands out grows only with the square of that.
 */
const roomInBall = (at: Vec3): number => {
  const room = 1 - length(at);
  return room >= 0 ? room : -Math.sqrt(-2 * room);
};

/** Whether, and by how much, planes come to one corner of the piece: above 0 where they do and no other plane cuts it off. */
export function cornerMargin(facets: readonly number[], planes: readonly Plane[], tolerance: number): number {
  const { places, missing } = placesOf(facets.map((k) => planes[k]));
  if (places.length === 0) return GONE;
  const spread = places.reduce((most, p) => places.reduce((m, q) => Math.max(m, distance(p, q)), most), 0);
  const at = scale(places.reduce(add), 1 / places.length);
  let least = Math.min((tolerance - spread) / 2, roomInBall(at) + ROUNDING);
  if (missing > 0) least = Math.min(least, -missing);
  for (let k = 0; k < planes.length; k++) {
    if (facets.includes(k)) continue;
    least = Math.min(least, planes[k].h - dot(planes[k].n, at) + NICK * tolerance);
  }
  return least;
}
