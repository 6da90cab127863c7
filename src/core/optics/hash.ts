/** Integers scattered over 32 bits, as a shader does it: the same numbers there. */

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
