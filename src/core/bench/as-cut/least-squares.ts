/** Weighted least squares in two unknowns with smooth residuals (Gauss-Newton damped after Levenberg 1944 and Marquardt 1963). */

export type Pair = readonly [number, number];
/** Symmetric 2 x 2 matrix [[xx, xy], [xy, yy]]. */
export interface Sym2 {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

interface Observation {
  /** Prediction less measurement, at unknowns p. */
  readonly residual: (p: Pair) => number;
  readonly sd: number;
}

export interface Problem {
  readonly observations: readonly Observation[];
  /** Steps for central differences, about the square root of what matters, one an unknown. */
  readonly steps: Pair;
  /** Keeps the unknowns in their ranges. */
  readonly clamp: (p: Pair) => Pair;
}

/** Sum of squared residuals in deviations. */
export const cost = ({ observations }: Problem, p: Pair): number =>
  observations.reduce((sum, o) => sum + (o.residual(p) / o.sd) ** 2, 0);

/** Slope of a function of two unknowns by central differences. */
export function slope(of: (p: Pair) => number, p: Pair, steps: Pair): Pair {
  const [dx, dy] = steps;
  return [
    (of([p[0] + dx, p[1]]) - of([p[0] - dx, p[1]])) / (2 * dx),
    (of([p[0], p[1] + dy]) - of([p[0], p[1] - dy])) / (2 * dy),
  ];
}

/** Information (inverse covariance) that one observation with this slope brings. */
export const information = ([gx, gy]: Pair, sd: number): Sym2 => ({
  xx: (gx * gx) / sd ** 2,
  xy: (gx * gy) / sd ** 2,
  yy: (gy * gy) / sd ** 2,
});

export const addSym = (a: Sym2, b: Sym2): Sym2 => ({
  xx: a.xx + b.xx,
  xy: a.xy + b.xy,
  yy: a.yy + b.yy,
});
const NO_INFORMATION: Sym2 = { xx: 0, xy: 0, yy: 0 };

/** Variances of both unknowns under an information matrix; Infinity where it determines nothing. */
export function variances({ xx, xy, yy }: Sym2): Pair {
  const det = xx * yy - xy * xy;
  // Rounding leaves about this much of a determinant that should be 0.
  if (det > xx * yy * 1e3 * Number.EPSILON) return [yy / det, xx / det];
  return [xy === 0 && xx > 0 ? 1 / xx : Infinity, xy === 0 && yy > 0 ? 1 / yy : Infinity];
}

/** Information of all observations at p. */
export const totalInformation = (problem: Problem, p: Pair): Sym2 =>
  problem.observations
    .map((o) => information(slope(o.residual, p, problem.steps), o.sd))
    .reduce(addSym, NO_INFORMATION);

/** Descent direction of the damped normal equations; null where they say nothing. */
function damped(problem: Problem, p: Pair, damping: number): Pair | null {
  let n = NO_INFORMATION;
  let [bx, by] = [0, 0];
  for (const o of problem.observations) {
    const g = slope(o.residual, p, problem.steps);
    const r = o.residual(p) / o.sd ** 2;
    n = addSym(n, information(g, o.sd));
    bx += g[0] * r;
    by += g[1] * r;
  }
  const [xx, yy] = [n.xx * (1 + damping), n.yy * (1 + damping)];
  const det = xx * yy - n.xy * n.xy;
  if (!(det > 0)) return null;
  return [-(yy * bx - n.xy * by) / det, -(xx * by - n.xy * bx) / det];
}

const MOST_STEPS = 60;
const FIRST_DAMPING = 1e-3;
const DAMPING_FACTOR = 10;
const MOST_DAMPING = 1e8;
/** A step this small, counted in difference steps, changes nothing a person could read. */
const SETTLED = 1e-6;

/** The unknowns of least cost near `start`. */
export function solveLeastSquares(problem: Problem, start: Pair): Pair {
  let p = problem.clamp(start);
  let best = cost(problem, p);
  let damping = FIRST_DAMPING;
  for (let i = 0; i < MOST_STEPS && damping < MOST_DAMPING; i++) {
    const step = damped(problem, p, damping);
    if (!step) return p;
    const next = problem.clamp([p[0] + step[0], p[1] + step[1]]);
    const value = cost(problem, next);
    if (!(value < best)) {
      damping *= DAMPING_FACTOR;
      continue;
    }
    const moved = Math.hypot((next[0] - p[0]) / problem.steps[0], (next[1] - p[1]) / problem.steps[1]);
    [p, best, damping] = [next, value, damping / DAMPING_FACTOR];
    if (moved < SETTLED) break;
  }
  return p;
}
