/**
 * Planes as shaders ask for them: by the place where a ray would leave the ball, which only those can cut away whose caps lie
 * about it (`core/measure/caps.ts`, `caps.glsl`). A few are asked a stretch of a ray however many there are.
 */
import { type Caps, capsOf } from "../core/measure/caps.ts";

/** Texels in a row, a power of two. */
export const ROW_TEXELS = 1024;

/**
 * Texels of four numbers, in whole rows, their count a power of two so that it seldom changes: first one a field with the places
 * of its first plane and of the one after its last, then the planes themselves (outward unit normal, distance from the centre).
 * @param planes four numbers each
 * @param caps those of the planes
 * @param numbers four numbers of each plane that stand in the planes' place; missing: the planes themselves
 */
export function planeTexels(
  planes: Float64Array,
  { first, planes: listed }: Caps = capsOf(planes, planes.length / 4),
  numbers: ArrayLike<number> & { subarray(from: number, to: number): ArrayLike<number> } = planes,
): Float32Array {
  const fields = first.length - 1;
  const rows = 2 ** Math.ceil(Math.log2((fields + first[fields]) / ROW_TEXELS));
  const texels = new Float32Array(4 * ROW_TEXELS * Math.max(1, rows));
  for (let field = 0; field < fields; field++) {
    texels[4 * field] = fields + first[field];
    texels[4 * field + 1] = fields + first[field + 1];
  }
  for (let k = 0; k < first[fields]; k++)
    texels.set(numbers.subarray(4 * listed[k], 4 * listed[k] + 4), 4 * (fields + k));
  return texels;
}
