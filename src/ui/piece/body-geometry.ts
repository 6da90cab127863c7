/**
 * The piece as triangles to draw, from the exact solid: every facet a fan over its outline. The round skin is one ball that
 * never changes, made once; what is ground off it the shader leaves out point by point, by the planes themselves. So a
 * move of a drag costs a few hundred triangles, and the border of the skin is as sharp as the screen.
 */
import { BufferAttribute, type BufferGeometry, SphereGeometry } from "three";
import { SKIN, type SolidFacet } from "../../core/geometry/solid-types.ts";
import type { Vec3 } from "../../core/geometry/vec.ts";
import { outlinePoints } from "./outline-points.ts";

/**
 * Edges round the ball: at 900 px its outline stands off the true circle by a tenth of a pixel, in software by less than half a one,
 * where each pixel is computed once for each triangle that touches it or its neighbours.
 */
export const BALL_EDGES = { card: 128, software: 64 } as const;
/** Chords this short leave a facet's circle by less than a tenth of a pixel at 900 px. */
const ARC_STEP_RAD = (2.5 * Math.PI) / 180;

export interface BodyArrays {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** The facet that each corner belongs to, SKIN for skin. */
  readonly faces: Float32Array;
}

/** The facets that are left, flat, on the unit sphere; `faces` holds their positions in `facets`. */
export function facetArrays(facets: readonly SolidFacet[]): BodyArrays {
  const rings = facets.map((facet) => outlinePoints(facet, ARC_STEP_RAD));
  const corners = rings.reduce((sum, ring) => sum + 3 * Math.max(0, ring.length - 2), 0);
  const arrays = emptyArrays(corners);
  let at = 0;
  const put = (p: Vec3, n: Vec3, face: number): void => {
    arrays.positions.set(p, 3 * at);
    arrays.normals.set(n, 3 * at);
    arrays.faces[at++] = face;
  };
  rings.forEach((ring, face) => {
    const { n } = facets[face].plane;
    for (let i = 1; i + 1 < ring.length; i++)
      for (const p of [ring[0], ring[i], ring[i + 1]]) put(p, n, face);
  });
  return arrays;
}

/** The whole ball, smooth, all of it skin. */
export function ballGeometry(edges: number): BufferGeometry {
  const ball = new SphereGeometry(1, edges, edges / 2);
  const faces = new Float32Array(ball.getAttribute("position").count).fill(SKIN);
  return ball.setAttribute("face", new BufferAttribute(faces, 1));
}

const emptyArrays = (corners: number): BodyArrays => ({
  positions: new Float32Array(3 * corners),
  normals: new Float32Array(3 * corners),
  faces: new Float32Array(corners),
});
