/**
 * Binary STL: an 80-byte header, the number of triangles, and for each its normal, three corners and an unused word, all
 * little-endian (3D Systems, StereoLithography Interface Specification, 1989). Millimetres, axes as in the plan.
 */
import type { PieceMesh } from "./piece-mesh.ts";

const HEADER_BYTES = 80;
const TRIANGLE_BYTES = 50;

/** Printable ASCII of a name, other characters as a question mark. */
const asciiOf = (name: string): string => name.replace(/[^\x20-\x7e]/g, "?");

/** @param name goes into the header, as far as there is room */
export function stlOf({ positions: p, triangles }: PieceMesh, name: string): Uint8Array<ArrayBuffer> {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(HEADER_BYTES + 4 + TRIANGLE_BYTES * count);
  const view = new DataView(bytes.buffer);
  // a header that began with "solid" would be taken for a text file
  const header = `Glintwright, mm: ${asciiOf(name)}`.slice(0, HEADER_BYTES);
  for (let i = 0; i < header.length; i++) bytes[i] = header.charCodeAt(i);
  view.setUint32(HEADER_BYTES, count, true);
  for (let i = 0; i < count; i++) {
    const at = HEADER_BYTES + 4 + TRIANGLE_BYTES * i;
    const corners = [0, 1, 2].map((k) => 3 * triangles[3 * i + k]);
    normalOf(p, corners).forEach((x, k) => {
      view.setFloat32(at + 4 * k, x, true);
    });
    corners.forEach((c, j) => {
      for (let k = 0; k < 3; k++) view.setFloat32(at + 12 + 12 * j + 4 * k, p[c + k], true);
    });
  }
  return bytes;
}

/** Unit normal of a triangle by its winding; zero for one without area, as the format allows. */
function normalOf(p: Float32Array, [a, b, c]: readonly number[]): [number, number, number] {
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const l = Math.hypot(x, y, z) || 1;
  return [x / l, y / l, z / l];
}
