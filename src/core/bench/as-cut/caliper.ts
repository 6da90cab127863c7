/**
 * What outside calipers with parallel jaws read on a finished facet, and what the far jaw rests on: one jaw lies flat on the
 * facet, so the other stands at the farthest point of the body opposite. Exact, from outlines; mm out, unit sphere within.
 */
import type { Plane } from "../../geometry/plane.ts";
import { type Slice, sliceFacet, toSpace } from "../../geometry/slice.ts";
import { SKIN } from "../../geometry/solid-types.ts";
import { EPSILON } from "../../geometry/tolerance.ts";
import { sweep } from "../../geometry/turn.ts";
import { dot, scale, type Vec3 } from "../../geometry/vec.ts";
import type { SetUpDop, Side } from "../../plan/document.ts";
import type { SolvedPlan } from "../../plan/solved.ts";
import { depthsBefore, overlaps, planeAtDepth, sizeAt, tierFacets, UNCUT } from "../stages/half-cut.ts";

/** The farthest point of a body in one direction. */
export interface Farthest {
  /** Greatest d.p over the body. */
  readonly reach: number;
  readonly point: Vec3;
  /** A plane that the point lies on, or SKIN. */
  readonly plane: number;
}

/** The outline's point that lies farthest along d: a corner, or the circle's own farthest point where an arc has it. */
function farthestOnSlice(slice: Slice, d: Vec3): Vec3 {
  const { frame, radius, state, xs, ys, labels } = slice;
  const [a, m] = [dot(frame.across, d), dot(frame.meridian, d)];
  const level = Math.hypot(a, m);
  // Square to d all of the outline is equally far.
  if (level === 0) return state === "whole" ? toSpace(slice, 0, 0) : toSpace(slice, xs[0], ys[0]);
  const top = toSpace(slice, (radius * a) / level, (radius * m) / level);
  if (state === "whole") return top;
  const towards = Math.atan2(m, a);
  const hasTop = labels.some((label, i) => {
    if (label !== SKIN) return false;
    const next = (i + 1) % xs.length;
    const from = Math.atan2(ys[i], xs[i]);
    return sweep(from, towards) < sweep(from, Math.atan2(ys[next], xs[next]));
  });
  if (hasTop) return top;
  const corners = xs.map((x, i) => toSpace(slice, x, ys[i]));
  return corners.reduce((best, p) => (dot(p, d) > dot(best, d) ? p : best));
}

/**
 * The farthest point of the ball cut by `planes` along the unit vector d; null when nothing is left of the ball.
 * Either d itself is still skin, or the point lies on a plane that cuts d off: were all planes active at the best point x
 * to leave d, d = a x + sum of b_j n_j (a, b_j >= 0, Karush, Kuhn and Tucker) would give d.x >= 1. So only their outlines are asked.
 */
export function farthest(planes: readonly Plane[], d: Vec3): Farthest | null {
  let best: Farthest | null = null;
  let isSkin = true;
  planes.forEach((plane, k) => {
    if (dot(plane.n, d) <= plane.h + EPSILON) return;
    isSkin = false;
    const slice = sliceFacet(k, planes, (j) => !overlaps(plane, planes[j]));
    if (slice.state === "none") return;
    const point = farthestOnSlice(slice, d);
    const reach = dot(point, d);
    if (!best || reach > best.reach) best = { reach, point, plane: k };
  });
  return isSkin ? { reach: 1, point: d, plane: SKIN } : best;
}

/** What calipers read on facet k of a body: its own distance from the centre and the farthest point opposite, unit sphere. */
export const acrossFrom = (planes: readonly Plane[], k: number): Farthest | null => {
  const far = farthest(planes, scale(planes[k].n, -1));
  return far && { ...far, reach: planes[k].h + far.reach };
};

/** What stands opposite a facet: round skin, the edge of another tier's facet, or that facet itself, flat against the jaw. */
export type Opposite = { readonly kind: "skin" } | { readonly kind: "edge" | "face"; readonly tier: string };

export interface CaliperReading {
  readonly leastMm: number;
  readonly greatestMm: number;
  /** What the far jaw rests on at the first facet. */
  readonly opposite: Opposite;
  /** True where the far jaw would have to stand where the dop is cemented. */
  readonly isBlocked: boolean;
}

/** Facets whose readings differ by more than this are told apart, mm. */
const APART_MM = 0.01;

/** A jaw square to a facet lies on it flat: cosines that differ by less are one direction. */
const FLAT = 1e-12;

function oppositeOf(
  solved: SolvedPlan,
  planes: readonly Plane[],
  k: number,
  far: Farthest,
  ids: readonly number[],
) {
  if (far.plane === SKIN) return { kind: "skin" } as const;
  const isFace = dot(planes[far.plane].n, planes[k].n) < FLAT - 1;
  const { tierIndex } = solved.facets[ids[far.plane]];
  return { kind: isFace ? "face" : "edge", tier: solved.plan.tiers[tierIndex].id } as const;
}

/** Whether a point is where the dop that holds this side's work is cemented: at the other pole, within the dop's width. */
const isUnderDop = ([x, y, z]: Vec3, side: Side, dopRadius: number): boolean =>
  (side === "front" ? z < 0 : z > 0) && Math.hypot(x, y) < dopRadius;

/**
 * The reading on a finished tier, tiers up to it final, later ones uncut; null when nothing of the tier is left to lay a jaw on.
 * @param dop what holds the piece while this side is cut; null when none was named
 */
export function caliperOf(
  solved: SolvedPlan,
  tierIndex: number,
  dop: SetUpDop | null,
): CaliperReading | null {
  const tier = solved.tiers[tierIndex];
  const { side } = solved.plan.tiers[tierIndex];
  const depths = depthsBefore(solved, tierIndex);
  for (const k of tierFacets(tier)) depths[k] = tier.depthMm;
  const ids = depths.flatMap((mm, k) => (mm > UNCUT ? [k] : []));
  const planes = ids.map((k) => planeAtDepth(solved, k, depths[k]));
  const own = tierFacets(tier).filter((k) => depths[k] > UNCUT && sizeAt(solved, depths, k).widthMm > 0);
  const readings = own.flatMap((k) => {
    const place = ids.indexOf(k);
    const far = acrossFrom(planes, place);
    return far ? [{ place, far, mm: far.reach * solved.radiusMm }] : [];
  });
  if (readings.length === 0) return null;
  const lengths = readings.map(({ mm }) => mm);
  const [{ place, far }] = readings;
  const dopRadius = (dop?.diameterMm ?? 0) / 2 / solved.radiusMm;
  return {
    leastMm: Math.min(...lengths),
    greatestMm: Math.max(...lengths),
    opposite: oppositeOf(solved, planes, place, far, ids),
    isBlocked: readings.some((one) => isUnderDop(one.far.point, side, dopRadius)),
  };
}

/** One figure, or least and greatest where the facets of a tier differ. */
export function caliperFigures(reading: CaliperReading | null): number | readonly [number, number] | null {
  if (!reading) return null;
  const { leastMm, greatestMm } = reading;
  return greatestMm - leastMm > APART_MM ? [leastMm, greatestMm] : (leastMm + greatestMm) / 2;
}
