/**
 * Planes as the drawn piece's shader asks for them: by the place where a ray would leave the ball, which only those can cut away
 * whose caps lie about it (`core/measure/caps.ts`). A few are asked a pixel however many there are.
 */
import type { Plane } from "../../core/geometry/plane.ts";
import { capsOf } from "../../core/measure/caps.ts";

/** Texels in a row, a power of two. */
export const ROW_TEXELS = 1024;

/**
 * Texels of four numbers, in whole rows, their count a power of two so that it seldom changes: first one a field with the places
 * of its first plane and of the one after its last, then the planes themselves (outward unit normal, distance from the centre).
 */
export function planeTexels(planes: readonly Plane[]): Float32Array {
  const four = Float64Array.from(planes.flatMap(({ n, h }) => [...n, h]));
  const { first, planes: listed } = capsOf(four, planes.length);
  const fields = first.length - 1;
  const rows = 2 ** Math.ceil(Math.log2((fields + listed.length) / ROW_TEXELS));
  const texels = new Float32Array(4 * ROW_TEXELS * Math.max(1, rows));
  for (let field = 0; field < fields; field++) {
    texels[4 * field] = fields + first[field];
    texels[4 * field + 1] = fields + first[field + 1];
  }
  for (let k = 0; k < first[fields]; k++)
    texels.set(four.subarray(4 * listed[k], 4 * listed[k] + 4), 4 * (fields + k));
  return texels;
}
