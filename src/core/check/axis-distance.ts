/** How near a facet comes to the piece's axis on one side: what a dop cemented there would touch. Unit sphere. */
import { SKIN, type SolidFacet } from "../geometry/solid-types.ts";
import { EPSILON } from "../geometry/tolerance.ts";
import { addScaled, cross, dot, scale, sub, type Vec3 } from "../geometry/vec.ts";

/** 1 the front's pole, -1 the back's. */
export type Pole = 1 | -1;

const fromAxis = (p: Vec3): number => Math.hypot(p[0], p[1]);
const leastOf = (points: readonly Vec3[], side: Pole): number =>
  Math.min(Number.POSITIVE_INFINITY, ...points.filter((p) => side * p[2] >= -EPSILON).map(fromAxis));

/** Along a straight piece: its ends, its foot on the axis, and where it passes the equator. */
function lineToAxis(from: Vec3, to: Vec3, side: Pole): number {
  const d = sub(to, from);
  const level2 = d[0] * d[0] + d[1] * d[1];
  const foot = level2 === 0 ? 0 : -(from[0] * d[0] + from[1] * d[1]) / level2;
  const equator = d[2] === 0 ? 0 : -from[2] / d[2];
  const along = [0, 1, foot, equator].filter((t) => t >= 0 && t <= 1);
  return leastOf(
    along.map((t) => addScaled(from, d, t)),
    side,
  );
}

/** Along an arc: the nearest point on the sphere is the one farthest up that side, the circle's top if the arc has it. */
function arcToAxis(facet: SolidFacet, from: Vec3, to: Vec3, turn: number, side: Pole): number {
  const { n, h } = facet.plane;
  const foot = scale(n, h);
  const radius = Math.sqrt(Math.max(0, (1 - h) * (1 + h)));
  const top = addScaled(foot, facet.frame.meridian, side * radius);
  const [f, c] = [sub(from, foot), sub(top, foot)];
  const ahead = Math.atan2(dot(n, cross(f, c)), dot(f, c));
  const onArc = (ahead < 0 ? ahead + 2 * Math.PI : ahead) <= turn + EPSILON;
  return leastOf(onArc ? [from, to, top] : [from, to], side);
}

/** True when the axis itself runs out through the facet on that side. */
function isPierced(facet: SolidFacet, side: Pole): boolean {
  const { n, h } = facet.plane;
  if (side * n[2] <= EPSILON) return false;
  const at: Vec3 = [0, 0, h / n[2]];
  if (side * at[2] < 0 || Math.abs(at[2]) > 1) return false;
  return facet.outline.every(
    (piece) => piece.with === SKIN || dot(n, cross(sub(piece.to, piece.from), sub(at, piece.from))) >= 0,
  );
}

/** Least distance of a facet from the axis on one side; Infinity when it has no part there. */
export function distanceToAxis(facet: SolidFacet, side: Pole): number {
  if (facet.swallowed) return Number.POSITIVE_INFINITY;
  if (isPierced(facet, side)) return 0;
  const radius = Math.sqrt(Math.max(0, 1 - facet.plane.h ** 2));
  return Math.min(
    ...facet.outline.map(({ kind, from, to, length }) =>
      kind === "line" ? lineToAxis(from, to, side) : arcToAxis(facet, from, to, length / radius, side),
    ),
  );
}
