/**
 * Where to look for light from a matt surface: chances that favour directions from which much comes, and what makes up for it.
 *
 * Directions over a surface are points of a unit square: sine squared of the angle from the normal, and azimuth by the turn.
 * Lambert's cosine is even there (N. Malley's method: a point even on the disc, raised to the hemisphere), so a density over
 * the square is the density that a cosine-weighted direction is multiplied by.
 */
export interface Guide {
  readonly rows: number;
  readonly columns: number;
  /** Share of all in the rows before, rows + 1 numbers from 0 to 1. */
  readonly rowsBefore: Float64Array;
  /** The same within each row, columns + 1 numbers a row. */
  readonly columnsBefore: Float64Array;
}

const [ROWS, COLUMNS] = [64, 128];
/** This part of the chances is even, so that nothing is made up for by more than its inverse. Owen and Zhou, JASA 95, 2000. */
const EVEN_SHARE = 0.5;

/** @param brightness of the cell in row, column; none negative, not all 0 */
export function makeGuide(brightness: (row: number, column: number) => number): Guide {
  const cells = Float64Array.from({ length: ROWS * COLUMNS }, (_, i) =>
    brightness(Math.floor(i / COLUMNS), i % COLUMNS),
  );
  const mean = cells.reduce((sum, v) => sum + v, 0) / cells.length;
  const rowsBefore = new Float64Array(ROWS + 1);
  const columnsBefore = new Float64Array(ROWS * (COLUMNS + 1));
  for (let row = 0; row < ROWS; row++) {
    const at = row * (COLUMNS + 1);
    for (let column = 0; column < COLUMNS; column++) {
      const chance = EVEN_SHARE + ((1 - EVEN_SHARE) * cells[row * COLUMNS + column]) / mean;
      columnsBefore[at + column + 1] = columnsBefore[at + column] + chance;
    }
    const all = columnsBefore[at + COLUMNS];
    rowsBefore[row + 1] = rowsBefore[row] + all;
    for (let column = 1; column <= COLUMNS; column++) columnsBefore[at + column] /= all;
  }
  const all = rowsBefore[ROWS];
  for (let row = 1; row <= ROWS; row++) rowsBefore[row] /= all;
  return { rows: ROWS, columns: COLUMNS, rowsBefore, columnsBefore };
}

/** Places of a cell's middle and corners: the square's sides run over rows and columns. */
export const cellAt = (row: number, column: number, x: number, y: number): readonly [number, number] => [
  (row + x) / ROWS,
  (column + y) / COLUMNS,
];

/** Calls `visit` for every cell. */
export function eachCell(visit: (row: number, column: number) => void): void {
  for (let row = 0; row < ROWS; row++) for (let column = 0; column < COLUMNS; column++) visit(row, column);
}

/** Position of the interval that holds u, of those whose borders stand at `from` .. `from + count`. */
function intervalOf(borders: Float64Array, from: number, count: number, u: number): number {
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (borders[from + middle] <= u) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Importance sampling (warping by marginal and conditional distributions): from two even numbers a point of the square and its density there (the mean density is 1). Evenly spread stays evenly spread. */
export function guided(guide: Guide, u: number, v: number): readonly [number, number, number] {
  const { rows, columns, rowsBefore, columnsBefore } = guide;
  const row = intervalOf(rowsBefore, 0, rows, u);
  const rowShare = rowsBefore[row + 1] - rowsBefore[row];
  const at = row * (columns + 1);
  const column = intervalOf(columnsBefore, at, columns, v);
  const columnShare = columnsBefore[at + column + 1] - columnsBefore[at + column];
  return [
    (row + (u - rowsBefore[row]) / rowShare) / rows,
    (column + (v - columnsBefore[at + column]) / columnShare) / columns,
    rowShare * rows * columnShare * columns,
  ];
}
