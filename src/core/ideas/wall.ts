/** The wall: 5 x 4 cells of two measures, in each the best that was found. */
import { fullValue, type IdeaWish, type Limits, type MeasureName, radiusOf } from "./wish.ts";

export const COLUMNS = 5;
export const ROWS = 4;
export const CELLS = COLUMNS * ROWS;

export const AXES = ["across", "up"] as const;
export type Axis = (typeof AXES)[number];

/** Ascending: six numbers across, five up. */
export interface WallEdges {
  readonly across: readonly number[];
  readonly up: readonly number[];
}

/** Share of a measure's full value that a wall is wide at the least: where all candidates are alike. */
const LEAST_SPAN = 0.01;

/** The value below which a share of the sorted numbers lies, linear between them. */
function percentile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
}

/**
 * Edges of one axis in equal parts: of the wish's limits where there are any, else of what nine tenths of the first candidates
 * lie between.
 */
export function edgesOf(wish: IdeaWish, name: MeasureName, seen: readonly number[], parts: number): number[] {
  const sorted = [...seen].sort((a, b) => a - b);
  const around = sorted.length > 0 ? [percentile(sorted, 0.05), percentile(sorted, 0.95)] : [0, 0];
  let [from, to] = wish.limits?.[name] ?? around;
  const least = LEAST_SPAN * fullValue(name, radiusOf(wish));
  if (to - from < least) [from, to] = [(from + to - least) / 2, (from + to + least) / 2];
  return Array.from({ length: parts + 1 }, (_, k) => from + ((to - from) * k) / parts);
}

/** The part that a value falls into; on an edge into the upper one, beyond the outer edges into the outer ones. */
function partAt(edges: readonly number[], value: number): number {
  let part = 0;
  while (part < edges.length - 2 && value >= edges[part + 1]) part++;
  return part;
}

/** Number of the cell, row by row from below. */
export const cellAt = (edges: WallEdges, across: number, up: number): number =>
  partAt(edges.up, up) * COLUMNS + partAt(edges.across, across);

/** Numbers of all cells that values within these ranges fall into. */
export function cellsAt(
  edges: WallEdges,
  across: readonly [number, number],
  up: readonly [number, number],
): number[] {
  const [left, right] = across.map((value) => partAt(edges.across, value));
  const [low, high] = up.map((value) => partAt(edges.up, value));
  const cells: number[] = [];
  for (let row = low; row <= high; row++)
    for (let column = left; column <= right; column++) cells.push(row * COLUMNS + column);
  return cells;
}

/** What a cell's values lie between; the outer cells have no outer edge. */
export function rangesOf(edges: WallEdges, cell: number): Readonly<Record<Axis, Limits>> {
  const partOf = (own: readonly number[], part: number): Limits => [
    part === 0 ? Number.NEGATIVE_INFINITY : own[part],
    part === own.length - 2 ? Number.POSITIVE_INFINITY : own[part + 1],
  ];
  const [column, row] = placeOf(cell);
  return { across: partOf(edges.across, column), up: partOf(edges.up, row) };
}

export const placeOf = (cell: number): readonly [number, number] => [
  cell % COLUMNS,
  Math.floor(cell / COLUMNS),
];

/** The outer edges moved out so far that they hold all values. */
export function widened(edges: readonly number[], values: readonly number[]): number[] {
  const last = edges.length - 1;
  return edges.map((edge, k) =>
    k === 0 ? Math.min(edge, ...values) : k === last ? Math.max(edge, ...values) : edge,
  );
}
