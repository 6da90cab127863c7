/**
 * From wavelengths to colour and back. The visible range is cut into STRATA of equal importance; a path follows one
 * wavelength and knows only its stratum: `weight` turns its radiance into linear sRGB, `basis` turns a linear sRGB colour
 * into its value at that wavelength.
 *
 * Held exactly (to rounding), with means over all strata:
 * - mean of weight = (1, 1, 1): radiance equal to the light's white comes back neutral;
 * - the three basis values of a stratum sum to 1: equal red, green and blue are a flat spectrum under D65;
 * - mean of weight_c * basis_k = 1 if c = k, else 0: a colour survives the round trip.
 */
import { scale, vec3 } from "../geometry/vec.ts";
import { CIE_FIRST_NM, CIE_STEP_NM, CIE_TABLE } from "./cie.ts";

export const STRATA = 64;

export type Rgb = readonly [number, number, number];

/** Relative luminance of linear sRGB. Source: IEC 61966-2-1, primaries of ITU-R BT.709. */
export const luminance = (rgb: Rgb): number => 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];

export interface Stratum {
  /** Wavelengths of the stratum, nm: half of its importance lies on either side of the middle. */
  readonly fromNm: number;
  readonly midNm: number;
  readonly toNm: number;
  readonly weight: Rgb;
  readonly basis: Rgb;
}

/** XYZ to linear sRGB (IEC 61966-2-1 primaries, D65). Source: inverse of the matrix in culori 4.0.2 and colorjs.io 0.7.1. */
export const XYZ_TO_SRGB: readonly Rgb[] = [
  [3.240969941905, -1.53738317757, -0.498610760293],
  [-0.969243636281, 1.875967501508, 0.041555057407],
  [0.055630079697, -0.203976958889, 1.056971514243],
];

const CELLS_PER_STEP = 5;
const CELL_NM = CIE_STEP_NM / CELLS_PER_STEP;

/** D65 times colour matching as linear sRGB, in cells of 1 nm, scaled so that each channel sums to 1. */
function channelCells(): Rgb[] {
  const cells: [number, number, number][] = [];
  const sum: [number, number, number] = [0, 0, 0];
  for (let step = 0; step + 1 < CIE_TABLE.length; step++)
    for (let i = 0; i < CELLS_PER_STEP; i++) {
      const t = (i + 0.5) / CELLS_PER_STEP;
      const [x, y, z, e] = CIE_TABLE[step].map((v, k) => v + (CIE_TABLE[step + 1][k] - v) * t);
      const cell = XYZ_TO_SRGB.map((m) => e * (m[0] * x + m[1] * y + m[2] * z)) as [number, number, number];
      for (let c = 0; c < 3; c++) sum[c] += cell[c];
      cells.push(cell);
    }
  return cells.map((cell) => [cell[0] / sum[0], cell[1] / sum[1], cell[2] / sum[2]]);
}

interface Band {
  readonly fromNm: number;
  readonly toNm: number;
  readonly weight: Rgb;
}

/** Cuts the range into `count` bands where the summed |channel| reaches equal parts; a band's weight is `count` times its exact share of each channel. */
function bandsOfEqualImportance(cells: readonly Rgb[], count: number): Band[] {
  const importance = cells.map((c) => Math.abs(c[0]) + Math.abs(c[1]) + Math.abs(c[2]));
  const part = importance.reduce((a, b) => a + b, 0) / count;
  const bands: Band[] = [];
  let weight: [number, number, number] = [0, 0, 0];
  let [fromNm, missing] = [CIE_FIRST_NM, part];
  cells.forEach((cell, i) => {
    // A cell may end several bands; its light is spread evenly over it.
    let left = 1;
    while (importance[i] * left > missing && bands.length < count - 1) {
      const share = missing / importance[i];
      left -= share;
      const toNm = CIE_FIRST_NM + CELL_NM * (i + 1 - left);
      bands.push({
        fromNm,
        toNm,
        weight: vec3((c) => (weight[c] + cell[c] * share) * count),
      });
      [fromNm, missing, weight] = [toNm, part, [0, 0, 0]];
    }
    for (let c = 0; c < 3; c++) weight[c] += cell[c] * left;
    missing -= importance[i] * left;
  });
  const toNm = CIE_FIRST_NM + CELL_NM * cells.length;
  bands.push({ fromNm, toNm, weight: scale(weight, count) });
  return bands;
}

