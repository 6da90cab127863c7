/**
 * Neighbours and whether they meet. Three ways to be neighbours: next to each other in one tier; sharing an edge;
 * of different tiers on one patch of round skin, with no other facet on the great-circle arc between their normals.
 */
import { angularRadius, gapBetween, isCovered, meetingPoint } from "../geometry/circles.ts";
import { frameOf, type Plane } from "../geometry/plane.ts";
import type { Solid } from "../geometry/solid-types.ts";
import { EPSILON } from "../geometry/tolerance.ts";
import { addScaled, angleBetween, cross, dot, normalize, type Vec3 } from "../geometry/vec.ts";
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

/**
 * Where A cos t + B sin t > c, as [from, to] around its crest; null when nowhere.
 * @param middle of what is asked about: of all turns the crest nearest to it counts
 */
function above(a: number, b: number, c: number, middle: number): readonly [number, number] | null {
  const reach = Math.sqrt(a * a + b * b);
  if (reach <= c) return null;
  const bare = Math.atan2(b, a);
  const crest = bare + 2 * Math.PI * Math.round((middle - bare) / (2 * Math.PI));
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
  const middle = arc.delta / 2;
  const own = above(pc, qc, plane.h, middle);
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
    const wins = above(a, b, 0, middle);
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

/** Wedges about a facet's normal by which the caps round about are sorted. */
const WEDGES = 256;
/** Angle, radians, by which a wedge may lie beside a cap and still list it: far more than rounding. */
const BESIDE = 1e-6;

/** Directions about the normal of facet a, and for each the caps that a way from there may meet. */
interface Surroundings {
  readonly p: Vec3;
  /** The wedge that the direction of a normal falls into. */
  readonly wedgeOf: (n: Vec3) => number;
  readonly caps: readonly (readonly number[])[];
}

/** A cap seen from p spans asin(sin rho / sin delta) to either side, or every direction when it holds p or its antipode. */
function surroundingsOf(a: number, planes: readonly Plane[], rho: readonly number[]): Surroundings {
  const { n: p, across, meridian } = frameOf(planes[a].n);
  const caps = Array.from({ length: WEDGES }, (): number[] => []);
  const angleOf = (n: Vec3) => Math.atan2(dot(n, meridian), dot(n, across));
  const wedgeAt = (angle: number) => Math.floor((angle / (2 * Math.PI) + 1) * WEDGES);
  planes.forEach(({ n, h }, c) => {
    const delta = angleBetween(p, n);
    const isAllRound = h <= 0 || rho[c] + BESIDE >= Math.min(delta, Math.PI - delta);
    const half = isAllRound ? Math.PI : Math.asin(Math.sin(rho[c]) / Math.sin(delta)) + BESIDE;
    const angle = angleOf(n);
    const first = wedgeAt(angle - half);
    const last = isAllRound ? first + WEDGES - 1 : wedgeAt(angle + half);
    for (let w = first; w <= last; w++) caps[w % WEDGES].push(c);
  });
  return { p, wedgeOf: (n) => wedgeAt(angleOf(n)) % WEDGES, caps };
}

/** How clearly (relative) a plane must be met before two others for that to settle the question without the exact shares. */
const CLEARLY = 1e-9;

/** True when one of the caps is clearly met before planes a and b, and before the skin, where the arc is nearest to its pole. */
function isClearlyBlocked(
  a: number,
  b: number,
  { p, q, delta }: Arc,
  caps: readonly number[],
  planes: readonly Plane[],
): boolean {
  const [pb, qb] = [dot(planes[b].n, p), dot(planes[b].n, q)];
  for (const c of caps) {
    if (c === a || c === b) continue;
    const { n, h } = planes[c];
    const [pc, qc] = [dot(n, p), dot(n, q)];
    const s = Math.atan2(qc, pc);
    if (s <= 0 || s >= delta) continue;
    const [cos, sin] = [Math.cos(s), Math.sin(s)];
    const nearest = Math.max(1, cos / planes[a].h, (pb * cos + qb * sin) / planes[b].h);
    if ((pc * cos + qc * sin) / h > nearest * (1 + CLEARLY)) return true;
  }
  return false;
}

/** An arc that runs along a facet for less than this, radians, only touches it: rounding of a tangent, by its root. */
const GRAZE = 1e-6;

/**
 * True when a facet other than a and b lies on the great-circle arc between their normals.
 * @param isInside every plane has the centre behind it: only then do rays from there tell what comes first
 */
function isBlocked(
  a: number,
  b: number,
  planes: readonly Plane[],
  around: Surroundings,
  isInside: boolean,
): boolean {
  const { p } = around;
  const { n } = planes[b];
  const delta = angleBetween(p, n);
  const axis = cross(p, n);
  // Opposite normals: no one arc joins them.
  if (dot(axis, axis) < EPSILON) return delta > 1;
  const arc: Arc = { p, q: normalize(addScaled(n, p, -dot(p, n))), delta };
  const caps = around.caps[around.wedgeOf(n)];
  if (isInside && isClearlyBlocked(a, b, arc, caps, planes)) return true;
  return caps.some((c) => c !== a && c !== b && shareOf(c, arc, caps, planes) > GRAZE);
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
  const rho = planes.map(angularRadius);
  const isInside = planes.every((p) => p.h > 0);
  const surroundings = new Map<number, Surroundings>();
  const around = (a: number): Surroundings => {
    const found = surroundings.get(a) ?? surroundingsOf(a, planes, rho);
    surroundings.set(a, found);
    return found;
  };
  const found = new Set<number>();
  for (const { facets: border } of solid.patches) {
    for (const a of border) {
      for (const b of border) {
        if (b <= a || facets[a].tierIndex === facets[b].tierIndex) continue;
        const key = keyOf(a, b);
        if (!known.has(key) && !found.has(key) && !isBlocked(a, b, planes, around(a), isInside))
          found.add(key);
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
