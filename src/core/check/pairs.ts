/**
 * Neighbours and whether they meet. Three ways to be neighbours: next to each other in one tier; sharing an edge;
 * of different tiers on one patch of round skin, with no other facet on the great-circle arc between their normals.
 */
import { gapBetween, isCovered, meetingPoint } from "../geometry/circles.ts";
import type { Plane } from "../geometry/plane.ts";
import type { Solid } from "../geometry/solid-types.ts";
import { EPSILON } from "../geometry/tolerance.ts";
import { add, addScaled, angleBetween, cross, dot, normalize, type Vec3 } from "../geometry/vec.ts";
import type { SolvedPlan } from "../plan/solved.ts";

export type MeetState = "gap" | "touch" | "edge";

/** Unit sphere; a < b are positions in plan order. */
export interface MeetingPair {
  readonly a: number;
  readonly b: number;
  readonly state: MeetState;
  /** Signed distance along the surface between the two uncut circles. */
  readonly gap: number;
  /** Length of the shared edge, 0 where state is "gap"; within tolerance where it is "touch". */
  readonly edge: number;
}

const PAIR_STRIDE = 4096;
const keyOf = (a: number, b: number): number => Math.min(a, b) * PAIR_STRIDE + Math.max(a, b);

/** Where A cos t + B sin t > c, as [from, to] around its crest; null when nowhere. */
function above(a: number, b: number, c: number): readonly [number, number] | null {
  const reach = Math.sqrt(a * a + b * b);
  if (reach <= c) return null;
  const crest = Math.atan2(b, a);
  const half = c <= -reach ? Math.PI : Math.acos(c / reach);
  return [crest - half, crest + half];
}

/** An arc of a great circle from p, in the plane of p and q (unit, orthogonal), 0 .. delta. */
interface Arc {
  readonly p: Vec3;
  readonly q: Vec3;
  readonly delta: number;
}

/**
 * The part of an arc where plane c is what a ray from the centre meets first; a length in radians.
 * @param rivals planes whose caps reach the arc's great circle: no other can be met first anywhere on it
 */
function shareOf(c: number, arc: Arc, rivals: readonly number[], planes: readonly Plane[]): number {
  const plane = planes[c];
  const [pc, qc] = [dot(plane.n, arc.p), dot(plane.n, arc.q)];
  const own = above(pc, qc, plane.h);
  if (!own) return 0;
  let [lo, hi] = [Math.max(0, own[0]), Math.min(arc.delta, own[1])];
  if (plane.h <= 0) return Math.max(0, hi - lo);
  for (const j of rivals) {
    if (hi <= lo) return 0;
    const other = planes[j];
    if (j === c || other.h <= 0) continue;
    // n_c.d / h_c > n_j.d / h_j
    const a = pc * other.h - dot(other.n, arc.p) * plane.h;
    const b = qc * other.h - dot(other.n, arc.q) * plane.h;
    const wins = above(a, b, 0);
    if (!wins) {
      // Coincident planes: the earlier one keeps the face.
      if (j < c) return 0;
      continue;
    }
    lo = Math.max(lo, wins[0]);
    hi = Math.min(hi, wins[1]);
  }
  return Math.max(0, hi - lo);
}

/** How clearly (relative) a plane must be met first for that to settle the question without the exact shares. */
const CLEARLY = 1e-9;

/** True when a ray from the centre along the unit vector `d` clearly meets a plane other than a and b first. */
function isClearlyThird(d: Vec3, a: number, b: number, planes: readonly Plane[]): boolean {
  // 1 / distance to the sphere and to the planes: the greatest is met first
  let first = -1;
  let nearest = 1;
  let second = 1;
  for (let c = 0; c < planes.length; c++) {
    const { n, h } = planes[c];
    if (h <= 0) return false;
    const closeness = (n[0] * d[0] + n[1] * d[1] + n[2] * d[2]) / h;
    if (closeness > nearest) [first, nearest, second] = [c, closeness, nearest];
    else if (closeness > second) second = closeness;
  }
  return first >= 0 && first !== a && first !== b && nearest > second * (1 + CLEARLY);
}

/** True when a facet other than a and b lies on the great-circle arc between their normals. */
function isBlocked(a: number, b: number, planes: readonly Plane[], sines2: readonly number[]): boolean {
  const p = planes[a].n;
  const delta = angleBetween(p, planes[b].n);
  const axis = cross(p, planes[b].n);
  const axis2 = dot(axis, axis);
  // Opposite normals: no one arc joins them.
  if (axis2 < EPSILON) return delta > 1;
  // most pairs are far apart: what lies half-way settles them
  if (isClearlyThird(normalize(add(p, planes[b].n)), a, b, planes)) return true;
  const arc: Arc = { p, q: normalize(addScaled(planes[b].n, p, -dot(p, planes[b].n))), delta };
  const rivals: number[] = [];
  for (let c = 0; c < planes.length; c++) {
    const { n, h } = planes[c];
    const off = n[0] * axis[0] + n[1] * axis[1] + n[2] * axis[2];
    if (h <= 0 || off * off < sines2[c] * axis2) rivals.push(c);
  }
  return rivals.some((c) => c !== a && c !== b && shareOf(c, arc, rivals, planes) > EPSILON);
}

/** Keys of the pairs next to each other within each tier. */
function tierPairs(solved: SolvedPlan): number[] {
  return solved.tiers.flatMap(({ first, count }) =>
    Array.from({ length: count >= 3 ? count : count - 1 }, (_, k) =>
      keyOf(first + k, first + ((k + 1) % count)),
    ),
  );
}

/** Keys of facets of different tiers that face each other across one patch of skin. */
function skinPairs(solved: SolvedPlan, solid: Solid, known: ReadonlySet<number>): number[] {
  const { facets, planes } = solved;
  const sines2 = planes.map((p) => Math.max(0, 1 - p.h * p.h));
  const found = new Set<number>();
  for (const { facets: border } of solid.patches) {
    for (const a of border) {
      for (const b of border) {
        if (b <= a || facets[a].tierIndex === facets[b].tierIndex) continue;
        const key = keyOf(a, b);
        if (!known.has(key) && !found.has(key) && !isBlocked(a, b, planes, sines2)) found.add(key);
      }
    }
  }
  return [...found];
}

/**
 * All pairs of neighbours, in plan order of a, then b.
 * @param tolerance what the person permits, as a fraction of the radius
 */
export function meetingPairs(solved: SolvedPlan, solid: Solid, tolerance: number): MeetingPair[] {
  const { planes } = solved;
  const edges = new Map<number, number>();
  for (const { a, b, length } of solid.edges)
    edges.set(keyOf(a, b), Math.max(length, edges.get(keyOf(a, b)) ?? 0));
  const keys = new Set([...tierPairs(solved), ...edges.keys()]);
  for (const key of skinPairs(solved, solid, keys)) keys.add(key);
  return [...keys]
    .sort((x, y) => x - y)
    .map((key) => {
      const [a, b] = [Math.floor(key / PAIR_STRIDE), key % PAIR_STRIDE];
      const gap = gapBetween(planes[a], planes[b]);
      const shared = edges.get(key) ?? 0;
      if (shared > tolerance) return { a, b, state: "edge", gap, edge: shared };
      const touches =
        Math.abs(gap) <= tolerance && !isCovered(meetingPoint(planes[a], planes[b]), a, b, planes);
      return touches ? { a, b, state: "touch", gap, edge: shared } : { a, b, state: "gap", gap, edge: 0 };
    });
}