/** Solves the square system in place by Gaussian elimination with row pivoting; the system is never singular here. */
function solveLinear(rows: Float64Array[], right: Float64Array): Float64Array {
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i][k]) > Math.abs(rows[pivot][k])) pivot = i;
    [rows[k], rows[pivot]] = [rows[pivot], rows[k]];
    [right[k], right[pivot]] = [right[pivot], right[k]];
    for (let i = k + 1; i < n; i++) {
      const factor = rows[i][k] / rows[k][k];
      if (factor === 0) continue;
      for (let j = k; j < n; j++) rows[i][j] -= factor * rows[k][j];
      right[i] -= factor * right[k];
    }
  }
  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let s = right[i];
    for (let j = i + 1; j < n; j++) s -= rows[i][j] * x[j];
    x[i] = s / rows[i][i];
  }
  return x;
}

/**
 * Spectra of the three primaries: the smoothest ones (least squared steps) that sum to 1, survive the round trip and are
 * never negative. After I. Mallett and C. Yuksel, Spectral Primary Decomposition for Rendering with sRGB Reflectance,
 * EGSR 2019. Quadratic programme with bounds by an active set: strata that fall below 0 are pinned to 0, and it is solved again.
 */
function primarySpectra(bands: readonly { readonly weight: Rgb }[]): Rgb[] {
  const m = bands.length;
  const pinned = new Set<number>();
  for (;;) {
    const constraints: { row: Map<number, number>; value: number }[] = [];
    for (let j = 0; j < m; j++)
      constraints.push({ row: new Map([0, 1, 2].map((k) => [k * m + j, 1])), value: 1 });
    // The third primary's round trip follows from the sums.
    for (let k = 0; k < 2; k++)
      for (let c = 0; c < 3; c++)
        constraints.push({
          row: new Map(bands.map((b, j) => [k * m + j, b.weight[c] / m])),
          value: c === k ? 1 : 0,
        });
    for (const i of pinned) constraints.push({ row: new Map([[i, 1]]), value: 0 });

    const size = 3 * m + constraints.length;
    const rows = Array.from({ length: size }, () => new Float64Array(size));
    const right = new Float64Array(size);
    for (let k = 0; k < 3; k++)
      for (let j = 0; j + 1 < m; j++) {
        const [a, b] = [k * m + j, k * m + j + 1];
        rows[a][a] += 1;
        rows[b][b] += 1;
        rows[a][b] -= 1;
        rows[b][a] -= 1;
      }
    constraints.forEach(({ row, value }, i) => {
      for (const [j, v] of row) rows[3 * m + i][j] = rows[j][3 * m + i] = v;
      right[3 * m + i] = value;
    });
    const x = solveLinear(rows, right);
    const below = Array.from({ length: 3 * m }, (_, i) => i).filter((i) => !pinned.has(i) && x[i] < 0);
    if (below.length === 0)
      return bands.map((_, j) => vec3((k) => (pinned.has(k * m + j) ? 0 : x[k * m + j])));
    for (const i of below) pinned.add(i);
  }
}

function makeStrata(): Stratum[] {
  const halves = bandsOfEqualImportance(channelCells(), 2 * STRATA);
  const bands = Array.from({ length: STRATA }, (_, j) => {
    const [low, high] = [halves[2 * j], halves[2 * j + 1]];
    const weight = vec3((c) => (low.weight[c] + high.weight[c]) / 2);
    return { fromNm: low.fromNm, midNm: low.toNm, toNm: high.toNm, weight };
  });
  const basis = primarySpectra(bands);
  return bands.map((band, j) => ({ ...band, basis: basis[j] }));
}

let made: readonly Stratum[] | null = null;
/** The STRATA strata from short to long waves; computed once, some tens of milliseconds. */
export function strata(): readonly Stratum[] {
  made ??= makeStrata();
  return made;
}

/** Wavelength (nm) within a stratum for 0 <= u < 1, spread by importance. */
export const wavelengthIn = (s: Stratum, u: number): number =>
  u < 0.5 ? s.fromNm + (s.midNm - s.fromNm) * 2 * u : s.midNm + (s.toNm - s.midNm) * (2 * u - 1);

/** Linear sRGB of a spectrum given as one value a stratum, relative to D65. */
export function rgbOfSpectrum(values: readonly number[]): Rgb {
  const rgb: [number, number, number] = [0, 0, 0];
  strata().forEach((s, j) => {
    for (let c = 0; c < 3; c++) rgb[c] += (s.weight[c] * values[j]) / STRATA;
  });
  return rgb;
}
