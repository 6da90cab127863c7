/**
 * Repeatable chance in 32-bit integers only, so that a shader computes the very same numbers.
 * Numbers are k / 2^24 with integer k, which single precision holds exactly: 0 <= u < 1.
 */

import { hash, unitOf } from "./hash.ts";

export { hash };

/** The chances of one path: a stream whose whole memory is `state`, and an evenly spread pair for its first scattering. */
export interface Random {
  state: number;
  readonly sample: number;
  readonly scramble: number;
  /** False once the even pair was used. */
  even: boolean;
}

/** Chances of one path, from its pixel, its sample, the picture's seed and the pixel's scramble. */
export const streamOf = (pixel: number, sample: number, seed: number, scramble: number): Random => ({
  state: hash((hash((hash(seed) + pixel) >>> 0) + sample) >>> 0),
  sample,
  scramble,
  even: true,
});

/** Next number of the stream, 0 <= u < 1. */
export function nextRandom(random: Random): number {
  random.state = (Math.imul(random.state, 747796405) + 2891336453) >>> 0;
  const state = random.state;
  const word = Math.imul(((state >>> ((state >>> 28) + 4)) ^ state) >>> 0, 277803737) >>> 0;
  return unitOf((word >>> 22) ^ word);
}

function reverseBits(x: number): number {
  let v = x;
  v = ((v >>> 1) & 0x55555555) | ((v & 0x55555555) << 1);
  v = ((v >>> 2) & 0x33333333) | ((v & 0x33333333) << 2);
  v = ((v >>> 4) & 0x0f0f0f0f) | ((v & 0x0f0f0f0f) << 4);
  v = ((v >>> 8) & 0x00ff00ff) | ((v & 0x00ff00ff) << 8);
  return ((v >>> 16) | (v << 16)) >>> 0;
}

/**
 * Owen scrambling of a radical-inverse integer, by a hash in which every bit depends on the lower bits only.
 * Source: S. Laine and T. Karras, Stratified Sampling for Stochastic Transparency, 2011; B. Burley, Practical Hash-based
 * Owen Scrambling, JCGT 9(4), 2020.
 */
function owenScramble(x: number, seed: number): number {
  let v = reverseBits(x);
  v = (v + seed) >>> 0;
  v = (v ^ Math.imul(v, 0x6c50b47c)) >>> 0;
  v = (v ^ Math.imul(v, 0xb82f1e52)) >>> 0;
  v = (v ^ Math.imul(v, 0xc7afe638)) >>> 0;
  v = (v ^ Math.imul(v, 0x8d22f6e6)) >>> 0;
  return reverseBits(v);
}

/**
 * Dimensions of the low-discrepancy sequence: place in the pixel (two), wavelength, first scattering off a design (two).
 * Degree, inner coefficients and first numbers of each generating polynomial; the first dimension is the bit-reversed index.
 * Source: S. Joe and F. Kuo, Constructing Sobol sequences with better two-dimensional projections, SIAM J. Sci. Comput. 30, 2008.
 */
const POLYNOMIALS: readonly {
  readonly degree: number;
  readonly inner: number;
  readonly first: readonly number[];
}[] = [
  { degree: 1, inner: 0, first: [1] },
  { degree: 2, inner: 1, first: [1, 3] },
  { degree: 3, inner: 1, first: [1, 3, 1] },
  { degree: 3, inner: 2, first: [1, 1, 1] },
];
export const PIXEL_X = 0;
export const PIXEL_Y = 1;
export const WAVELENGTH = 2;
export const SCATTER_1 = 3;
export const SCATTER_2 = 4;

/** Direction numbers of one dimension, 32 of them, the first on top: Bratley and Fox, ACM TOMS 14, 1988. */
function directionsOf({ degree, inner, first }: (typeof POLYNOMIALS)[number]): Uint32Array {
  const v = new Uint32Array(32);
  for (let i = 0; i < 32; i++) {
    if (i < degree) {
      v[i] = first[i] << (31 - i);
      continue;
    }
    v[i] = v[i - degree] ^ (v[i - degree] >>> degree);
    for (let k = 1; k < degree; k++) if ((inner >>> (degree - 1 - k)) & 1) v[i] ^= v[i - k];
  }
  return v;
}

/** Direction numbers of every dimension. */
const SOBOL_DIRECTIONS: readonly Uint32Array[] = [
  Uint32Array.from({ length: 32 }, (_, i) => 1 << (31 - i)),
  ...POLYNOMIALS.map(directionsOf),
];

/** The 32-bit integer that stands for number `index` of a dimension before it is scrambled. */
export function sobolInteger(index: number, dimension: number): number {
  const directions = SOBOL_DIRECTIONS[dimension];
  let x = 0;
  for (let i = index >>> 0, bit = 0; i !== 0; i >>>= 1, bit++) if (i & 1) x ^= directions[bit];
  return x >>> 0;
}

/**
 * Number `index` of dimension `dimension`, Owen-scrambled by `seed`: of any 2^k in a row each k-th part of the unit interval
 * gets exactly one, and pairs of dimensions fill the square evenly.
 */
export function sobol(index: number, dimension: number, seed: number): number {
  return unitOf(owenScramble(sobolInteger(index, dimension), hash((seed + dimension) >>> 0)));
}

/** Two numbers for a scattering direction: evenly spread over a pixel's samples the first time, plain chance after that. */
export function scatterPair(random: Random): readonly [number, number] {
  if (!random.even) return [nextRandom(random), nextRandom(random)];
  random.even = false;
  return [sobol(random.sample, SCATTER_1, random.scramble), sobol(random.sample, SCATTER_2, random.scramble)];
}
