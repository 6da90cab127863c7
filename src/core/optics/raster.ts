/** Pictures as the tracer wants them: pixels in a row, looked up in linear light. `decode-picture.ts` makes them of files. */
import type { Rgb } from "./spectrum.ts";

/** Four bytes a pixel, rows from the top: red, green, blue in sRGB, and alpha, not premultiplied. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

/** Decoded pictures of a plan, by id. */
export type Rasters = ReadonlyMap<string, Raster>;

/** Linear light of an sRGB byte (IEC 61966-2-1). */
export const LINEAR_OF_BYTE: Float64Array = Float64Array.from({ length: 256 }, (_, byte) => {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
});

export interface Texel {
  readonly rgb: Rgb;
  readonly alpha: number;
}

const clamp = (i: number, most: number): number => Math.min(most, Math.max(0, i));

/**
 * The picture at a place, bilinear in linear light, colour weighed by alpha; beyond the outermost pixels' middles these go on.
 * @param x pixels from the left edge @param y pixels from the top edge; the first pixel's middle is 0.5, 0.5
 */
export function lookUp({ width, height, rgba }: Raster, x: number, y: number): Texel {
  const left = Math.floor(x - 0.5);
  const top = Math.floor(y - 0.5);
  const fx = x - 0.5 - left;
  const fy = y - 0.5 - top;
  let [r, g, b, alpha] = [0, 0, 0, 0];
  for (let k = 0; k < 4; k++) {
    const share = (k & 1 ? fx : 1 - fx) * (k & 2 ? fy : 1 - fy);
    if (share === 0) continue;
    const at = 4 * (clamp(top + (k >> 1), height - 1) * width + clamp(left + (k & 1), width - 1));
    const a = (share * rgba[at + 3]) / 255;
    r += a * LINEAR_OF_BYTE[rgba[at]];
    g += a * LINEAR_OF_BYTE[rgba[at + 1]];
    b += a * LINEAR_OF_BYTE[rgba[at + 2]];
    alpha += a;
  }
  return alpha > 0 ? { rgb: [r / alpha, g / alpha, b / alpha], alpha } : { rgb: [0, 0, 0], alpha: 0 };
}

/** The next level of a mipmap: means of two by two pixels, colour weighed by alpha. In bytes, as all that is so fine is far beyond what a ray sees. */
export function halved({ width, height, rgba }: Raster): Raster {
  const [w, h] = [Math.max(1, width >> 1), Math.max(1, height >> 1)];
  const half = new Uint8Array(4 * w * h);
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      const sum = [0, 0, 0, 0];
      for (let k = 0; k < 4; k++) {
        const at =
          4 * (Math.min(height - 1, 2 * y + (k >> 1)) * width + Math.min(width - 1, 2 * x + (k & 1)));
        const alpha = rgba[at + 3];
        for (let c = 0; c < 3; c++) sum[c] += alpha * rgba[at + c];
        sum[3] += alpha;
      }
      const to = 4 * (y * w + x);
      for (let c = 0; c < 3; c++) half[to + c] = sum[3] > 0 ? Math.round(sum[c] / sum[3]) : 0;
      half[to + 3] = Math.round(sum[3] / 4);
    }
  return { width: w, height: h, rgba: half };
}
