/**
 * A picture from many paths: which wavelengths, where in the pixel, how they add up. Rows are independent, and a row is the
 * same whoever computes it.
 */
import { type Camera, cameraRay } from "./camera.ts";
import { hash, nextRandom, sobolPoint, streamOf } from "./random.ts";
import type { Scene } from "./scene.ts";
import { STRATA } from "./spectrum.ts";
import { colourOfChannels, colourOfStratum, type PathTally, SAFETY_CAP, tracePath } from "./tracer.ts";

/** Wavelengths of one sample, spread over the whole range: one in each quarter of the strata. */
export const WAVELENGTHS = 4;
/** Samples after which every stratum was used once. */
export const SPECTRAL_ROUND = STRATA / WAVELENGTHS;

export interface PictureSettings {
  /** Width and height in pixels. */
  readonly size: number;
  /** Camera rays a pixel, each with all its wavelengths. */
  readonly samples: number;
  readonly seed: number;
  readonly dispersion: boolean;
  /** Surfaces a path may meet; null = until it leaves. */
  readonly bounces: number | null;
}

/** Stratum of a sample's k-th wavelength: bit-reversed order, so that few samples are spread too, turned by pixel. */
function stratumOf(sample: number, k: number, turn: number): number {
  let order = 0;
  for (let bit = 1, mirror = SPECTRAL_ROUND >> 1; mirror > 0; bit <<= 1, mirror >>= 1)
    if (sample & bit) order |= mirror;
  return k * SPECTRAL_ROUND + ((order + turn) % SPECTRAL_ROUND);
}

/**
 * Linear sRGB of one pixel (column x from the left, row y from the top), no exposure, no tone mapping; box filter of one pixel.
 * Whole spectral rounds weigh every stratum alike; otherwise each channel is divided by the weight it really had, so that white
 * comes back white at any number of samples.
 */
export function renderPixel(
  scene: Scene,
  camera: Camera,
  settings: PictureSettings,
  x: number,
  y: number,
  tally: PathTally,
): [number, number, number] {
  const { size, samples, seed } = settings;
  const cap = settings.bounces ?? SAFETY_CAP;
  const pixel = y * size + x;
  const scramble = hash((hash(seed) ^ pixel) >>> 0);
  const sum: [number, number, number] = [0, 0, 0];
  const weight: [number, number, number] = [0, 0, 0];
  for (let sample = 0; sample < samples; sample++) {
    const [jx, jy] = sobolPoint(sample, scramble);
    const d = cameraRay(camera, (2 * (x + jx)) / size - 1, 1 - (2 * (y + jy)) / size);
    const random = streamOf(pixel, sample, seed);
    if (!settings.dispersion) {
      const rgb = tracePath(scene, colourOfChannels(scene), camera.at, d, cap, random, tally);
      for (let c = 0; c < 3; c++) [sum[c], weight[c]] = [sum[c] + rgb[c], weight[c] + 1];
      continue;
    }
    for (let k = 0; k < WAVELENGTHS; k++) {
      const j = stratumOf(sample, k, scramble % SPECTRAL_ROUND);
      const colour = colourOfStratum(scene, j, nextRandom(random));
      const radiance = tracePath(scene, colour, camera.at, d, cap, random, tally)[0];
      const w = scene.strata[j].weight;
      for (let c = 0; c < 3; c++) [sum[c], weight[c]] = [sum[c] + w[c] * radiance, weight[c] + w[c]];
    }
  }
  return [sum[0] / weight[0], sum[1] / weight[1], sum[2] / weight[2]];
}

/** Rows from .. to - 1 (from the top), three floats a pixel. `tally` collects over all paths. */
export function renderRows(
  scene: Scene,
  camera: Camera,
  settings: PictureSettings,
  from: number,
  to: number,
  tally: PathTally,
): Float32Array {
  const { size } = settings;
  const rows = new Float32Array(3 * size * (to - from));
  for (let y = from; y < to; y++)
    for (let x = 0; x < size; x++)
      rows.set(renderPixel(scene, camera, settings, x, y, tally), 3 * ((y - from) * size + x));
  return rows;
}
