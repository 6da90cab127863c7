/** A traced picture set on a page's ground: past the piece and through it the ground shows, not the light behind, as on the page. */
import type { Rgb } from "../optics/spectrum.ts";
import { toBytesWithAlpha } from "../optics/tone-map.ts";

/**
 * @param rows linear radiance of a transparent picture, premultiplied, four floats a pixel
 * @param gain multiplies radiance
 * @param ground sRGB bytes
 * @returns four bytes a pixel, opaque; mixed as browsers mix a picture with what it lies on, in sRGB as it is encoded
 */
export function onGround(
  rows: Float32Array,
  gain: number | Rgb,
  ground: readonly [number, number, number],
): Uint8Array {
  const set = toBytesWithAlpha(rows, gain);
  for (let i = 0; i < set.length; i += 4) {
    const share = set[i + 3] / 255;
    for (let c = 0; c < 3; c++) set[i + c] = Math.round(share * set[i + c] + (1 - share) * ground[c]);
    set[i + 3] = 255;
  }
  return set;
}
