/** Noise of a picture as it gathers, and how long a tracer takes to a given noise. */

/** After so many samples, in so many milliseconds, a picture is so far from the converged one. */
export interface Step {
  readonly samples: number;
  readonly ms: number;
  /** Root mean square over pixels and channels, relative to the mean of the converged picture. */
  readonly error: number;
  /** The same for what shows, where that is smoothed. */
  readonly shownError?: number;
}

/** A run of a tracer to a converged picture. */
export interface Run {
  readonly steps: Step[];
  /** Of the converged picture. */
  readonly blocks: number[];
}

/** Along each side of a picture. */
const BLOCKS = 8;

/** Mean radiance of the squares of a square picture: what two tracers of one scene have to agree in, noise or not. */
export function blocksOf(picture: Float32Array, size: number): number[] {
  const sums = new Array<number>(BLOCKS * BLOCKS).fill(0);
  picture.forEach((value, i) => {
    if (i % 4 === 3) return;
    const [x, y] = [(i >> 2) % size, Math.floor((i >> 2) / size)];
    sums[Math.floor((y * BLOCKS) / size) * BLOCKS + Math.floor((x * BLOCKS) / size)] += value;
  });
  return sums.map((sum) => (sum * BLOCKS * BLOCKS) / (3 * size * size));
}

/** Root mean square between blocks, relative to their mean. */
export function blocksApart(a: readonly number[], b: readonly number[]): number {
  const square = a.reduce((sum, value, i) => sum + (value - b[i]) ** 2, 0) / a.length;
  return Math.sqrt(square) / (b.reduce((sum, value) => sum + value, 0) / b.length);
}

/** Pictures as RGBA floats of any size. */
export function relativeError(picture: Float32Array, converged: Float32Array): number {
  let [square, sum] = [0, 0];
  for (let i = 0; i < converged.length; i++) {
    if (i % 4 === 3) continue;
    square += (picture[i] - converged[i]) ** 2;
    sum += converged[i];
  }
  const count = (3 * converged.length) / 4;
  return Math.sqrt(square / count) / (sum / count);
}

/**
 * Milliseconds to an error: between the steps of a run by a straight line in logarithms; beyond the last one by the law of
 * independent samples, error ~ 1 / sqrt(time), which flatters a tracer whose error falls more slowly.
 */
export function timeTo(error: number, steps: readonly Step[]): number {
  const later = steps.findIndex((step) => step.error <= error);
  if (later === 0) return steps[0].ms;
  if (later < 0) {
    const last = steps[steps.length - 1];
    return last.ms * (last.error / error) ** 2;
  }
  const [a, b] = [steps[later - 1], steps[later]];
  const share = Math.log(a.error / error) / Math.log(a.error / b.error);
  return a.ms * (b.ms / a.ms) ** share;
}
