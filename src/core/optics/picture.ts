/**
 * A picture from many paths: which wavelengths, where in the pixel, how they add up. Rows are independent, and a row is the
 * same whoever computes it.
 */
import type { Vec3 } from "../geometry/vec.ts";
import { type BodyHit, enterBody, enterTouchingBody } from "./body.ts";
import { type Camera, lensRay } from "./camera.ts";
import { lightRadiance } from "./lights.ts";
import { hash, nextRandom, PIXEL_X, PIXEL_Y, type Random, sobol, streamOf, WAVELENGTH } from "./random.ts";
import { meetsRing } from "./ring.ts";
import type { Scene } from "./scene.ts";
import { luminance, type Rgb, STRATA } from "./spectrum.ts";
import { goesDown, pointOnTable, scatterOnTable, tableReflectance } from "./tabletop.ts";
import { SAFETY_CAP, tracePast, tracePath } from "./tracer.ts";
import { colourOfChannels, colourOfStratum, type PathColour, type PathTally, type Trace } from "./walker.ts";

const WHITE: Rgb = [1, 1, 1];

/**
 * Wavelengths that share one camera ray, evenly spread over the strata, always enough for a pixel to see as many strata as it
 * can. Where light is scattered there are more of them: they meet the same chances, and that keeps the noise grey. In clear
 * polished glass hardly anything is left to chance.
 */
function wavelengthsPerSample(scene: Scene, samples: number): number {
  const scatters =
    scene.tabletop !== null || scene.designs.length > 0 || scene.roughness.some((alpha) => alpha > 0);
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
  /** Without what is behind the piece: a fourth number a pixel says how much of that the piece hides. Missing = false. */
  readonly transparent?: boolean;
}

/** Numbers a pixel: linear sRGB, and alpha in a picture without a background. */
export const numbersOf = ({ transparent }: PictureSettings): 3 | 4 => (transparent ? 4 : 3);

/** A camera's ray as far as no wavelength plays a part: what its colour is multiplied by, and where it meets the piece. */
interface Approach {
  readonly o: Vec3;
  readonly d: Vec3;
  readonly entry: BodyHit | null;
  /** Reflectance of the table that it came by, times the light where that is where it ends. */
  readonly rgb: Rgb;
  readonly isFromTable: boolean;
  /** Comes first to the ring under the piece. */
  readonly isAtRing: boolean;
  readonly isLost: boolean;
}

/** Nothing is known of the ray but whether it meets the piece. */
function straight(scene: Scene, o: Vec3, d: Vec3): Approach {
  const entry = enterBody(scene, o, d);
  const isAtRing = meetsRing(scene.tabletop, o, d, entry?.t ?? Number.POSITIVE_INFINITY);
  return { o, d, entry, rgb: WHITE, isFromTable: false, isAtRing, isLost: false };
}

/** A ray that misses the piece sees the light, or the table and what that sees, in plain colours: they part only in the glass. */
function approach(scene: Scene, o: Vec3, d: Vec3, cap: number, random: Random): Approach {
  const { tabletop, light } = scene;
  const ray = straight(scene, o, d);
  if (ray.entry || ray.isAtRing) return ray;
  if (!tabletop || !goesDown(tabletop, d)) return { ...ray, rgb: lightRadiance(light, d, o) };
  if (cap < 1) return { ...ray, isLost: true };
  const q = pointOnTable(tabletop, o, d);
  const { d: up, factor } = scatterOnTable(tabletop, random);
  const met = enterTouchingBody(scene, q, up);
  const isAtRing = meetsRing(tabletop, q, up, met?.t ?? Number.POSITIVE_INFINITY);
  const seen = met || isAtRing ? WHITE : lightRadiance(light, up, q);
  const rgb = tableReflectance(tabletop, q);
  const share = (c: 0 | 1 | 2) => rgb[c] * factor * seen[c];
  const lit: Rgb = [share(0), share(1), share(2)];
  return { o: q, d: up, entry: met, rgb: lit, isFromTable: true, isAtRing, isLost: false };
}

/** Sums of one pixel over its wavelengths, three channels each, and what they have to be divided by. */
class Pixel {
  private readonly rgb = [0, 0, 0];
  private readonly seen = [0, 0, 0];
  private readonly weight = [0, 0, 0];

