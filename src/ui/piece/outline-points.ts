/** Outlines as points to draw: lines as they are, arcs by their closed form, never from a mesh. Unit sphere. */
import type { Plane } from "../../core/geometry/plane.ts";
import type { OutlinePiece, SolidFacet } from "../../core/geometry/solid-types.ts";
import { cross, dot, scale, sub, type Vec3 } from "../../core/geometry/vec.ts";

/** Chords this short leave the arc by less than 0.1 % of its radius. */
const STEP_RAD = (5 * Math.PI) / 180;

/**
 * Points along the circle in which a plane cuts the unit sphere, from `from` to `to` counter-clockwise seen from outside;
 * both ends included. A whole circle when they are the same place.
 */
export function arcPoints(plane: Plane, from: Vec3, to: Vec3, stepRad = STEP_RAD): Vec3[] {
  const centre = scale(plane.n, plane.h);
  const first = sub(from, centre);
  const quarter = cross(plane.n, first);
  const last = sub(to, centre);
  let sweep = Math.atan2(dot(last, quarter), dot(last, first));
  // A piece whose ends coincide is the whole circle; anything else runs forward.
  if (sweep < 0 || (from[0] === to[0] && from[1] === to[1] && from[2] === to[2])) sweep += 2 * Math.PI;
  const steps = Math.max(2, Math.ceil(sweep / stepRad));
  const points: Vec3[] = [];
  for (let i = 0; i <= steps; i++) {
    const angle = (sweep * i) / steps;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    points.push([
      centre[0] + c * first[0] + s * quarter[0],
      centre[1] + c * first[1] + s * quarter[1],
      centre[2] + c * first[2] + s * quarter[2],
    ]);
  }
  points[steps] = to;
  return points;
}

/** One piece of an outline as a polyline. */
function piecePoints(plane: Plane, piece: OutlinePiece, stepRad = STEP_RAD): Vec3[] {
  return piece.kind === "line" ? [piece.from, piece.to] : arcPoints(plane, piece.from, piece.to, stepRad);
}

/** A whole outline as one closed polyline, first point not repeated. Empty for a swallowed facet. */
export function outlinePoints(facet: SolidFacet, stepRad = STEP_RAD): Vec3[] {
  return facet.outline.flatMap((piece) => piecePoints(facet.plane, piece, stepRad).slice(0, -1));
}
