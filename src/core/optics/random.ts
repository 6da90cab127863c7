/**
 * Repeatable chance in 32-bit integers only, so that a shader computes the very same numbers.
 * Numbers are k / 2^24 with integer k, which single precision holds exactly: 0 <= u < 1.
 */

const UNIT = 1 / 16777216;
/** The number 0 <= u < 1 that a 32-bit integer stands for. */
export const unitOf = (x: number): number => (x >>> 8) * UNIT;

/**
 * Scatters a 32-bit integer: PCG-RXS-M-XS-32 as a hash.
 * Source: M. Jarzynski and M. Olano, Hash Functions for GPU Rendering, JCGT 9(3), 2020.
 */
export function hash(x: number): number {
  const state = (Math.imul(x, 747796405) + 2891336453) >>> 0;
  const word = Math.imul(((state >>> ((state >>> 28) + 4)) ^ state) >>> 0, 277803737) >>> 0;
  return ((word >>> 22) ^ word) >>> 0;
}

/** A stream of random numbers; `state` is its whole memory. */
export interface Random {
  state: number;
}

/** The stream of one path, from its pixel, its sample and the picture's seed. */
export const streamOf = (pixel: number, sample: number, seed: number): Random => ({
  state: hash((hash((hash(seed) + pixel) >>> 0) + sample) >>> 0),
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

/** Second dimension of Sobol's sequence (the first is the bit-reversed index). */
function sobolSecond(index: number): number {
  let result = 0;
  let direction = 0x80000000;
  for (let i = index >>> 0; i !== 0; i >>>= 1) {
    if (i & 1) result ^= direction;
    direction ^= direction >>> 1;
  }
  return result >>> 0;
}

/** Point `index` of Sobol's (0,2)-sequence, Owen-scrambled by `seed`: any 2^k points in a row fill the square evenly. */
export const sobolPoint = (index: number, seed: number): readonly [number, number] => [
  unitOf(owenScramble(reverseBits(index), hash(seed))),
  unitOf(owenScramble(sobolSecond(index), hash((seed + 1) >>> 0))),
];
