/**
 * What met in one plan and no longer does in another with the same facets: pairs that came apart, corners that split.
 * Serves what the wheel costs (exact azimuths against its stops) and what an edit cost (before against after).
 */
import { gapBetween, meetingPoint } from "../geometry/circles.ts";
import type { Plane } from "../geometry/plane.ts";
import type { Solid } from "../geometry/solid-types.ts";
import { EPSILON } from "../geometry/tolerance.ts";
import { add, cross, dot, scale, type Vec3 } from "../geometry/vec.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { type MeetCorner, meetCorners } from "./corners.ts";
import { type MeetingPair, meetingPairs } from "./pairs.ts";

export interface Meets {
  readonly solved: SolvedPlan;
  readonly solid: Solid;
  readonly pairs: readonly MeetingPair[];
  readonly corners: readonly MeetCorner[];
}

/** @param tolerance as a fraction of the radius */
export const meetsOf = (solved: SolvedPlan, solid: Solid, tolerance: number): Meets => ({
  solved,
  solid,
  pairs: meetingPairs(solved, solid, tolerance),
  corners: meetCorners(solid.vertices, solved.planes, tolerance),
});

export interface LostMeet {
  readonly kind: "pair" | "corner";
  /** Positions in plan order, the same in both plans. */
  readonly facets: readonly number[];
  /** The gap that opens, or how far the planes of the corner miss one point; a fraction of the radius. */
  readonly miss: number;
  /** True where another facet has come over the place, so that nothing opens. */
  readonly covered: boolean;
}

const keyOf = (facets: readonly number[]): string => facets.join(" ");

/** How far the planes of a solid, but for some, lie below a point; 0 where none covers it. */
const coverOver = (at: Vec3, planes: readonly Plane[], own: readonly number[]): number =>
  Math.max(0, ...planes.map(({ n, h }, i) => (own.includes(i) ? 0 : dot(n, at) - h)));

function lostPair(pair: MeetingPair, { solved: { planes } }: Meets): LostMeet {
  const gap = gapBetween(planes[pair.a], planes[pair.b]);
  const facets = [pair.a, pair.b];
  const cover = coverOver(meetingPoint(planes[pair.a], planes[pair.b]), planes, facets);
  if (gap > 0) return { kind: "pair", facets, miss: gap, covered: cover > EPSILON };
  return { kind: "pair", facets, miss: cover, covered: true };
}

/** The middle of the vertices that are left of a corner that was split; null where none is. */
function middleOfSplit({ facets }: MeetCorner, { solid }: Meets): Vec3 | null {
  const own = new Set(facets);
  const left = solid.vertices.filter((v) => v.facets.filter((i) => own.has(i)).length >= 3);
  if (left.length === 0) return null;
  const sum = left.reduce<Vec3>((total, { at }) => add(total, at), [0, 0, 0]);
  return scale(sum, 1 / left.length);
}

/** Of less the planes share a direction, and no point is nearest to all of them. */
const FLAT = 1e-9;

/**
 * The point of the glass nearest to planes by least squares, from the normal equations (sum of n n^T) x = sum of h n by
 * Cramer's rule; where it lies outside the ball, the skin below it. Null where there is no single one.
 */
function nearestToAll(planes: readonly Plane[]): Vec3 | null {
  const column = (k: 0 | 1 | 2): Vec3 =>
    planes.reduce<Vec3>((sum, { n }) => add(sum, scale(n, n[k])), [0, 0, 0]);
  const right = planes.reduce<Vec3>((sum, { n, h }) => add(sum, scale(n, h)), [0, 0, 0]);
  const [a, b, c] = [column(0), column(1), column(2)];
  const det = dot(a, cross(b, c));
  if (Math.abs(det) < FLAT) return null;
  const at: Vec3 = [
    dot(right, cross(b, c)) / det,
    dot(a, cross(right, c)) / det,
    dot(a, cross(b, right)) / det,
  ];
  return scale(at, 1 / Math.max(1, Math.hypot(...at)));
}

function lostCorner(corner: MeetCorner, after: Meets): LostMeet {
  const { planes } = after.solved;
  const own = corner.facets.map((i) => planes[i]);
  const apartAt = (at: Vec3): number => Math.max(...own.map(({ n, h }) => Math.abs(dot(n, at) - h)));
  const split = corner.facets.length > 3 ? middleOfSplit(corner, after) : null;
  const places = split ? [split] : [corner.at, nearestToAll(own)].filter((at) => at !== null);
  const at = places.reduce((best, one) => (apartAt(one) < apartAt(best) ? one : best));
  const cover = split ? 0 : coverOver(at, planes, corner.facets);
  const miss = Math.max(apartAt(at), cover);
  return { kind: "corner", facets: corner.facets, miss, covered: cover > EPSILON };
}

/**
 * Pairs and corners of `before` that `after` has not. Both must have the same facets in the same order.
 * @param tolerance as a fraction of the radius: less than that is no miss
 */
export function lostMeets(before: Meets, after: Meets, tolerance: number): LostMeet[] {
  const meeting = new Set(after.pairs.flatMap((p) => (p.state === "gap" ? [] : [keyOf([p.a, p.b])])));
  const pairs = before.pairs
    .filter((p) => p.state !== "gap" && !meeting.has(keyOf([p.a, p.b])))
    .map((p) => lostPair(p, after));
  const byFacet = new Map<number, MeetCorner[]>();
  for (const corner of after.corners)
    for (const i of corner.facets) byFacet.set(i, [...(byFacet.get(i) ?? []), corner]);
  const stands = (corner: MeetCorner) =>
    (byFacet.get(corner.facets[0]) ?? []).some((own) => corner.facets.every((i) => own.facets.includes(i)));
  const corners = before.corners.filter((c) => !stands(c)).map((c) => lostCorner(c, after));
  return [...corners, ...pairs].filter((lost) => lost.miss > tolerance);
}

/** What one tier lost: the worst of it, how much of which kind, the facets that take part, those of the worst first. */
export interface TierLoss {
  readonly missMm: number;
  readonly corners: number;
  readonly pairs: number;
  readonly facets: readonly string[];
}

/** Losses gathered by the tier to name for each. @param tierToName position of that tier in cutting order */
export function lossesByTier(
  lost: readonly LostMeet[],
  { facets, radiusMm }: SolvedPlan,
  tierToName: (lost: LostMeet) => number,
): ReadonlyMap<number, TierLoss> {
  const byTier = new Map<number, LostMeet[]>();
  for (const one of lost) {
    const tier = tierToName(one);
    byTier.set(tier, [...(byTier.get(tier) ?? []), one]);
  }
  return new Map(
    [...byTier].map(([tier, own]): [number, TierLoss] => {
      const worst = own.reduce((a, b) => (b.miss > a.miss ? b : a));
      const parts = [...new Set([...worst.facets, ...own.flatMap((l) => l.facets)])];
      const count = (kind: LostMeet["kind"]) => own.filter((l) => l.kind === kind).length;
      return [
        tier,
        {
          missMm: worst.miss * radiusMm,
          corners: count("corner"),
          pairs: count("pair"),
          facets: parts.map((i) => facets[i].id),
        },
      ];
    }),
  );
}
