/** The cut mesh as arrays to draw: flat facets with their plane's normal, smooth skin with its own. */
import { sphereBlank } from "../../core/geometry/mesh-blanks.ts";
import { cutMesh } from "../../core/geometry/mesh-cut.ts";
import type { Plane } from "../../core/geometry/plane.ts";
import { SKIN } from "../../core/geometry/solid-types.ts";

/** Edges round the ball: at 900 px its outline stands off the true circle by less than half a pixel. */
const SEGMENTS = 128;
const ball = sphereBlank(SEGMENTS);

export interface BodyArrays {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** The facet that each corner belongs to, SKIN for skin. */
  readonly faces: Float32Array;
}

export function bodyArrays(planes: readonly Plane[]): BodyArrays {
  const mesh = cutMesh(ball, planes);
  const corners = mesh.triangles.length;
  const positions = new Float32Array(3 * corners);
  const normals = new Float32Array(3 * corners);
  const faces = new Float32Array(corners);
  for (let i = 0; i < corners; i++) {
    const v = mesh.triangles[i];
    const plane = mesh.trianglePlanes[Math.floor(i / 3)];
    for (let k = 0; k < 3; k++) {
      positions[3 * i + k] = mesh.positions[3 * v + k];
      normals[3 * i + k] = plane === SKIN ? mesh.skinNormals[3 * v + k] : planes[plane].n[k];
    }
    faces[i] = plane;
  }
  return { positions, normals, faces };
}
