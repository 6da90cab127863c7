/**
 * What each pass over a picture does. WAVES_A_RAY samples in a row send the same ray on the same chances, each at another
 * wavelength: what a ray finds comes in all its colours, and the noise is grey. Where wavelengths part, the first passes are a sketch
 * with all light at once, a ray each: it is shown, and then only serves the samples at one wavelength as a first guess; their sum
 * begins after it. A coloured sketch follows one ray in each half three times, at the index that green sees, then once more for
 * blue and for red alone: what it shows parts as the three colours do on average.
 *
 * Rays take turns between the two halves of a picture (see `accumulator.ts`): two pictures of the same thing from
 * rays that know nothing of each other, so that what they differ by is their noise, and either is a fair guess for the other's
 * next ray.
 */

import { SCATTER_1, SCATTER_2, sobolInteger } from "../core/optics/random.ts";
import type { Rgb } from "../core/optics/spectrum.ts";
import { float, int, type Uniforms, uint } from "./uniforms.ts";

export interface Pass {
  /** Numbers that a path carries: the variant of `trace.frag`. */
  readonly channels: 1 | 3;
  readonly uniforms: Uniforms;
}

/** As in `trace.frag`. */
export const WAVES_A_RAY = 4;

/**
 * Samples after so many passes, of which the first so many are a sketch: those of the sketch, until there are more of its successors.
 */
export const samplesAfter = (passes: number, sketches: number): number =>
  passes <= sketches ? passes : Math.max(sketches, passes - sketches);

export type Half = 0 | 1;

/** The half that a ray belongs to. */
const halfOf = (ray: number): Half => (ray % 2 === 0 ? 0 : 1);
/** A sketch begins where the second half will, so that the first ray after it has a guess. */
const halfOfSketch = (ray: number): Half => (ray % 2 === 0 ? 1 : 0);

/**
 * Each half has evenly spread numbers of its own, from a seed of its own. If both shared one sequence by turns, one would see
 * the left of each pixel and the other its right, and they would differ by more than their noise.
 */
const SEED_OF_HALF = [0, 0x3c6ef372] as const;

/** Samples in each half after so many passes; none of them is of the sketch. */
export function samplesOfHalves(passes: number, sketches: number): readonly [number, number] {
  const waves = sketches > 0 ? WAVES_A_RAY : 1;
  const samples = Math.max(0, passes - sketches);
  const rays = Math.floor(samples / waves);
  const halves: [number, number] = [Math.ceil(rays / 2) * waves, Math.floor(rays / 2) * waves];
  halves[halfOf(rays)] += samples % waves;
  return halves;
}

/** As in `trace.frag`. */
export const ALL_COLOURS = -1;
const [RED, GREEN, BLUE] = [0, 1, 2] as const;
/** Blue first: it lies farther from green, and the more of what shows is amiss without it. */
const COLOURS_OF_SKETCH = [GREEN, BLUE, RED] as const;
/** Rays of a coloured sketch: as many as there are halves. */
const COLOURED_RAYS = 2;
/** Passes of a coloured sketch. */
export const COLOURED_SKETCHES = COLOURED_RAYS * COLOURS_OF_SKETCH.length;

/** Rays of a sketch of so many passes. */
const raysOfSketch = (sketches: number, isColoured: boolean): number =>
  isColoured ? Math.min(COLOURED_RAYS, sketches) : sketches;

/** A coloured sketch is, as measured, as near as twice as many rays that have all their wavelengths. */
const WORTH_OF_COLOURED = 2;

/** Samples after which a picture is nearer than its sketch. */
export const samplesForSketch = (sketches: number, isColoured: boolean): number =>
  WAVES_A_RAY * raysOfSketch(sketches, isColoured) * (isColoured ? WORTH_OF_COLOURED : 1);

/** Both halves of a coloured sketch have a colour more than two passes before. */
export const gainsColour = (passes: number, sketches: number): boolean =>
  passes <= sketches && passes % COLOURED_RAYS === 0;

/** Rays of the sketch in each half after so many passes, as long as nothing has come in their place. */
export function sketchOfHalves(
  passes: number,
  sketches: number,
  isColoured = false,
): readonly [number, number] {
  const rays = Math.min(passes, raysOfSketch(sketches, isColoured));
  return [Math.floor(rays / 2), Math.ceil(rays / 2)];
}

/** Which of the two half buffers (as for cross-filtering in denoising) the pass after so many passes adds to. */
export function halfOfPass(passes: number, sketches: number): Half {
  if (passes < sketches) return halfOfSketch(passes);
  return halfOf(Math.floor((passes - sketches) / (sketches > 0 ? WAVES_A_RAY : 1)));
}

