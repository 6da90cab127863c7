/**
 * What a table is made of: matt materials of our own with a stated mean reflectance and a pattern of fixed size in mm. A pattern
 * is a factor whose mean is 1, so that light far from a detail goes by the stated reflectance. The shader has the same patterns.
 * Reflectances are chosen by eye within what such materials have (common practice, no source).
 */
import { hash, unitOf } from "./hash.ts";
import type { Rgb } from "./spectrum.ts";

export interface Material {
  /** Mean reflectance, linear sRGB, 0 .. 1. */
  readonly rgb: Rgb;
  /** Position in PATTERNS; a shader knows it by this number. */
  readonly pattern: number;
}

export const MATERIALS = {
  paper: { rgb: [0.84, 0.835, 0.815], pattern: 1 },
  linen: { rgb: [0.6, 0.51, 0.4], pattern: 2 },
  slate: { rgb: [0.085, 0.09, 0.098], pattern: 3 },
  oak: { rgb: [0.42, 0.285, 0.165], pattern: 4 },
} as const satisfies Record<string, Material>;
export type MaterialName = keyof typeof MATERIALS;

/** Even all over. */
export const plainMaterial = (rgb: Rgb): Material => ({ rgb, pattern: 0 });

/** -1 .. 1 with mean 0 over a lattice of step 1: values at whole numbers, by Hermite between them. */
function unevenness(x: number, y: number, seed: number): number {
  const [ix, iy] = [Math.floor(x), Math.floor(y)];
  const at = (i: number, k: number) => unitOf(hash((hash((hash(seed) + ix + i) >>> 0) + iy + k) >>> 0));
  const ease = (t: number) => t * t * (3 - 2 * t);
  const [fx, fy] = [ease(x - ix), ease(y - iy)];
  const low = at(0, 0) + (at(1, 0) - at(0, 0)) * fx;
  const high = at(0, 1) + (at(1, 1) - at(0, 1)) * fx;
  return 2 * (low + (high - low) * fy) - 1;
}

/** A thread's roundness across a width of 1: 1 in the middle, 0 at its edges, less its mean. */
const rounded = (t: number): number => 1 - (2 * t - 1) ** 2 - 2 / 3;

/** A thread's width with what is between it and the next, and how far the cloth is drawn out of true, in such widths. */
const [THREAD_MM, DRAWN] = [0.62, 0.9];

function weave(x: number, y: number): number {
  // No thread lies straight, and none at the same distance from the next.
  const u = x / THREAD_MM + DRAWN * unevenness(x / 2.1, y / 14, 23);
  const v = y / THREAD_MM + DRAWN * unevenness(x / 14, y / 2.1, 24);
  const [iu, iv] = [Math.floor(u), Math.floor(v)];
  // Threads along x and along y lie on top by turns.
  const isAlongY = ((iu + iv) & 1) === 0;
  const [across, along] = isAlongY ? [u - iu, v - iv] : [v - iv, u - iu];
  // Each is thick and thin along its length, where it was spun so.
  const thick = isAlongY ? unevenness(iu, y / 5, 21) : unevenness(iv, x / 5, 22);
  const fibre = isAlongY ? unevenness(x / 0.09, y / 0.7, 25) : unevenness(y / 0.09, x / 0.7, 26);
  return 1 + 0.38 * rounded(across) + 0.24 * rounded(along) + 0.2 * thick + 0.12 * fibre;
}

/** A crumb of dust in so many of the cells of this size, mm, and the least and greatest radius of one. */
const [DUSTY, DUST_CELL_MM, DUST_LEAST_MM, DUST_MOST_MM] = [0.22, 3.5, 0.05, 0.17];
/** Share of the table that lies under dust: the mean of the radius squared, since that is even between its bounds. */
const DUST_SHARE =
  (DUSTY * Math.PI * (DUST_LEAST_MM ** 2 + DUST_LEAST_MM * DUST_MOST_MM + DUST_MOST_MM ** 2)) /
  (3 * DUST_CELL_MM ** 2);

/** 1 on a crumb of dust and 0 beside it, less its mean. */
function dust(x: number, y: number): number {
  const [u, v] = [x / DUST_CELL_MM, y / DUST_CELL_MM];
  const [iu, iv] = [Math.floor(u), Math.floor(v)];
  const h = hash((hash((hash(51) + iu) >>> 0) + iv) >>> 0);
  const [h1, h2, h3] = [hash((h + 1) >>> 0), hash((h + 2) >>> 0), hash((h + 3) >>> 0)];
  if (unitOf(h) >= DUSTY) return -DUST_SHARE;
  const radius = DUST_LEAST_MM + (DUST_MOST_MM - DUST_LEAST_MM) * unitOf(h1);
  const rim = radius / DUST_CELL_MM;
  // wholly within its cell
  const at = (h: number) => rim + (1 - 2 * rim) * unitOf(h);
  return (Math.hypot(u - iu - at(h2), v - iv - at(h3)) < rim ? 1 : 0) - DUST_SHARE;
}

