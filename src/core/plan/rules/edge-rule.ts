/**
 * `edge`: the least depth at which the widest pair of neighbours shares an edge of a given length.
 *
 * The planes of a pair at the same distance h meet in the line h m + s u. Every other half-space bounds s by a term
 * linear in h, the ball by a concave one, so the length left is concave in h: one peak, and one crossing on the
 * shallow side of it.
 */
import { boundaryOf, peakOf } from "../../geometry/search.ts";
import { COINCIDENT, EPSILON } from "../../geometry/tolerance.ts";
import { add, cross, dot, length, scale, type Vec3 } from "../../geometry/vec.ts";
import { type Answer, neighbourPairs, type Pair, type TierContext, widestPairs } from "./tier-context.ts";

/** A bound on the line: s * along <= room + slope * h. */
interface Bound {
  readonly along: number;
  readonly room: number;
  readonly slope: number;
}

interface EdgeLine {
  /** |h m| is the line's distance from the centre. */
  readonly reach: number;
  readonly bounds: readonly Bound[];
}

function edgeLine(context: TierContext, pair: Pair): EdgeLine | null {
  const [na, nb] = [context.normals[pair.a], context.normals[pair.b]];
  const direction = cross(na, nb);
  const sine = length(direction);
  if (sine <= COINCIDENT) return null;
  const u = scale(direction, 1 / sine);
  const sum = add(na, nb);
  const m = scale(sum, 2 / dot(sum, sum));
  const bound = (n: Vec3, room: number, ownSlope: number): Bound => ({
    along: dot(n, u),
    room,
    slope: ownSlope - dot(n, m),
  });
  const own = context.normals.filter((_, k) => k !== pair.a && k !== pair.b).map((n) => bound(n, 0, 1));
  return { reach: length(m), bounds: [...own, ...context.earlier.map((p) => bound(p.n, p.h, 0))] };
}

/** Length of the shared edge at distance h: the more negative the farther the line is cut away, -2 when it misses the ball. */
function edgeLength(line: EdgeLine, h: number): number {
  const half2 = 1 - (h * line.reach) ** 2;
  if (half2 < 0) return -2;
  let hi = Math.sqrt(half2);
  let lo = -hi;
  for (const { along, room, slope } of line.bounds) {
    const limit = room + slope * h;
    if (Math.abs(along) <= COINCIDENT) {
      // a facet on the same stop as one of the pair takes nothing from their edge: its bound is 0 but for rounding
      if (limit < -EPSILON) return limit;
      continue;
    }
    const s = limit / along;
    if (along > 0) {
      if (s < hi) hi = s;
    } else if (s > lo) lo = s;
  }
  return hi - lo;
}

/** Shared length of the tier's widest pairs as a function of h, or null when they can share none at any depth. */
function sharedEdge(context: TierContext): ((h: number) => number) | null {
  const pairs = neighbourPairs(context.normals);
  if (pairs.length === 0) return null;
  const lines = widestPairs(pairs).map((pair) => edgeLine(context, pair));
  if (lines.some((line) => line === null)) return null;
  return (h) => {
    let least = 2;
    for (const line of lines) if (line) least = Math.min(least, edgeLength(line, h));
    return least;
  };
}

/** Where the shared edge is at least so long: distances `shallowest` down to `deepest()`. */
interface EdgeInterval {
  readonly shallowest: number;
  readonly deepest: () => number;
}

/** Distances at which the shared edge is at least `wanted`, or its peak when it never is; null without any edge. */
export function edgeInterval(
  context: TierContext,
  wanted: number,
): EdgeInterval | { readonly peak: number; readonly longest: number } | null {
  const shared = sharedEdge(context);
  if (!shared) return null;
  const widest = widestPairs(neighbourPairs(context.normals))[0].delta;
  const outermost = Math.cos(widest / 2);
  const peak = peakOf(shared, -outermost, outermost, Math.max(wanted, COINCIDENT));
  const longest = shared(peak);
  if (longest <= 0) return null;
  if (longest < wanted) return { peak, longest };
  const excess = (h: number) => shared(h) - wanted;
  const end = (h: number) => (excess(h) >= 0 ? h : boundaryOf(excess, peak, h));
  return { shallowest: end(outermost), deepest: () => end(-outermost) };
}

/** @param edge length asked, as a fraction of the radius */
export function depthForEdge(context: TierContext, edge: number): Answer {
  if (context.normals.length < 2) return { depth: 0, unmet: { why: "single" } };
  const found = edgeInterval(context, edge);
  if (!found) return { depth: 0, unmet: { why: "never-shared" } };
  if ("peak" in found)
    return { depth: 1 - found.peak, unmet: { why: "too-long", asked: edge, got: found.longest } };
  return { depth: 1 - found.shallowest };
}
