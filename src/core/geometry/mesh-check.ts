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
  const vertices = triangles.reduce((most, v) => Math.max(most, v), 0) + 1;
  const edges = new Map<number, number>();
  const next = (e: number): number => (e % 3 === 2 ? e - 2 : e + 1);
  for (let e = 0; e < triangles.length; e++) {
    const key = triangles[e] * vertices + triangles[next(e)];
    if (triangles[e] === triangles[next(e)] || edges.has(key)) throw new BrokenMesh("open");
    edges.set(key, e);
  }
  const reached = new Uint8Array(triangles.length / 3);
  const queue = triangles.length > 0 ? [0] : [];
  if (queue.length > 0) reached[0] = 1;
  let faces = 0;
  for (let face = queue.pop(); face !== undefined; face = queue.pop()) {
    faces++;
    for (let e = 3 * face; e < 3 * face + 3; e++) {
      const back = edges.get(triangles[next(e)] * vertices + triangles[e]);
      if (back === undefined) throw new BrokenMesh("open");
      const other = Math.floor(back / 3);
      if (reached[other]) continue;
      reached[other] = 1;
      queue.push(other);
    }
  }
  const used = new Set(triangles).size;
  if (faces !== reached.length || used - faces / 2 !== 2) throw new BrokenMesh("not-one-surface");
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
