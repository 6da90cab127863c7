/** Bracketed searches in one variable: they cannot run away, and they end at the arithmetic's own limit. */
import { SOLVE_EPSILON } from "./tolerance.ts";

/**
 * The end of a bracket where f >= 0, after narrowing it to SOLVE_EPSILON. f may jump.
 * @param yes a point where f >= 0   @param no a point where f < 0
 * Regula falsi (Illinois variant, Dowell and Jarratt 1971) guarded by bisection every third step.
 */
export function boundaryOf(f: (x: number) => number, yes: number, no: number): number {
  let [a, b] = [yes, no];
  let [fa, fb] = [f(a), f(b)];
  for (let step = 0; step < 200 && Math.abs(b - a) > SOLVE_EPSILON; step++) {
    const secant = (a * fb - b * fa) / (fb - fa);
    const inside = (secant - a) * (secant - b) < 0;
    const x = step % 3 === 2 || !inside ? (a + b) / 2 : secant;
    const fx = f(x);
    if (fx >= 0) {
      a = x;
      fa = fx;
      fb /= 2;
    } else {
      b = x;
      fb = fx;
      fa /= 2;
    }
    if (fa === 0) break;
  }
  return a;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Where a concave f is greatest on [lo, hi], by golden section (Kiefer 1953): the best point it has seen, so that an f
 * that breaks off (0 outside its support) is never answered from beyond the break.
 * @param enough stops at the first point where f is at least this
 */
export function peakOf(
  f: (x: number) => number,
  lo: number,
  hi: number,
  enough = Number.POSITIVE_INFINITY,
): number {
  let [a, b] = [lo, hi];
  let [best, fBest] = [lo, Number.NEGATIVE_INFINITY];
  const tryAt = (x: number) => {
    const fx = f(x);
    if (fx > fBest) [best, fBest] = [x, fx];
    return fx;
  };
  let x1 = b - GOLDEN * (b - a);
  let x2 = a + GOLDEN * (b - a);
  let [f1, f2] = [tryAt(x1), tryAt(x2)];
  while (b - a > SOLVE_EPSILON && fBest < enough) {
    if (f1 < f2) {
      a = x1;
      [x1, f1] = [x2, f2];
      x2 = a + GOLDEN * (b - a);
      f2 = tryAt(x2);
    } else {
      b = x2;
      [x2, f2] = [x1, f1];
      x1 = b - GOLDEN * (b - a);
      f1 = tryAt(x1);
    }
  }
  return best;
}
