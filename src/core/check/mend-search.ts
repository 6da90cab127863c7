/** The least change of one number that does what is wanted: outward step by step, then back as far as it still does. */

/** Halvings when going back; enough to come within a thousandth of a step. */
const HALVINGS = 10;

export interface Search {
  readonly from: number;
  readonly step: number;
  readonly least: number;
  readonly most: number;
  /** Results are given in whole multiples of this, on the side that works. */
  readonly grain: number;
  /** Farthest that is worth offering. */
  readonly reach: number;
}

/** In whole grains, away from `from` so that what works still works. */
export function grained(x: number, { from, grain }: Pick<Search, "from" | "grain">): number {
  const round = x >= from ? Math.ceil : Math.floor;
  return Number((round(Number((x / grain).toFixed(6))) * grain).toFixed(6));
}

/** Goes one way only. Null when nothing within reach works. */
function oneWay(search: Search, direction: 1 | -1, works: (x: number) => boolean): number | null {
  const { from, step, least, most, reach } = search;
  let bad = from;
  for (let away = step; away <= reach; away += step) {
    const x = from + direction * away;
    if (x < least || x > most) return null;
    if (works(x)) return grained(backTo(bad, x, works), search);
    bad = x;
  }
  return null;
}

/** Between a value that does not work and one that does, the last that does. */
function backTo(bad: number, good: number, works: (x: number) => boolean): number {
  let [no, yes] = [bad, good];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (no + yes) / 2;
    if (works(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/** The nearest values that work, upward and downward, the nearer first; those that still work once rounded. */
export function leastChanges(search: Search, works: (x: number) => boolean): number[] {
  return ([1, -1] as const)
    .map((direction) => oneWay(search, direction, works))
    .filter((x): x is number => x !== null && x >= search.least && x <= search.most && works(x))
    .sort((a, b) => Math.abs(a - search.from) - Math.abs(b - search.from));
}
