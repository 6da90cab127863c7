/**
 * What each pass over a picture does. WAVES_A_RAY samples in a row send the same ray on the same chances, each at another
 * wavelength: what a ray finds comes in all its colours, and the noise is grey. Where wavelengths part, pass 0 is a sketch
 * with all light at once: it is shown, and then only serves the samples at one wavelength as a first guess; their sum begins
 * with pass 1.
 *
 * Rays take turns between the two halves of a picture (see `accumulator.ts`): two pictures of the same thing from
 * rays that know nothing of each other, so that what they differ by is their noise, and either is a fair guess for the other's
 * next ray.
 */
import { SCATTER_1, SCATTER_2, sobolInteger } from "../core/optics/random.ts";
import { float, int, type Uniforms, uint } from "./uniforms.ts";

export interface Pass {
  /** Numbers that a path carries: the variant of `trace.frag`. */
  readonly channels: 1 | 3;
  readonly uniforms: Uniforms;
}

/** As in `trace.frag`. */
export const WAVES_A_RAY = 4;

/** Samples in the sum after so many passes. */
export const samplesAfter = (passes: number, isGuided: boolean): number =>
  isGuided && passes > 1 ? passes - 1 : passes;

export type Half = 0 | 1;

/** The half that a ray belongs to. */
const halfOf = (ray: number): Half => (ray % 2 === 0 ? 0 : 1);

/**
 * Each half has evenly spread numbers of its own, from a seed of its own. If both shared one sequence by turns, one would see
 * the left of each pixel and the other its right, and they would differ by more than their noise.
 */
const SEED_OF_HALF = [0, 0x3c6ef372] as const;

/** Samples in each half after so many passes; none of them is the sketch. */
export function samplesOfHalves(passes: number, isGuided: boolean): readonly [number, number] {
  const waves = isGuided ? WAVES_A_RAY : 1;
  const samples = isGuided ? Math.max(0, passes - 1) : passes;
  const rays = Math.floor(samples / waves);
  const halves: [number, number] = [Math.ceil(rays / 2) * waves, Math.floor(rays / 2) * waves];
  halves[halfOf(rays)] += samples % waves;
  return halves;
}

/** Which of the two half buffers (as for cross-filtering in denoising) the pass after so many passes adds to; a sketch stands where the second half will begin. */
export function halfOfPass(passes: number, isGuided: boolean): Half {
  if (isGuided) return passes === 0 ? 1 : halfOf(Math.floor((passes - 1) / WAVES_A_RAY));
  return halfOf(passes);
}

/**
 * Which half to read for what `half` has gathered after so many passes, and how many samples are there: while it has none of its
 * own, those of the sketch (which stands where the second half will begin), or of the other half.
 */
export function soFar(half: Half, passes: number, isGuided: boolean): readonly [Half, number] {
  const samples = samplesOfHalves(passes, isGuided);
  if (samples[half] > 0) return [half, samples[half]];
  if (isGuided) return [1, Math.min(1, passes)];
  return half === 0 ? [1, samples[1]] : [0, samples[0]];
}

export interface PassScene {
  /** Whether a sketch comes first: where wavelengths part. */
  readonly hasDispersion: boolean;
  readonly maxMeetings: number;
  readonly seed: number;
  /** Samples that share a ray; missing = WAVES_A_RAY. With fewer there is less noise of the rays and more of the colours. */
  readonly wavesARay?: 1 | 2 | 4;
}

/** @param index position of the pass since the picture's start, 0 .. 2^16 - 1 */
export function passAt(index: number, scene: PassScene): Pass {
  const { hasDispersion: isGuided, maxMeetings, seed, wavesARay = WAVES_A_RAY } = scene;
  const isSketch = isGuided && index === 0;
  const half = halfOfPass(index, isGuided);
  const samples = samplesOfHalves(index, isGuided);
  // Ray and sample, counted within the half.
  const sample = samples[half];
  const ray = isGuided ? Math.floor(sample / wavesARay) : sample;
  return {
    channels: isGuided && !isSketch ? 1 : 3,
    uniforms: {
      seed: uint((seed ^ SEED_OF_HALF[half]) >>> 0),
      sampleIndex: uint(ray),
      sampleSobol: uint(reversedSobolSecond(ray)),
      scatterSobol1: uint(reverseBits(sobolInteger(ray, SCATTER_1))),
      scatterSobol2: uint(reverseBits(sobolInteger(ray, SCATTER_2))),
      waveIndex: uint(shuffled(sample, WAVE_SEED)),
      rouletteIndex: uint(shuffled(ray, ROULETTE_SEED)),
      guessSamples: float(Math.max(1, samples[1 - half])),
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
