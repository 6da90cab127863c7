/** Pictures for tests: pixels by a rule, and files made of them. */
import { encode } from "fast-png";
import type { Raster } from "../../../src/core/optics/raster.ts";
import { pictureUrl } from "../../../src/core/plan/pictures.ts";

export type Rgba = readonly [number, number, number, number];

/** @param at bytes at x from the left, y from the top, 0..1 each, of a pixel's middle */
export function raster(width: number, height: number, at: (x: number, y: number) => Rgba): Raster {
  const rgba = new Uint8Array(4 * width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) rgba.set(at((x + 0.5) / width, (y + 0.5) / height), 4 * (y * width + x));
  return { width, height, rgba };
}

export const png = ({ width, height, rgba }: Raster): Uint8Array =>
  encode({ width, height, data: rgba, channels: 4, depth: 8 });
export const pngUrl = (picture: Raster): string => pictureUrl({ kind: "png", bytes: png(picture) });

/** Red on the left, green on the right, dark below: every quarter tells which it is. */
export const QUARTERS = raster(64, 64, (x, y) => [
  x < 0.5 ? 250 : 5,
  x < 0.5 ? 5 : 250,
  y < 0.5 ? 250 : 5,
  255,
]);
