/** The point nearest the origin in an intersection of half-spaces: the step of a search under conditions. */

/** Asks for along.x >= least. */
export interface Condition {
  readonly along: readonly number[];
  readonly least: number;
}

const SWEEPS = 400;
const STILL = 1e-10;

/**
 * Hildreth's dual coordinate ascent (1957). Where no point meets all conditions it answers with one that leans towards them.
 * @param size number of coordinates
 */
export function nearestPoint(size: number, conditions: readonly Condition[]): number[] {
  const x = new Array<number>(size).fill(0);
  const lambda = new Array<number>(conditions.length).fill(0);
  const norms = conditions.map(({ along }) => along.reduce((sum, a) => sum + a * a, 0));
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let moved = 0;
    for (const [i, { along, least }] of conditions.entries()) {
      if (norms[i] === 0) continue;
      const short = least - along.reduce((sum, a, j) => sum + a * x[j], 0);
      const next = Math.max(0, lambda[i] + short / norms[i]);
      const by = next - lambda[i];
      if (by === 0) continue;
      lambda[i] = next;
      along.forEach((a, j) => {
        x[j] += by * a;
      });
      moved = Math.max(moved, Math.abs(by) * Math.sqrt(norms[i]));
    }
    if (moved < STILL) break;
  }
  return x;
}
