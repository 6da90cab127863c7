/**
 * A picture from many paths: which wavelengths, where in the pixel, how they add up. Rows are independent, and a row is the
 * same whoever computes it.
 */
import { enterBody } from "./body.ts";
import { type Camera, cameraRay } from "./camera.ts";
import { lightRadiance } from "./lights.ts";
import { hash, PIXEL_X, PIXEL_Y, sobol, streamOf, WAVELENGTH } from "./random.ts";
import type { Scene } from "./scene.ts";
import { type Rgb, STRATA } from "./spectrum.ts";
import {
  colourOfChannels,
  colourOfStratum,
  type PathColour,
  type PathTally,
  SAFETY_CAP,
  tracePath,
} from "./tracer.ts";

const WHITE: Rgb = [1, 1, 1];

/**
 * Wavelengths that share one camera ray, evenly spread over the strata, always enough for a pixel to see as many strata as it
 * can. Where light is scattered there are more of them: they meet the same chances, and that keeps the noise grey. In clear
 * polished glass hardly anything is left to chance.
 */
function wavelengthsPerSample(scene: Scene, samples: number): number {
  const scatters = scene.designs.length > 0 || scene.roughness.some((alpha) => alpha > 0);
  if (scatters) return samples < STRATA ? 4 : 2;
  return samples < STRATA / 2 ? 4 : samples < STRATA ? 2 : 1;
}

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

/**
 * Linear sRGB of one pixel (column x from the left, row y from the top), no exposure, no tone mapping; box filter of one pixel.
 * Each channel is divided by the weight its wavelengths really had, so that white comes back white at any number of samples;
 * whole rounds of the strata weigh exactly 1.
 */
function renderPixel(
  scene: Scene,
  camera: Camera,
  settings: PictureSettings,
  x: number,
  y: number,
  tally: PathTally,
): [number, number, number] {
  const { size, samples, seed, dispersion } = settings;
  const cap = settings.bounces ?? SAFETY_CAP;
  const wavelengths = wavelengthsPerSample(scene, samples);
  const pixel = y * size + x;
  const scramble = hash((hash(seed) ^ pixel) >>> 0);
  const sum: [number, number, number] = [0, 0, 0];
  const weight: [number, number, number] = [0, 0, 0];
  for (let sample = 0; sample < samples; sample++) {
    const px = x + sobol(sample, PIXEL_X, scramble);
    const py = y + sobol(sample, PIXEL_Y, scramble);
    const d = cameraRay(camera, (2 * px) / size - 1, 1 - (2 * py) / size);
    const entry = enterBody(scene, camera.at, d);
    const trace = (colour: PathColour): Rgb =>
      entry
        ? tracePath(scene, colour, camera.at, d, entry, cap, streamOf(pixel, sample, seed, scramble), tally)
        : WHITE;
    // The light itself, beside the piece, is the same for every wavelength but for its own colour.
    const beside = entry ? WHITE : lightRadiance(scene.light, d);
    if (!dispersion) {
      const rgb = trace(colourOfChannels(scene));
      for (let c = 0; c < 3; c++) sum[c] += rgb[c] * beside[c];
      for (let c = 0; c < 3; c++) weight[c] += 1;
      continue;
    }
    const u = sobol(sample, WAVELENGTH, scramble);
    for (let k = 0; k < wavelengths; k++) {
      const place = ((u + k) / wavelengths) * STRATA;
      const stratum = Math.floor(place);
      const radiance = trace(colourOfStratum(scene, stratum, place - stratum))[0];
      const w = scene.strata[stratum].weight;
      for (let c = 0; c < 3; c++) {
        sum[c] += w[c] * radiance * beside[c];
        weight[c] += w[c];
      }
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
