/** Pictures all around as lights: apart from what reads their files, which the first view has no need of. */
import type { Vec3 } from "../geometry/vec.ts";
import type { Rgb } from "./spectrum.ts";

/** Linear RGB, three floats a pixel, rows from the top. */
export interface EquirectPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

/**
 * Radiance in unit direction d: u = 1/2 + atan2(z, x) / 2 pi, v = 1/2 + asin(y) / pi with v = 1 at the top row;
 * bilinear between pixel centres, joined at the seam, held at the poles.
 */
export function pictureRadiance(picture: EquirectPicture, d: Vec3): Rgb {
  const { width, height, data } = picture;
  const x = (0.5 + Math.atan2(d[2], d[0]) / (2 * Math.PI)) * width - 0.5;
  const y = (0.5 - Math.asin(Math.max(-1, Math.min(1, d[1]))) / Math.PI) * height - 0.5;
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [x - x0, y - y0];
  const left = ((x0 % width) + width) % width;
  const right = (left + 1) % width;
  const top = Math.max(0, Math.min(height - 1, y0)) * width;
  const bottom = Math.max(0, Math.min(height - 1, y0 + 1)) * width;
  const at = (c: number): number => {
    const upper = data[3 * (top + left) + c] * (1 - fx) + data[3 * (top + right) + c] * fx;
    const lower = data[3 * (bottom + left) + c] * (1 - fx) + data[3 * (bottom + right) + c] * fx;
    return upper * (1 - fy) + lower * fy;
  };
  return [at(0), at(1), at(2)];
}

/** Mean radiance over the sphere: each row weighs as much as the band of the sphere that it covers. */
export function pictureMean({ width, height, data }: EquirectPicture): Rgb {
  const sum: [number, number, number] = [0, 0, 0];
  for (let row = 0; row < height; row++) {
    const band = Math.cos((Math.PI * row) / height) - Math.cos((Math.PI * (row + 1)) / height);
    for (let x = 0; x < width; x++)
      for (let c = 0; c < 3; c++) sum[c] += (band * data[3 * (row * width + x) + c]) / (2 * width);
  }
  return sum;
}
