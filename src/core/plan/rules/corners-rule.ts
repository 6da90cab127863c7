/**
 * `corners` of an earlier tier: its corners are the ends of the edges between its own neighbours (the touching point
 * where they only touch), with the tiers up to it cut. Each facet takes the corner with the greatest n.c; the tier goes
 * as deep as the facet that has farthest to go.
 */
import { gapBetween, isCovered, meetingPoint } from "../../geometry/circles.ts";
import { cutBall } from "../../geometry/solid.ts";
import { dot, type Vec3 } from "../../geometry/vec.ts";
import { type Answer, neighbourPairs, type TierContext, type TierRange } from "./tier-context.ts";

/** Corners of an earlier tier, unit sphere. Empty when its neighbours leave gaps, or when it has been ground away. */
export function cornersOf(context: TierContext, of: TierRange): Vec3[] {
  const planes = context.earlier.slice(0, of.first + of.count);
  const solid = cutBall(planes);
  const normals = planes.slice(of.first).map((p) => p.n);
  return neighbourPairs(normals).flatMap((pair): Vec3[] => {
    const [a, b] = [Math.min(pair.a, pair.b) + of.first, Math.max(pair.a, pair.b) + of.first];
    const edge = solid.edges.find((e) => e.a === a && e.b === b);
    if (edge && edge.length > context.tolerance) return [edge.from, edge.to];
    const isThere = !solid.facets[a].swallowed && !solid.facets[b].swallowed;
    if (!isThere || Math.abs(gapBetween(planes[a], planes[b])) > context.tolerance) return [];
    const point = meetingPoint(planes[a], planes[b]);
    return isCovered(point, a, b, planes) ? [] : [point];
  });
}

export function depthForCorners(context: TierContext, of: TierRange): Answer {
  const corners = cornersOf(context, of);
  if (corners.length === 0) return { depth: 0, unmet: { why: "no-corners", other: of.tier.id } };
  const own = context.normals.map((n) => 1 - Math.max(...corners.map((c) => dot(n, c))));
  const depth = Math.max(...own);
  return { depth, overshoot: { of: of.tier.id, by: own.map((d) => depth - d) } };
}
