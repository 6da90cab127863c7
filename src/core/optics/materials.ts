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

const THREAD_MM = 0.7;

function weave(x: number, y: number): number {
  const [u, v] = [x / THREAD_MM, y / THREAD_MM];
  const [iu, iv] = [Math.floor(u), Math.floor(v)];
  // Threads along x and along y lie on top by turns.
  const isAlongY = ((iu + iv) & 1) === 0;
  const [across, along] = isAlongY ? [u - iu, v - iv] : [v - iv, u - iu];
  const thick = isAlongY ? unevenness(iu, y / 9, 21) : unevenness(iv, x / 9, 22);
  return 1 + 0.4 * rounded(across) + 0.25 * rounded(along) + 0.1 * thick;
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

const cleft = (x: number, y: number): number =>
  1 +
  1.4 * dust(x, y) +
  0.16 * unevenness(x / 30, y / 22, 31) +
  0.1 * unevenness(x / 4, y / 3.4, 32) +
  0.12 * unevenness(x / 0.4, y / 0.4, 33);

function grain(x: number, y: number): number {
  const ring = y / 4.5 + 1.4 * unevenness(x / 80, y / 22, 41);
  return (
    1 +
    0.5 * dust(x, y) +
    0.14 * Math.cos(2 * Math.PI * ring) +
    0.16 * unevenness(x / 60, y / 1.8, 42) +
    0.14 * unevenness(x / 7, y / 0.3, 43)
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