/** Where the stone has split off in layers: how wide their broken edges are, as a share of the way from one to the next. */
const SCARP = 0.07;

/** -0.5 .. 0.5 with mean 0 over a whole way: a layer's broken edge is pale, with a dark line at its foot. */
function scarp(way: number): number {
  const t = way - Math.floor(way);
  if (t >= 2 * SCARP) return 0;
  return t < SCARP ? -0.5 * (t / SCARP) : 0.5 * (2 - t / SCARP);
}

function cleft(x: number, y: number): number {
  const layers = 1.5 * unevenness(x / 41, y / 19, 31) + 0.11 * unevenness(x / 3.4, y / 1.4, 32);
  return (
    1 +
    1.4 * dust(x, y) +
    0.5 * scarp(layers) +
    0.16 * unevenness(x / 0.5, y / 0.36, 33) +
    0.2 * unevenness(x / 0.13, y / 0.11, 34)
  );
}

/** Millimetres from one year's wood to the next, and rows of pores in one, of which the first ones are full of pores. */
const [YEAR_MM, PORE_ROWS, PORE_ROWS_FULL] = [3.3, 9, 3];
/** A pore's cell along the grain, mm, and the share of cells that have one, in full rows and in the others. */
const [PORE_CELL_MM, PORES_FULL, PORES_FEW] = [4.2, 0.9, 0.22];
/** A pore's length and width, as shares of its cell: least and greatest. */
const [PORE_SHORT, PORE_LONG, PORE_THIN, PORE_WIDE] = [0.3, 0.9, 0.3, 0.75];
/** Share of the wood that is pores: their mean is half of what would fill length and width, since they taper. */
const PORE_SHARE =
  ((PORE_ROWS_FULL * PORES_FULL + (PORE_ROWS - PORE_ROWS_FULL) * PORES_FEW) / PORE_ROWS) *
  ((PORE_SHORT + PORE_LONG) / 2) *
  ((PORE_THIN + PORE_WIDE) / 2) *
  (4 / 9);

/** 1 in the depth of a pore and 0 beside it, less its mean. `year` counts years across the grain. */
function pores(x: number, year: number): number {
  const v = year * PORE_ROWS;
  const row = Math.floor(v);
  const h0 = hash((hash(44) + row) >>> 0);
  const u = x / PORE_CELL_MM + unitOf(h0);
  const cell = Math.floor(u);
  const h = hash((h0 + cell) >>> 0);
  const isFull = row - PORE_ROWS * Math.floor((row + 0.5) / PORE_ROWS) < PORE_ROWS_FULL;
  if (unitOf(h) >= (isFull ? PORES_FULL : PORES_FEW)) return -PORE_SHARE;
  const [h1, h2, h3, h4] = [1, 2, 3, 4].map((k) => unitOf(hash((h + k) >>> 0)));
  const long = PORE_SHORT + (PORE_LONG - PORE_SHORT) * h1;
  const wide = PORE_THIN + (PORE_WIDE - PORE_THIN) * h2;
  // wholly within its cell
  const a = (2 * (u - cell - (1 - long) * h3)) / long - 1;
  const b = (2 * (v - row - (1 - wide) * h4)) / wide - 1;
  return Math.max(0, 1 - a * a) * Math.max(0, 1 - b * b) - PORE_SHARE;
}

function grain(x: number, y: number): number {
  const year = y / YEAR_MM + 1.5 * unevenness(x / 110, y / 31, 41);
  const t = year - Math.floor(year);
  return (
    1 +
    0.5 * dust(x, y) -
    0.62 * pores(x, year) +
    // late wood is darker, and ends with its year
    0.16 * (1 / 3 - t * t) +
    0.07 * unevenness(x / 45, y / 2.3, 42) +
    0.13 * unevenness(x / 5, y / 0.17, 43)
  );
}

const mottle = (x: number, y: number): number =>
  1 + 0.015 * unevenness(x / 2.5, y / 2.5, 11) + 0.02 * unevenness(x / 0.3, y / 0.3, 12);

/** Factors by place, mm along the table. */
const PATTERNS: readonly ((x: number, y: number) => number)[] = [() => 1, mottle, weave, cleft, grain];

/** Farther than this nobody sees a pattern, and single precision can't tell its details apart: nearly level ways end anywhere. */
const EVEN_BEYOND_MM = 20_000;

/** Reflectance at a place of the table, mm across and along it. */
export function reflectanceAt({ rgb, pattern }: Material, x: number, y: number): Rgb {
  const factor = Math.max(Math.abs(x), Math.abs(y)) < EVEN_BEYOND_MM ? PATTERNS[pattern](x, y) : 1;
  return [rgb[0] * factor, rgb[1] * factor, rgb[2] * factor];
}
