/**
 * What each pass over a picture does. WAVES_A_RAY samples in a row send the same ray on the same chances, each at another
 * wavelength: what a ray finds comes in all its colours, and the noise is grey. Where wavelengths part, pass 0 is a sketch
 * with all light at once: it is shown, and then only serves the samples at one wavelength as a first guess; their sum begins
 * with pass 1.
 */
import { SCATTER_1, SCATTER_2, sobolInteger } from "../core/optics/random.ts";
import { float, int, type Uniforms, uint } from "./gl-program.ts";

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

/** Whether the last of so many passes ends a ray: followed at all wavelengths that it has. A sketch has them at once. */
export const isRayWhole = (passes: number, isGuided: boolean): boolean =>
  !isGuided || (passes - 1) % WAVES_A_RAY === 0;

/**
 * How far samples follow paths that are caught between facets: all of them to `surely` surfaces, then on past each further one
 * in `survival` of the samples, which make up for the rest.
 */
export interface Following {
  readonly surely: number;
  readonly survival: number;
}
/** On a graphics card all pixels wait for the longest path of their neighbours. */
export const CARD: Following = { surely: 12, survival: 0.85 };
/** A processor spends on each pixel just what that pixel needs: a fifth more time, and a quarter of the squared noise. */
export const PROCESSOR: Following = { surely: 24, survival: 0.95 };
/** A sketch need not be right in what is caught between facets: it ends there, and nothing is made up for. */
const SKETCH_REACH = 24;

/** Surfaces that paths of a sample may meet. All pixels share this chance, and any 2^k samples in a row spread it evenly. */
export function reachOf(sample: number, seed: number, { surely, survival }: Following): number {
  const place = reverseBits(shuffled(sample, REACH_SEED)) / 2 ** 32;
  const u = (place + fraction(seed * GOLDEN) + SMALLEST) % 1;
  return surely + 1 + Math.floor(Math.log(Math.max(u, SMALLEST)) / Math.log(survival));
}

const GOLDEN = 0.6180339887498949;
const SMALLEST = 2 ** -33;
const fraction = (x: number): number => x - Math.floor(x);

export interface PassScene {
  /** Whether a sketch comes first: where wavelengths part. */
  readonly hasDispersion: boolean;
  readonly maxMeetings: number;
  readonly seed: number;
}

/** @param index position of the pass since the picture's start, 0 .. 2^16 - 1 */
export function passAt(
  index: number,
  { hasDispersion: isGuided, maxMeetings, seed }: PassScene,
  following: Following,
): Pass {
  const isSketch = isGuided && index === 0;
  const sample = isGuided && !isSketch ? index - 1 : index;
  const ray = isGuided && !isSketch ? Math.floor(sample / WAVES_A_RAY) : sample;
  return {
    channels: isGuided && !isSketch ? 1 : 3,
    uniforms: {
      sampleIndex: uint(ray),
      sampleSobol: uint(reversedSobolSecond(ray)),
      scatterSobol1: uint(reverseBits(sobolInteger(ray, SCATTER_1))),
      scatterSobol2: uint(reverseBits(sobolInteger(ray, SCATTER_2))),
      waveIndex: uint(shuffled(sample, WAVE_SEED)),
      rouletteIndex: uint(shuffled(ray, ROULETTE_SEED)),
      guessSamples: float(Math.max(1, ray * WAVES_A_RAY)),
      keep: float(sample > 0 ? 1 : 0),
      reach: int(Math.min(maxMeetings, isSketch ? SKETCH_REACH : reachOf(ray, seed, following))),
      longPath: int(following.surely),
      longSurvival: float(isSketch ? 1 : following.survival),
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
const REACH_SEED = 0x51ed270b;
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