  /** `behind`: the share seen of what is behind. */
  add(weight: Rgb, radiance: Rgb, rgb: Rgb, behind: Rgb | null): void {
    for (let c = 0; c < 3; c++) {
      this.rgb[c] += weight[c] * radiance[c] * rgb[c];
      if (behind) this.seen[c] += weight[c] * behind[c];
      this.weight[c] += weight[c];
    }
  }

  private mean(of: readonly number[]): Rgb {
    return [of[0] / this.weight[0], of[1] / this.weight[1], of[2] / this.weight[2]];
  }

  /** Three numbers, or four with alpha: what is not seen of the background, by luminance. */
  read(transparent: boolean): readonly number[] {
    const rgb = this.mean(this.rgb);
    return transparent ? [...rgb, Math.max(0, Math.min(1, 1 - luminance(this.mean(this.seen))))] : rgb;
  }
}

/**
 * Linear sRGB of one pixel (column x from the left, row y from the top), no exposure, no tone mapping; box filter of one pixel.
 * Each channel is divided by the weight its wavelengths really had, so that white comes back white at any number of samples;
 * whole rounds of the strata weigh exactly 1. Without a background the colour is premultiplied, and alpha follows.
 */
function renderPixel(
  scene: Scene,
  camera: Camera,
  settings: PictureSettings,
  x: number,
  y: number,
  tally: PathTally,
): readonly number[] {
  const { size, samples, seed, dispersion } = settings;
  const cap = settings.bounces ?? SAFETY_CAP;
  const transparent = settings.transparent ?? false;
  const wavelengths = wavelengthsPerSample(scene, samples);
  const pixel = y * size + x;
  const scramble = hash((hash(seed) ^ pixel) >>> 0);
  const sums = new Pixel();
  for (let sample = 0; sample < samples; sample++) {
    const px = x + sobol(sample, PIXEL_X, scramble);
    const py = y + sobol(sample, PIXEL_Y, scramble);
    const random = streamOf(pixel, sample, seed, scramble);
    const chance = (): readonly [number, number] => [nextRandom(random), nextRandom(random)];
    const { o, d } = lensRay(camera, (2 * px) / size - 1, 1 - (2 * py) / size, chance);
    const trace = (colour: PathColour): Trace => ({
      scene,
      colour,
      cap,
      // Each wavelength meets the same chances.
      random: { ...random },
      tally,
      sum: [0, 0, 0],
      behind: transparent ? { away: camera.forward, seen: [0, 0, 0] } : null,
    });
    const ray = transparent ? straight(scene, o, d) : approach(scene, o, d, cap, random);
    const follow = (colour: PathColour, weight: Rgb): void => {
      const path = trace(colour);
      if (ray.isAtRing) tracePast(path, ray.o, ray.d);
      else if (ray.entry) tracePath(path, ray.o, ray.d, ray.entry, ray.isFromTable);
      else if (transparent) tracePast(path, ray.o, ray.d);
      else if (ray.isLost) tally.lost++;
      else path.sum.fill(1);
      sums.add(weight, path.sum, ray.rgb, path.behind?.seen ?? null);
    };
    if (!dispersion) {
      follow(colourOfChannels(scene), WHITE);
      continue;
    }
    const u = sobol(sample, WAVELENGTH, scramble);
    for (let k = 0; k < wavelengths; k++) {
      const place = ((u + k) / wavelengths) * STRATA;
      const stratum = Math.floor(place);
      follow(colourOfStratum(scene, stratum, place - stratum), scene.strata[stratum].weight);
    }
  }
  return sums.read(transparent);
}

/** Rows from .. to - 1 (from the top), as many floats a pixel as `numbersOf` says. `tally` collects over all paths. */
export function renderRows(
  scene: Scene,
  camera: Camera,
  settings: PictureSettings,
  from: number,
  to: number,
  tally: PathTally,
): Float32Array {
  const { size } = settings;
  const numbers = numbersOf(settings);
  const rows = new Float32Array(numbers * size * (to - from));
  for (let y = from; y < to; y++)
    for (let x = 0; x < size; x++)
      rows.set(renderPixel(scene, camera, settings, x, y, tally), numbers * ((y - from) * size + x));
  return rows;
}
