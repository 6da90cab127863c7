/**
 * The cut piece as a closed mesh for model files: single-precision vertices, each standing once, so that a reader who
 * joins vertices by their bits finds every edge shared by exactly two triangles.
 */

import type { CutMesh } from "../geometry/mesh.ts";
import { segmentsFor, sphereBlank } from "../geometry/mesh-blanks.ts";
import { cutMesh } from "../geometry/mesh-cut.ts";
import type { SolvedPlan } from "../plan/solved.ts";

/** How far the mesh may stand off the true skin, mm: round to the eye and below what a fine 3D printer resolves. */
const CHORD_ERROR_MM = 0.008;

export interface PieceMesh {
  /** Three coordinates a vertex, in the unit asked for. */
  readonly positions: Float32Array;
  /** Three a vertex: outward unit normal of the skin; meaningless where only facets meet. */
  readonly skinNormals: Float32Array;
  readonly triangles: Uint32Array;
  /** Position of each triangle's facet in the solved plan, SKIN for natural skin; ascending. */
  readonly facets: Int32Array;
}

/** Names the vertices whose single-precision coordinates are equal by the first of them. */
function weld(positions: Float32Array): Uint32Array {
  const bits = new Uint32Array(positions.buffer, positions.byteOffset, positions.length);
  const first = new Map<string, number>();
  return Uint32Array.from({ length: positions.length / 3 }, (_, v) => {
    const key = `${bits[3 * v]},${bits[3 * v + 1]},${bits[3 * v + 2]}`;
    const known = first.get(key);
    if (known === undefined) first.set(key, v);
    return known ?? v;
  });
}

/** Rounds to single precision, joins what became one place, and drops the triangles that have no area left. */
function singlePrecision(mesh: CutMesh, scale: number): PieceMesh {
  // adding 0 makes -0 the same bits as 0
  const positions = Float32Array.from(mesh.positions, (x) => x * scale + 0);
  const name = weld(positions);
  const triangles: number[] = [];
  const facets: number[] = [];
  mesh.trianglePlanes.forEach((plane, i) => {
    const [a, b, c] = [0, 1, 2].map((k) => name[mesh.triangles[3 * i + k]]);
    if (a === b || b === c || c === a) return;
    triangles.push(a, b, c);
    facets.push(plane);
  });
  return {
    positions,
    skinNormals: Float32Array.from(mesh.skinNormals),
    triangles: Uint32Array.from(triangles),
    facets: Int32Array.from(facets),
  };
}

/**
 * @param unitMm millimetres in the unit of the positions: 1 for millimetres, 1000 for metres
 * @throws RangeError when the plan leaves nothing of the piece
 */
export function pieceMesh({ planes, radiusMm }: SolvedPlan, unitMm: number): PieceMesh {
  const mesh = cutMesh(sphereBlank(segmentsFor(CHORD_ERROR_MM / radiusMm)), planes);
  if (mesh.vanished)
    throw new RangeError("this plan leaves nothing of the piece, so there is no model to write");
  return singlePrecision(mesh, radiusMm / unitMm);
}
