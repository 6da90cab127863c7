/**
 * Triangle meshes of cut pieces, for drawing and for model files: what a blank is, what a cut gives, and what can be
 * measured on it. Numbers a person reads never come from here; they come from the exact solid.
 * Lengths are in the blank's own unit (the ball's radius is 1). Faces run counter-clockwise seen from outside.
 */
import { endOf, type HalfEdges, halfEdgesOf } from "./mesh-half-edges.ts";
import { SKIN } from "./solid-types.ts";

/** A closed convex surface to be cut. */
export interface Blank {
  readonly surface: Readonly<HalfEdges>;
  /** True for the unit ball: its edges stand for great-circle arcs and facets are bordered by true circles. */
  readonly isRound: boolean;
  /** Longest edge of a round blank as an arc, radians; 0 on others. */
  readonly longestArc: number;
}

/** One face that a plane left: a convex ring of vertices in that plane. */
export interface FacetPolygon {
  readonly plane: number;
  readonly ring: Uint32Array;
}

/** A closed surface; each vertex stands once, so every edge is shared by exactly two triangles. */
export interface CutMesh {
  /** Three coordinates a vertex. */
  readonly positions: Float64Array;
  /** Three a vertex: outward unit normal of the smooth skin; meaningless where only facets meet. */
  readonly skinNormals: Float64Array;
  /** Three vertices a triangle: the skin first, then the facets by ascending plane. */
  readonly triangles: Uint32Array;
  /** The plane that made each triangle, SKIN for the blank's own surface; ascending. */
  readonly trianglePlanes: Int32Array;
  readonly facets: readonly FacetPolygon[];
  /** True when nothing is left; then every array is empty. */
  readonly vanished: boolean;
}

/**
 * A blank of any closed convex surface.
 * @param at three coordinates a vertex
 * @param normal three a vertex, outward unit normals of the smooth surface that the polygons stand for
 * @param faces rings of vertex indices, flat, counter-clockwise from outside
 * @param isRound only for vertices on the unit sphere about the origin
 * @throws RangeError when the surface is not closed
 */
export function blankOf(
  at: Float64Array,
  normal: Float64Array,
  faces: readonly (readonly number[])[],
  isRound = false,
): Blank {
  const surface = halfEdgesOf(at, normal, faces, SKIN);
  let longestArc = 0;
  for (let h = 0; isRound && h < surface.halfEdgeCount; h++) {
    const [a, b] = [3 * surface.start[h], 3 * endOf(surface, h)];
    const chord = Math.hypot(at[a] - at[b], at[a + 1] - at[b + 1], at[a + 2] - at[b + 2]);
    longestArc = Math.max(longestArc, 2 * Math.asin(Math.min(1, chord / 2)));
  }
  return { surface, isRound, longestArc };
}

/** Signed volume: six times it is the sum of det(a, b, c) over the triangles. */
export function meshVolume({ positions: p, triangles: t }: Pick<CutMesh, "positions" | "triangles">): number {
  let six = 0;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
    six +=
      p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return six / 6;
}

/** Area of the triangles that `plane` made (SKIN for the blank's own surface), of all when none is named. */
export function meshArea({ positions: p, triangles: t, trianglePlanes }: CutMesh, plane?: number): number {
  let sum = 0;
  for (let i = 0; i < t.length; i += 3) {
    if (plane !== undefined && trianglePlanes[i / 3] !== plane) continue;
    const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
    const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    sum += Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
  }
  return sum / 2;
}
