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

/** A corner that nothing of the finished piece comes to, and the tier's own facets, nearest to it first. */
interface Unmade {
  readonly a: number;
  readonly b: number;
  readonly at: Vec3;
  readonly nearest: readonly number[];
}

/** Of each edge of a named tier the end toward `tier`, or where its facets touch: how many there are, and which are not made. */
function unmadeCorners(meeting: Meeting, named: SolvedTier, tier: SolvedTier, tolerance: number) {
  const { planes } = meeting.solved;
  const own = Array.from({ length: tier.count }, (_, k) => tier.first + k);
  const nearest = (at: Vec3) => [...own].sort((i, j) => above(planes[i], at) - above(planes[j], at));
  const corners = cornersOf(meeting, named, tolerance).flatMap(({ a, b, ends }): Unmade[] => {
    const [end] = ends
      .map((at) => ({ a, b, at, nearest: nearest(at) }))
      .sort((p, q) => above(planes[p.nearest[0]], p.at) - above(planes[q.nearest[0]], q.at));
    return end ? [end] : [];
  });
  const isMade = ({ a, b, at }: Unmade) =>
    planes.some((plane, i) => i !== a && i !== b && above(plane, at) <= tolerance);
  return { all: corners.length, unmade: corners.filter((corner) => !isMade(corner)) };
}

/** The tiers that were to come to another one's corners, and can, each with that one. */
function askedTiers({ solved }: Meeting): { tier: SolvedTier; named: SolvedTier }[] {
  return solved.tiers.flatMap((tier, t) => {
    const { depth } = solved.plan.tiers[t];
    const named =
      depth.rule === "corners" ? solved.tiers.find(({ tierId }) => tierId === depth.of) : undefined;
    return named && tier.met ? [{ tier, named }] : [];
  });
}

/** @param tolerance as a fraction of the radius: less than that is no miss */
export function missedCorners(meeting: Meeting, tolerance: number): MissedCorner[] {
  const { planes } = meeting.solved;
  return askedTiers(meeting).flatMap(({ tier, named }): MissedCorner[] => {
    if (named.count !== 2 * tier.count) return [];
    const { unmade } = unmadeCorners(meeting, named, tier, tolerance);
    return unmade.flatMap(({ a, b, at, nearest: [facet, second] }): MissedCorner[] => {
      const miss = above(planes[facet], at);
      const isBetween = second !== undefined && above(planes[second], at) - miss <= tolerance;
      return isBetween ? [] : [{ facets: [a, b, facet], at, miss }];
    });
  });
}

/** Corners left over by a tier whose number of facets doesn't go with them. */
export interface LeftCorners {
  readonly tierId: string;
  readonly of: string;
  /** The facets that make them. */
  readonly facets: readonly number[];
  readonly count: number;
  readonly all: number;
  /** How far the highest stands below the nearest facet's plane, as a fraction of the radius. */
  readonly miss: number;
}

/**
 * One facet to three or four corners, two to three: each comes to its nearest, and what lies between belongs to nobody. With as
 * many facets as corners, or half as many, that is no matter of the number.
 */
export function leftCorners(meeting: Meeting, tolerance: number): LeftCorners[] {
  const { planes } = meeting.solved;
  return askedTiers(meeting).flatMap(({ tier, named }): LeftCorners[] => {
    if (named.count === 2 * tier.count || tier.count % named.count === 0 || tier.count === 1) return [];
    const { all, unmade } = unmadeCorners(meeting, named, tier, tolerance);
    if (unmade.length === 0) return [];
    return [
      {
        tierId: tier.tierId,
        of: named.tierId,
        facets: [...new Set(unmade.flatMap(({ a, b }) => [a, b]))].sort((a, b) => a - b),
        count: unmade.length,
        all,
        miss: Math.max(...unmade.map(({ at, nearest }) => above(planes[nearest[0]], at))),
      },
    ];
  });
}
