/**
 * What met in one plan and no longer does in another with the same facets: pairs that came apart, corners that split.
 * Serves what the wheel costs (exact azimuths against its stops) and what an edit cost (before against after).
 */
import { gapBetween, meetingPoint } from "../geometry/circles.ts";
import type { Plane } from "../geometry/plane.ts";
import type { Solid } from "../geometry/solid-types.ts";
import { add, dot, scale, type Vec3 } from "../geometry/vec.ts";
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

/** How far the nearest other plane, or the ball, lies below a point; 0 when the point is on or in the solid. */
const coverOver = (at: Vec3, planes: readonly Plane[]): number =>
  Math.max(0, Math.hypot(...at) - 1, ...planes.map(({ n, h }) => dot(n, at) - h));

function lostPair(pair: MeetingPair, { solved: { planes } }: Meets): LostMeet {
  const gap = gapBetween(planes[pair.a], planes[pair.b]);
  const facets = [pair.a, pair.b];
  if (gap > 0) return { kind: "pair", facets, miss: gap, covered: false };
  const miss = coverOver(meetingPoint(planes[pair.a], planes[pair.b]), planes);
  return { kind: "pair", facets, miss, covered: true };
}

/** Where a split corner would be: the middle of the vertices that are left of it, else where it stood. */
function middleOfSplit(corner: MeetCorner, { solid, solved }: Meets): Vec3 {
  const own = new Set(corner.facets);
  const left = solid.vertices.filter((v) => v.facets.filter((i) => own.has(i)).length >= 3);
  const near = left.length > 0 ? left.map((v) => v.at) : null;
  if (near)
    return scale(
      near.reduce<Vec3>((sum, at) => add(sum, at), [0, 0, 0]),
      1 / near.length,
    );
  return leastSquaresPoint(corner, solved.planes);
}

/** The point nearest to all planes of a corner, by averaged projections (Cimmino) from where the corner stood. */
function leastSquaresPoint(corner: MeetCorner, planes: readonly Plane[]): Vec3 {
  const SWEEPS = 60;
  let at = corner.at;
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    const moves = corner.facets.map((i) => scale(planes[i].n, planes[i].h - dot(planes[i].n, at)));
    const mean = scale(
      moves.reduce<Vec3>((sum, move) => add(sum, move), [0, 0, 0]),
      1 / moves.length,
    );
    at = add(at, mean);
  }
  return at;
}

function lostCorner(corner: MeetCorner, after: Meets): LostMeet {
  const { planes } = after.solved;
  const at = middleOfSplit(corner, after);
  const apart = Math.max(...corner.facets.map((i) => Math.abs(dot(planes[i].n, at) - planes[i].h)));
  const cover = coverOver(at, planes);
  const isSplit = corner.facets.length > 3;
  return {
    kind: "corner",
    facets: corner.facets,
    miss: isSplit ? apart : Math.max(apart, cover),
    covered: !isSplit,
  };
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
