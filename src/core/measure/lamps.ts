/** Twelve lamps in the corners of an icosahedron about the viewer; a ray that leaves within 8 degrees of one is lit. */
import type { Viewer } from "./viewer.ts";

const GOLDEN = (1 + Math.sqrt(5)) / 2;
/** Of a lamp's angle, times the length of the corners' own coordinates (0, 1, GOLDEN). */
const LIT_COSINE = Math.cos((8 * Math.PI) / 180) * Math.hypot(1, GOLDEN);

/** Whether light from a lamp comes along a ray that leaves the piece in this direction. @param x of a unit direction */
export function isLit({ up, view }: Viewer, x: number, y: number, z: number): boolean {
  const a = Math.abs(x);
  const b = Math.abs(y * up[1] + z * up[2]);
  const c = Math.abs(y * view[1] + z * view[2]);
  return Math.max(b + GOLDEN * c, a + GOLDEN * b, c + GOLDEN * a) >= LIT_COSINE;
}
