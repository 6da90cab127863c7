/**
 * Corners that a tier was to come to and passes by. Where the tier named has twice as many corners as this one has facets, each
 * facet stands between two and comes to both; turned away from their middle it comes to the nearer one, and the other is
 * missed, at any size. Turned by half a step each facet stands at one corner, and what lies between belongs to none.
 */
import { gapBetween, meetingPoint } from "../geometry/circles.ts";
import type { Plane } from "../geometry/plane.ts";
import { dot, type Vec3 } from "../geometry/vec.ts";
import type { SolvedTier } from "../plan/solved.ts";
import type { Checked } from "./findings.ts";

export interface MissedCorner {
  /** The two that make the corner, and the facet that should come to it. */
  readonly facets: readonly [number, number, number];
  readonly at: Vec3;
  /** How far the facet's plane lies above it, as a fraction of the radius. */
  readonly miss: number;
}

type Meeting = Pick<Checked, "solid" | "solved">;

/** Where neighbours of a tier meet in the finished piece: both ends of their edge, or the point where they touch. */
function cornersOf({ solved, solid }: Meeting, { first, count }: SolvedTier, tolerance: number) {
  const { planes } = solved;
  return Array.from({ length: count }, (_, k) => {
    const [a, b] = [first + k, first + ((k + 1) % count)].sort((x, y) => x - y);
    const edge = solid.edges.find((e) => e.a === a && e.b === b);
    const touches = !edge && Math.abs(gapBetween(planes[a], planes[b])) <= tolerance;
    return { a, b, ends: edge ? [edge.from, edge.to] : touches ? [meetingPoint(planes[a], planes[b])] : [] };
  });
}

const above = ({ n, h }: Plane, at: Vec3): number => h - dot(n, at);

/** @param tolerance as a fraction of the radius: less than that is no miss */
export function missedCorners(meeting: Meeting, tolerance: number): MissedCorner[] {
  const { solved } = meeting;
  const { planes, plan } = solved;
  return solved.tiers.flatMap((tier, t): MissedCorner[] => {
    const { depth } = plan.tiers[t];
    const named =
      depth.rule === "corners" ? solved.tiers.find(({ tierId }) => tierId === depth.of) : undefined;
    if (!named || !tier.met || named.count !== 2 * tier.count) return [];
    const own = Array.from({ length: tier.count }, (_, k) => tier.first + k);
    const nearest = (at: Vec3) => [...own].sort((i, j) => above(planes[i], at) - above(planes[j], at));
    return cornersOf(meeting, named, tolerance).flatMap(({ a, b, ends }): MissedCorner[] => {
      // of an edge's ends the one toward this tier
      const at = [...ends].sort(
        (p, q) => above(planes[nearest(p)[0]], p) - above(planes[nearest(q)[0]], q),
      )[0];
      if (!at) return [];
      const isMade = planes.some((plane, i) => i !== a && i !== b && above(plane, at) <= tolerance);
      if (isMade) return [];
      const [facet, second] = nearest(at);
      const miss = above(planes[facet], at);
      const isBetween = second !== undefined && above(planes[second], at) - miss <= tolerance;
      return isBetween ? [] : [{ facets: [a, b, facet], at, miss }];
    });
  });
}
