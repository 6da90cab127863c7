/**
 * Where facets meet and where they don't, as marks to draw on the piece (unit sphere):
 * shared edge = one firm line; touch = small open circle; gap = hatched band with its width beside it;
 * corner = filled dot; a corner that misses = a dot with a tail as long as the miss, enlarged.
 */

import type { Report } from "../../core/check/report.ts";
import type { Plane } from "../../core/geometry/plane.ts";
import type { Solid } from "../../core/geometry/solid-types.ts";
import { angleBetween, cross, dot, normalize, scale, type Vec3 } from "../../core/geometry/vec.ts";
import type { SolvedPlan } from "../../core/plan/solved.ts";
import { missedCorners } from "../plan/misses.ts";

export interface MarkLabel {
  readonly at: Vec3;
  readonly mm: number;
  /** Labels of one group say the same. */
  readonly group: string;
}

/** Widths beside gaps and misses. */
export interface MarkLabels {
  readonly gapLabels: readonly MarkLabel[];
  readonly missLabels: readonly MarkLabel[];
}

export interface Marks {
  readonly edges: readonly (readonly Vec3[])[];
  readonly circles: readonly (readonly Vec3[])[];
  readonly hatches: readonly (readonly Vec3[])[];
  readonly dots: readonly Vec3[];
  readonly tails: readonly (readonly Vec3[])[];
}

const CIRCLE_RADIUS = 0.026;
const CIRCLE_STEPS = 20;
const HATCH_HALF = 0.11;
const HATCH_STEP = 0.022;

/** The point at angle `t` from unit vector a towards b along their great circle. */
function toward(a: Vec3, b: Vec3, t: number): Vec3 {
  const side = normalize(cross(cross(a, b), a));
  const [c, s] = [Math.cos(t), Math.sin(t)];
  return [c * a[0] + s * side[0], c * a[1] + s * side[1], c * a[2] + s * side[2]];
}

/** Angular radius of the circle in which a plane cuts the unit sphere. */
const circleAngle = ({ h }: Plane): number => Math.acos(Math.min(1, Math.max(-1, h)));

/** A small circle on the sphere around a point. */
function circleAt(at: Vec3): Vec3[] {
  const u = normalize(cross(at, Math.abs(at[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  const v = cross(at, u);
  return Array.from({ length: CIRCLE_STEPS + 1 }, (_, i) => {
    const t = (2 * Math.PI * i) / CIRCLE_STEPS;
    const [c, s] = [CIRCLE_RADIUS * Math.cos(t), CIRCLE_RADIUS * Math.sin(t)];
    return [at[0] + c * u[0] + s * v[0], at[1] + c * u[1] + s * v[1], at[2] + c * u[2] + s * v[2]];
  });
}

/** Gaps between the same two tiers that read the same. */
const groupOf = (a: string, b: string, mm: number): string => {
  const tierOf = (id: string) => id.slice(0, id.lastIndexOf("/"));
  return `${tierOf(a)} ${tierOf(b)} ${mm.toFixed(2)}`;
};

/** Strokes across the band of skin between two circles, along both sides of their shortest way. */
function hatchBetween(a: Plane, b: Plane): Vec3[][] {
  const delta = angleBetween(a.n, b.n);
  const [ra, rb] = [circleAngle(a), circleAngle(b)];
  const middle = toward(a.n, b.n, (ra + delta - rb) / 2);
  const along = normalize(cross(a.n, b.n));
  const strokes: Vec3[][] = [];
  for (let s = -HATCH_HALF; s <= HATCH_HALF + 1e-9; s += HATCH_STEP) {
    // The band widens to both sides; each stroke runs from one circle to the other, slanted by half a step.
    const on = (n: Vec3, r: number, slant: number): Vec3 => {
      const beside = normalize([
        middle[0] + (s + slant) * along[0],
        middle[1] + (s + slant) * along[1],
        middle[2] + (s + slant) * along[2],
      ]);
      return toward(n, beside, r);
    };
    strokes.push([on(a.n, ra, -HATCH_STEP / 2), on(b.n, rb, HATCH_STEP / 2)]);
  }
  return strokes;
}

/** A band wider than the facets themselves is no near miss: it is skin, and is seen as such. */
const isBand = ({ state, gapMm }: Report["pairs"][number], radiusMm: number): boolean =>
  state === "gap" && gapMm > 0 && gapMm <= radiusMm / 4;

function planesById({ facets, planes }: SolvedPlan): (id: string) => Plane {
  const indexOf = new Map(facets.map((facet, i) => [facet.id, i]));
  return (id) => planes[indexOf.get(id) ?? 0];
}

export function marksOf(solved: SolvedPlan, solid: Solid, report: Report): Marks {
  const { radiusMm } = solved;
  const planeOf = planesById(solved);
  const circles: Vec3[][] = [];
  const hatches: Vec3[][] = [];
  for (const pair of report.pairs) {
    const [pa, pb] = [planeOf(pair.a), planeOf(pair.b)];
    if (pair.state === "touch") circles.push(circleAt(toward(pa.n, pb.n, circleAngle(pa))));
    if (isBand(pair, radiusMm)) hatches.push(...hatchBetween(pa, pb));
  }
  return {
    edges: solid.edges
      .filter(({ from, to }) => dot(from, from) + dot(to, to) > 0)
      .map(({ from, to }) => [from, to]),
    circles,
    hatches,
    dots: report.corners.map(({ at }) => scale(at, 1 / radiusMm)),
    tails: missedCorners(solved, solid).map(({ at, tail }) => [at, tail]),
  };
}

/** @param isTold whether the gaps of a facet are told in numbers; the rest are hatched only */
export function markLabelsOf(
  solved: SolvedPlan,
  solid: Solid,
  report: Report,
  isTold: (facetId: string) => boolean,
): MarkLabels {
  const planeOf = planesById(solved);
  const told = report.pairs.filter(
    (pair) => (isTold(pair.a) || isTold(pair.b)) && isBand(pair, solved.radiusMm),
  );
  return {
    gapLabels: told.map(({ a, b, gapMm }) => {
      const [pa, pb] = [planeOf(a), planeOf(b)];
      const delta = angleBetween(pa.n, pb.n);
      return {
        at: toward(pa.n, pb.n, (circleAngle(pa) + delta - circleAngle(pb)) / 2),
        mm: gapMm,
        group: groupOf(a, b, gapMm),
      };
    }),
    missLabels: missedCorners(solved, solid).map(({ tail, mm }) => ({
      at: tail,
      mm,
      group: `miss ${mm.toFixed(2)}`,
    })),
  };
}
