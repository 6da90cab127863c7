/** Where descents begin: at no turn at all, with one tier turned, with all turned alike, and spread evenly between. */
import type { Turns } from "./descend.ts";

const ALONE_DEG = [1.5, -1.5, 4, -4, 8, -8] as const;
const TOGETHER_DEG = [1.5, -1.5, 4, -4] as const;
const SPREAD = 24;
const SPREAD_DEG = 5;
const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29] as const;

/** The i-th number of a sequence that fills 0..1 evenly (van der Corput 1935); several bases make Halton's points (1960). */
function radicalInverse(i: number, base: number): number {
  let [left, share, sum] = [i, 1 / base, 0];
  while (left > 0) {
    sum += share * (left % base);
    left = Math.floor(left / base);
    share /= base;
  }
  return sum;
}

/** @param bounds least and greatest turn of each tier, degrees */
export function startsFor(bounds: readonly (readonly [number, number])[]): Turns[] {
  const size = bounds.length;
  const still = new Array<number>(size).fill(0);
  const alone = ALONE_DEG.flatMap((deg) => still.map((_, j) => still.with(j, deg)));
  const together = TOGETHER_DEG.map((deg) => still.map(() => deg));
  const spread = Array.from({ length: size > 1 ? SPREAD : 0 }, (_, i) =>
    still.map((_, j) => SPREAD_DEG * (2 * radicalInverse(i + 1, PRIMES[j % PRIMES.length]) - 1)),
  );
  return [still, ...together, ...alone, ...spread];
}
