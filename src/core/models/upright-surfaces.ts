/**
 * The piece's mesh parted by kind of surface, with the vertices and normals that a model for the eye needs: y up, so what the plan
 * calls front (+z) stands up (+y), and the plan's y points to -z. Where two surfaces border, their vertices have the same bits, so
 * the body is closed; the skin is shaded smooth, each facet flat.
 */
import { SKIN } from "../geometry/solid-types.ts";
import type { Finish } from "../plan/document.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import type { PieceMesh } from "./piece-mesh.ts";

/** What a triangle's surface is: the skin the fire left, or a facet by its finish. */
export type Surface = "skin" | Finish;
export const SURFACES: readonly Surface[] = ["skin", "ground", "prepolished", "polished"];

/** From the plan's axes to those with y up: (x, y, z) becomes (x, z, -y). */
const upright = (x: number, y: number, z: number): [number, number, number] => [x, z, -y + 0];

/** Corners of one primitive, each a vertex with its normal. */
export interface Primitive {
  readonly positions: number[];
  readonly normals: number[];
  readonly indices: number[];
}

const surfaceOf = (solved: SolvedPlan, facet: number): Surface =>
  facet === SKIN ? "skin" : (solved.plan.tiers[solved.facets[facet].tierIndex].finish ?? "polished");

/** Parts the mesh by surface. Skin vertices are shared; a facet's are its own, since its normal is. */
export function uprightSurfaces(mesh: PieceMesh, solved: SolvedPlan): Map<Surface, Primitive> {
  const primitives = new Map<Surface, Primitive>();
  const placed = new Map<string, number>();
  mesh.facets.forEach((facet, i) => {
    const surface = surfaceOf(solved, facet);
    const into = primitives.get(surface) ?? { positions: [], normals: [], indices: [] };
    primitives.set(surface, into);
    for (let k = 0; k < 3; k++) {
      const v = mesh.triangles[3 * i + k];
      const key = `${facet}:${v}`;
      let index = placed.get(key);
      if (index === undefined) {
        index = into.positions.length / 3;
        placed.set(key, index);
        const [p, m] = [mesh.positions, mesh.skinNormals];
        const n = facet === SKIN ? [m[3 * v], m[3 * v + 1], m[3 * v + 2]] : solved.planes[facet].n;
        into.positions.push(...upright(p[3 * v], p[3 * v + 1], p[3 * v + 2]));
        into.normals.push(...upright(n[0], n[1], n[2]));
      }
      into.indices.push(index);
    }
  });
  return primitives;
}
