/**
 * Triangle meshes of cut pieces, for model files: what there is of one, and what can be measured on it.
 * Numbers a person reads never come from here; they come from the exact solid. The ball's radius is 1. Faces run counter-clockwise seen from outside.
 */

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
  /** The plane that made each triangle, SKIN for natural skin; ascending. */
  readonly trianglePlanes: Int32Array;
  readonly facets: readonly FacetPolygon[];
  /** True when nothing is left; then every array is empty. */
  readonly vanished: boolean;
}

/** Signed volume: six times it is the sum of det(a, b, c) over the triangles. */
export function meshVolume({
  positions: p,
  triangles: t,
}: {
  readonly positions: ArrayLike<number>;
  readonly triangles: ArrayLike<number>;
}): number {
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

/** Area of the triangles that `plane` made (SKIN for natural skin), of all when none is named. */
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