/**
 * Which half to read for what `half` has gathered after so many passes, and how many samples are there: while it has none of its
 * own, what it has of the sketch, or what the other half has.
 */
export function soFar(
  half: Half,
  passes: number,
  sketches: number,
  isColoured = false,
): readonly [Half, number] {
  const samples = samplesOfHalves(passes, sketches);
  const sketch = sketchOfHalves(passes, sketches, isColoured);
  const other: Half = half === 0 ? 1 : 0;
  // the first half's sketch gives way to its first ray
  if (samples[half] > 0) return [half, samples[half]];
  if (sketch[half] > 0) return [half, sketch[half]];
  return [other, samples[other] || sketch[other]];
}

export interface PassScene {
  /** Passes of a sketch that comes first; 0 where no wavelengths part. */
  readonly sketches: number;
  /** Index that red, green and blue see on average, for a coloured sketch; missing: the sketch is not coloured. */
  readonly sketchIndex?: Rgb;
  readonly maxMeetings: number;
  readonly seed: number;
  /** Samples that share a ray; missing = WAVES_A_RAY. With fewer there is less noise of the rays and more of the colours. */
  readonly wavesARay?: 1 | 2 | 4;
}

/** @param index position of the pass since the picture's start, 0 .. 2^16 - 1 */
export function passAt(index: number, scene: PassScene): Pass {
  const { sketches, sketchIndex, maxMeetings, seed, wavesARay = WAVES_A_RAY } = scene;
  const isSketch = index < sketches;
  const isColoured = sketchIndex !== undefined;
  const colour = isSketch && isColoured ? COLOURS_OF_SKETCH[Math.floor(index / COLOURED_RAYS)] : null;
  const half = halfOfPass(index, sketches);
  const samples = isSketch ? sketchOfHalves(index, sketches) : samplesOfHalves(index, sketches);
  // Ray and sample, counted within the half; a coloured sketch has one ray in each.
  const sample = colour === null ? samples[half] : 0;
  const ray = sketches > 0 && !isSketch ? Math.floor(sample / wavesARay) : sample;
  const [, guessSamples] = soFar(half === 0 ? 1 : 0, index, sketches, isColoured);
  return {
    channels: sketches > 0 && !isSketch ? 1 : 3,
    uniforms: {
      ...(sketchIndex && colour !== null && { indexD: float(sketchIndex[colour]) }),
      onlyColour: int(colour === null || index < COLOURED_RAYS ? ALL_COLOURS : colour),
      seed: uint((seed ^ SEED_OF_HALF[half]) >>> 0),
      sampleIndex: uint(ray),
      sampleSobol: uint(reversedSobolSecond(ray)),
      scatterSobol1: uint(reverseBits(sobolInteger(ray, SCATTER_1))),
      scatterSobol2: uint(reverseBits(sobolInteger(ray, SCATTER_2))),
      waveIndex: uint(shuffled(sample, WAVE_SEED)),
      rouletteIndex: uint(shuffled(ray, ROULETTE_SEED)),
      guessSamples: float(Math.max(1, guessSamples)),
      keep: float(sample > 0 ? 1 : 0),
      reach: int(maxMeetings),
    },
  };
}

/** Second number of Sobol's sequence, its bits turned round (the direction numbers then are Pascal's triangle modulo 2). */
function reversedSobolSecond(index: number): number {
  let result = 0;
  let direction = 1;
  for (let rest = index; rest !== 0; rest >>>= 1) {
    if (rest & 1) result ^= direction;
    direction ^= direction << 1;
  }
  return result >>> 0;
}

/** Any three numbers: each only fixes one of many orders. */
const WAVE_SEED = 0x9e3779b9;
const ROULETTE_SEED = 0x2545f491;

/**
 * Another order of the samples, shuffled within every aligned 2^k of them. Wavelengths follow it, so that 64 samples still
 * have every stratum once; in the plain order they would be tied to the place in the pixel. A nested uniform scramble: every bit is flipped by a hash of the higher ones.
 * Source: B. Burley, Practical Hash-based Owen Scrambling, JCGT 9(4), 2020.
 */
export function shuffled(index: number, seed: number): number {
  let bits = reverseBits(index);
  bits = (bits + seed) >>> 0;
  for (const factor of [0x6c50b47c, 0xb82f1e52, 0xc7afe638, 0x8d22f6e6])
    bits = (bits ^ Math.imul(bits, factor)) >>> 0;
  return reverseBits(bits);
}

function reverseBits(value: number): number {
  let reversed = 0;
  for (let bit = 0; bit < 32; bit++) reversed = (reversed << 1) | ((value >>> bit) & 1);
  return reversed >>> 0;
}
