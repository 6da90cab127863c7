/** Whether a mesh is what a model has to be: closed, one surface without holes, outward, of the piece's volume. */
import { BrokenMesh, type MeshFault } from "./broken-mesh.ts";
import type { CutMesh } from "./mesh.ts";
import type { Plane } from "./plane.ts";
import { SKIN } from "./solid-types.ts";

interface Triangles {
  readonly positions: ArrayLike<number>;
  readonly triangles: Uint32Array;
}

/**
 * Throws unless every edge is shared by exactly two triangles that run along it in opposite directions, all triangles
 * hang together, and V - E + F = 2. A surface that hangs together over its edges has at most 2, and each vertex where two
 * sheets only touch takes one off, so there is no such vertex either.
 * @throws BrokenMesh
 */
export function checkClosed({ triangles }: Pick<Triangles, "triangles">): void {
  const next = (e: number): number => (e % 3 === 2 ? e - 2 : e + 1);
  const { first, edges } = edgesByStart(triangles);
  /** The edge between two vertices in that direction, or -1. */
  const edgeOf = (from: number, to: number): number => {
    for (let i = first[from]; i < first[from + 1]; i++) if (triangles[next(edges[i])] === to) return edges[i];
    return -1;
  };
  // found by its ends, an edge is itself, unless another runs the same way
  for (let e = 0; e < triangles.length; e++) {
    const [from, to] = [triangles[e], triangles[next(e)]];
    if (from === to || edgeOf(from, to) !== e) throw new BrokenMesh("open");
  }
  const reached = new Uint8Array(triangles.length / 3);
  const queue = triangles.length > 0 ? [0] : [];
  if (queue.length > 0) reached[0] = 1;
  let faces = 0;
  for (let face = queue.pop(); face !== undefined; face = queue.pop()) {
    faces++;
    for (let e = 3 * face; e < 3 * face + 3; e++) {
      const back = edgeOf(triangles[next(e)], triangles[e]);
      if (back < 0) throw new BrokenMesh("open");
      const other = Math.floor(back / 3);
      if (reached[other]) continue;
      reached[other] = 1;
      queue.push(other);
    }
  }
  let used = 0;
  for (let v = 0; v + 1 < first.length; v++) if (first[v + 1] > first[v]) used++;
  if (faces !== reached.length || used - faces / 2 !== 2) throw new BrokenMesh("not-one-surface");
}

/** Directed edges gathered by the vertex that they begin at: those of v are edges[first[v]] up to edges[first[v + 1]], ascending. */
function edgesByStart(triangles: Uint32Array): { first: Uint32Array; edges: Uint32Array } {
  let vertices = 0;
  for (const v of triangles) vertices = Math.max(vertices, v + 1);
  const first = new Uint32Array(vertices + 1);
  for (const v of triangles) first[v + 1]++;
  for (let v = 0; v < vertices; v++) first[v + 1] += first[v];
  const at = first.slice(0, vertices);
  const edges = new Uint32Array(triangles.length);
  for (let e = 0; e < triangles.length; e++) edges[at[triangles[e]]++] = e;
  return { first, edges };
}

/**
 * Every corner of a triangle lies on the facet that the triangle belongs to, or on the unit sphere where it is skin.
 * @param positions of a mesh on the unit sphere   @param off how far rounding may set a corner off
 * @throws BrokenMesh
 */
export function checkOnSurface(
  { positions: p, triangles, trianglePlanes }: CutMesh,
  planes: readonly Plane[],
  off: number,
): void {
  for (let t = 0; t < triangles.length; t++) {
    const [x, y, z] = [p[3 * triangles[t]], p[3 * triangles[t] + 1], p[3 * triangles[t] + 2]];
    const plane = trianglePlanes[Math.floor(t / 3)];
    const distance =
      plane === SKIN
        ? Math.sqrt(x * x + y * y + z * z) - 1
        : planes[plane].n[0] * x + planes[plane].n[1] * y + planes[plane].n[2] * z - planes[plane].h;
    if (!(Math.abs(distance) <= off)) throw new BrokenMesh("surface");
  }
}

/**
 * @param volume of the piece; with a negative sign or far from this the mesh is inside out or laps over itself
 * @param error how far the mesh's own chords may leave it from that
 * @throws BrokenMesh
 */
export function checkVolume(volume: number, exact: number, error: number): void {
  const fault: MeshFault | null = Math.abs(volume - exact) <= error ? null : "volume";
  if (fault) throw new BrokenMesh(fault);
}
