/**
 * The places of the grid that lie on the ball, in the order in which rays are sent there: first one of 25, as evenly over the
 * picture as can be and in line with none of a piece's mirrors, then those between. A few rays give a guess at the whole, and none is sent
 * twice when more of them are asked.
 */

/** Rays across the picture of the ball: measures are counted on a grid of so many by so many. */
export const GRID = 96;

/**
 * Places i + 18 j = 0 modulo 25 are a square lattice along (3, 4), those = 0 modulo 5 one along (2, 1) that holds it. The others are
 * these shifted along a row by their remainder: first those of the second lattice, then each with what lies in line with it.
 */
const PARTS = 25;
const STEP_UP = 18;
const REMAINDERS = [0, 10, 5, 15, 20, 2, 12, 7, 17, 22, 4, 14, 9, 19, 24, 1, 11, 6, 16, 21, 3, 13, 8, 18, 23];

/** Directions in which known places on both sides may tell what lies between them. */
const LINES = [
  [1, 0],
  [0, 1],
] as const;
/** No place farther than this is asked, steps. */
const FARTHEST = 8;

export interface Places {
  /** Place (i, j) of the grid is number GRID j + i. */
  readonly order: Int16Array;
  /** How many of them come with so many parts of 25; entry 0 is 0. */
  readonly ends: readonly number[];
  /** For each in this order: how far right and up it lies, and how deep the ball is there, from its middle, radii. */
  readonly at: Float64Array;
  /** For each in this order and each line through it, the nearest earlier one on one side and on the other, as number in this order; else the one after the last. */
  readonly near: Int16Array;
  /** How far away these are, radii. */
  readonly apart: Float64Array;
}
/** Numbers a place has in `near` and `apart`. */
export const NEAR = 2 * LINES.length;

const middleOf = (i: number): number => (2 * i + 1) / GRID - 1;

/** @param columns that are looked at, from the left */
function placesWithin(columns: number): Places {
  const parts: number[][] = Array.from({ length: PARTS }, () => []);
  for (let j = 0; j < GRID; j++)
    for (let i = 0; i < columns; i++)
      if (middleOf(i) ** 2 + middleOf(j) ** 2 < 1) parts[(i + STEP_UP * j) % PARTS].push(GRID * j + i);
  const inOrder = REMAINDERS.map((remainder) => parts[remainder]);
  const order = Int16Array.from(inOrder.flat());
  const rank = new Int16Array(GRID * GRID).fill(order.length);
  order.forEach((k, r) => {
    rank[k] = r;
  });
  const near = new Int16Array(NEAR * order.length).fill(order.length);
  const apart = new Float64Array(NEAR * order.length);
  order.forEach((k, r) => {
    LINES.flatMap(([di, dj]) => [
      [-di, -dj],
      [di, dj],
    ]).forEach(([di, dj], n) => {
      for (let steps = 1; steps <= FARTHEST; steps++) {
        const [i, j] = [(k % GRID) + steps * di, Math.floor(k / GRID) + steps * dj];
        if (i < 0 || i >= GRID || j < 0 || j >= GRID) return;
        if (rank[GRID * j + i] >= r) continue;
        near[NEAR * r + n] = rank[GRID * j + i];
        apart[NEAR * r + n] = (steps * Math.hypot(di, dj) * 2) / GRID;
        return;
      }
    });
  });
  const ends = [0];
  for (const part of inOrder) ends.push(ends[ends.length - 1] + part.length);
  const at = Float64Array.from(
    [...order].flatMap((k) => {
      const [x, y] = [middleOf(k % GRID), middleOf(Math.floor(k / GRID))];
      return [x, y, Math.sqrt(1 - x * x - y * y)];
    }),
  );
  return { order, ends, at, near, apart };
}

export const ALL_PARTS = PARTS;
export const ALL_PLACES = placesWithin(GRID);
export const LEFT_PLACES = placesWithin(GRID / 2);
