/**
 * `close` to an earlier tier: the least depth at which this tier's neighbours share an edge and no patch of round
 * skin borders both tiers.
 *
 * Skin between the tiers can vanish only where a facet's plane comes to a place fixed by the earlier tiers, or where
 * two neighbours' planes come together on an earlier tier's circle, or where two circles come to touch. Those depths
 * are closed forms; the least of them at which the condition holds is the answer.
 */

import { angularRadius, gapBetween, isCovered, meetingPoint } from "../../geometry/circles.ts";
import { type BallCut, copyOf, cutOn } from "../../geometry/cut.ts";
import type { Plane } from "../../geometry/plane.ts";
import { boundaryOf } from "../../geometry/search.ts";
import { arcEndsOf, sliceFacet } from "../../geometry/slice.ts";
import { bordersOf, cutAll, withWiderSteps } from "../../geometry/solid.ts";
import { SKIN } from "../../geometry/solid-types.ts";
import { EPSILON } from "../../geometry/tolerance.ts";
import { add, angleBetween, cross, dot, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import { edgeInterval } from "./edge-rule.ts";
import { type Answer, neighbourPairs, type TierContext, type TierRange } from "./tier-context.ts";

/** How far a touching pair's planes are sunk so that it counts as a closed pinch when skin is traced. */
const PINCH = 1e-8;
/** Less than that: what is closed even so is not closed by the sinking, which rounds the pinch off by its root. */
const FAINT_PINCH = 1e-10;

/** Depths this far apart tell an arc that is about to vanish from one that has. */
const JUST_BEFORE = 1e-6;

const range = (r: TierRange): number[] => Array.from({ length: r.count }, (_, i) => r.first + i);

/** Touching points of the earlier tier's own neighbours, within tolerance. */
function pinches(context: TierContext, to: TierRange): { a: number; b: number; at: Vec3; gap: number }[] {
  const normals = range(to).map((i) => context.earlier[i].n);
  return neighbourPairs(normals).flatMap((pair) => {
    const [a, b] = [pair.a + to.first, pair.b + to.first];
    const [pa, pb] = [context.earlier[a], context.earlier[b]];
    const gap = gapBetween(pa, pb);
    // Circles that overlap have ends of an edge instead.
    if (gap <= -EPSILON || gap > context.tolerance) return [];
    const at = meetingPoint(pa, pb);
    return isCovered(at, a, b, context.earlier) ? [] : [{ a, b, at, gap }];
  });
}

/** Earlier planes with touching pairs of the tier sunk by `depth` more than closes their pinch. */
function pinched(
  context: TierContext,
  points: readonly { a: number; b: number; gap: number }[],
  depth = PINCH,
): Plane[] {
  const sink = new Map<number, number>();
  for (const { a, b, gap } of points)
    for (const i of [a, b]) sink.set(i, Math.max(sink.get(i) ?? 0, Math.max(0, gap) / 2 + depth));
  return context.earlier.map((plane, i) => {
    const by = sink.get(i);
    return by === undefined ? plane : { n: plane.n, h: Math.cos(angularRadius(plane) + by) };
  });
}

/** The two points of a circle that lie equally deep under two normals: n.x = h, (nk - nl).x = 0, |x| = 1. */
function bisectorPoints(circle: Plane, nk: Vec3, nl: Vec3): Vec3[] {
  const w = sub(nk, nl);
  const wn = dot(w, circle.n);
  const p = sub(w, scale(circle.n, wn));
  const p2 = dot(p, p);
  if (p2 < EPSILON) return [];
  const base = sub(scale(circle.n, circle.h), scale(p, (circle.h * wn) / p2));
  const half2 = 1 - dot(base, base);
  if (half2 < 0) return [];
  const half = scale(normalize(cross(circle.n, p)), Math.sqrt(half2));
  return [add(base, half), sub(base, half)];
}

/** All depths at which skin between the tiers may come to vanish, ascending and without repeats. */
function candidateDepths(context: TierContext, to: TierRange, points: readonly { at: Vec3 }[]): number[] {
  const depths: number[] = [];
  const cover = (c: Vec3) => depths.push(1 - Math.max(...context.normals.map((n) => dot(n, c))));
  for (const { at } of points) cover(at);
  for (const i of range(to)) {
    const plane = context.earlier[i];
    arcEndsOf(sliceFacet(i, context.earlier)).forEach(cover);
    for (const pair of neighbourPairs(context.normals))
      bisectorPoints(plane, context.normals[pair.a], context.normals[pair.b]).forEach(cover);
    for (const n of context.normals) {
      const delta = angleBetween(n, plane.n);
      const rho = angularRadius(plane);
      for (const r of [delta + rho, Math.abs(delta - rho)]) if (r < Math.PI) depths.push(1 - Math.cos(r));
    }
  }
  const sorted = depths.filter((d) => d > 0 && d < 2).sort((a, b) => a - b);
  return sorted.filter((d, i) => i === 0 || d - sorted[i - 1] > EPSILON);
}

/** True when on some outline of the earlier tier an arc runs into a facet of this tier: the wedge of skin there borders both. */
const hasOpenWedge = (cut: BallCut, to: TierRange, own: number): boolean =>
  range(to).some((i) => {
    const face = cut.faces[i];
    if (face === null || face === "whole") return false;
    return face.labels.some((label, p) => {
      const next = face.labels[(p + 1) % face.labels.length];
      return (label === SKIN && next >= own) || (next === SKIN && label >= own);
    });
  });

/**
 * Whether no patch of skin borders both tiers with this tier at a given depth. The earlier tiers are cut once for all depths.
 * @param earlier their planes, pinches closed
 */
function closedAt(
  context: TierContext,
  to: TierRange,
  earlier: readonly Plane[],
): (depth: number) => boolean {
  const own = context.earlier.length;
  const isTo = (i: number) => i >= to.first && i < to.first + to.count;
  const bases = new Map<number, BallCut>();
  const baseFor = (onPlane: number): BallCut => {
    const base = bases.get(onPlane) ?? cutAll(earlier, onPlane);
    bases.set(onPlane, base);
    return base;
  };
  return (depth) =>
    withWiderSteps((onPlane) => {
      const cut = copyOf(baseFor(onPlane));
      for (const n of context.normals) cutOn(cut, { n, h: 1 - depth });
      if (hasOpenWedge(cut, to, own)) return false;
      // where an earlier facet is the very same flat, that one stands for it
      const standing = new Set(cut.planes.flatMap((_, i) => (i < own ? [] : [i, cut.duplicateOf[i]])));
      if (![...standing].some((i) => i >= 0 && cut.faces[i] !== null)) return false;
      const { patches } = bordersOf(cut);
      return !patches.some((patch) => patch.facets.some((i) => standing.has(i)) && patch.facets.some(isTo));
    });
}

/** The widest gap between next neighbours of the earlier tier, radians; negative when all overlap. */
function widestGap(context: TierContext, to: TierRange): number {
  const planes = range(to).map((i) => context.earlier[i]);
  const pairs = neighbourPairs(planes.map((p) => p.n));
  return Math.max(-1, ...pairs.map(({ a, b }) => gapBetween(planes[a], planes[b])));
}

/**
 * The least of `depths` from which on the tier is closed. Skin can also vanish with a facet that is ground away, at no depth
 * of the list: when it is gone shortly before the next one, the depth between is narrowed to.
 */
function leastClosed(isClosedAt: (depth: number) => boolean, depths: readonly number[]): number | null {
  let open = 0;
  for (const depth of depths) {
    const before = depth - Math.min(JUST_BEFORE, (depth - open) / 2);
    if (open > 0 && isClosedAt(before)) return boundaryOf((d) => (isClosedAt(d) ? 1 : -1), before, open);
    if (isClosedAt(depth)) return depth;
    open = depth;
  }
  return null;
}

export function depthToClose(context: TierContext, to: TierRange): Answer {
  if (range(to).every((i) => sliceFacet(i, context.earlier).state === "none"))
    return { depth: 0, unmet: { why: "ground-away", other: to.tier.id } };
  const gap = widestGap(context, to);
  if (gap > context.tolerance) return { depth: 0, unmet: { why: "open-below", other: to.tier.id, got: gap } };
  const edges = context.normals.length === 1 ? null : edgeInterval(context, context.tolerance);
  const isSharing = edges !== null && "shallowest" in edges;
  if (context.normals.length > 1 && !isSharing) return { depth: 0, unmet: { why: "never-shared" } };
  const points = pinches(context, to);
  // A pinch of the earlier tier is closed only once a facet comes down to it.
  const pinchDepth = Math.max(
    0,
    ...points.map(({ at }) => 1 - Math.max(...context.normals.map((n) => dot(n, at)))),
  );
  const edgeDepth = isSharing ? 1 - edges.shallowest : 0;
  const hasNoSkin = closedAt(context, to, pinched(context, points, FAINT_PINCH));
  // Where other tiers lie between, no skin borders both whatever the pinches are.
  const isApart = edgeDepth > 0 && pinchDepth - edgeDepth > Math.sqrt(PINCH) && hasNoSkin(edgeDepth);
  const least = isApart ? edgeDepth : Math.max(pinchDepth, edgeDepth);
  const depths = [least, ...candidateDepths(context, to, points).filter((d) => d > least + EPSILON)];
  const isClosedAt = closedAt(context, to, pinched(context, points));
  const positive = depths.filter((d) => d > 0);
  // A single facet shares no edge that would set a depth: where no skin lies between however little it takes, none is least.
  const slight = Math.min(JUST_BEFORE, (positive[0] ?? JUST_BEFORE) / 2);
  if (!isSharing && isClosedAt(slight))
    return { depth: 0, unmet: { why: "nothing-between", other: to.tier.id } };
  const found = leastClosed(isClosedAt, positive);
  if (found === null || (isSharing && found > 1 - edges.deepest() + EPSILON))
    return { depth: 0, unmet: { why: "stays-open", other: to.tier.id } };
  return { depth: found };
}
