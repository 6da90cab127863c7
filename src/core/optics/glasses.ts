/**
 * How a glass bends and swallows light: index and absorption by wavelength, every coefficient beside its source.
 * Wavelengths in nanometres at the interface, micrometres inside the dispersion formulas; absorption in 1/mm.
 * Indices are relative to air at room temperature; air counts as 1.
 */
import type { Glass } from "../plan/document.ts";

/** Fraunhofer lines used for Abbe numbers, nm. Source: opticalglass spectral_lines.py (BSD-3-Clause), OHARA technical page 2.1. */
export const LINE_D_NM = 587.5618;
export const LINE_F_NM = 486.1327;
export const LINE_C_NM = 656.2725;

/** n^2 - 1 = a0 + sum b_i L^2 / (L^2 - c_i), L and sqrt(c_i) in um. */
export interface Sellmeier {
  readonly form: "sellmeier";
  readonly a0: number;
  readonly b: readonly [number, number, number];
  readonly c: readonly [number, number, number];
}
/** n = a + b L^2 + c L^-2, L in um. */
export interface PowerSeries {
  readonly form: "powers";
  readonly a: number;
  readonly b: number;
  readonly c: number;
}
export type Dispersion = Sellmeier | PowerSeries;

export interface OpticalGlass {
  readonly name: string;
  readonly dispersion: Dispersion;
  /** Extinction coefficient k at 380, 390 .. 780 nm; null for a glass without absorption. */
  readonly extinction: readonly number[] | null;
}

const EXTINCTION_FIRST_NM = 380;
const EXTINCTION_STEP_NM = 10;
const perHundredMillion = (values: readonly number[]): readonly number[] => values.map((v) => v * 1e-8);

/**
 * Borosilicate 3.3. The float glass of this type is the one with published dispersion over the whole visible range:
 * "formula 1" fit (A0, B1, c1, B2, c2; the c are squared here) and extinction digitised from the data sheet's figure.
 * Source: refractiveindex.info database @ff11b5897ef0 (CC0-1.0), specs/schott/misc/BOROFLOAT33.yml, fitted to the maker's
 * "Optical Properties", June 2021. Good to 1e-4 in n and 1 % in dispersion; rod and tube of other makers read 1.471 .. 1.474.
 */
export const BOROSILICATE: OpticalGlass = {
  name: "borosilicate 3.3",
  dispersion: {
    form: "sellmeier",
    a0: 0.3542,
    b: [0.78657, 0.18285, 0],
    c: [0.10856 ** 2, 4.427 ** 2, 0],
  },
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a measured value that only looks like ln 10.
  extinction: perHundredMillion([
    5.201, 3.143, 3.356, 3.017, 3.08, 3.154, 3.227, 3.28, 3.291, 3.235, 3.098, 2.891, 2.621, 2.303, 1.984,
    1.718, 1.506, 1.333, 1.199, 1.124, 1.131, 1.189, 1.254, 1.323, 1.4, 1.494, 1.622, 1.795, 2.012, 2.259,
    2.528, 2.815, 3.117, 3.434, 3.765, 4.112, 4.477, 4.859, 5.26, 5.684, 6.132,
  ]),
};

/**
 * Clear soda-lime with little iron: index and extinction from one set of measurements.
 * Source: M. Rubin, Optical properties of soda lime silica glasses, Sol. Energy Mater. 12, 275-288 (1985), as carried by
 * refractiveindex.info database @ff11b5897ef0 (CC0-1.0), soda-lime/nk/Rubin-lowiron.yml (0.31 .. 4.6 um).
 * Its V_d is 64.0; other soda-lime data lie near 59, so its fire is on the cautious side.
 */
export const SODA_LIME: OpticalGlass = {
  name: "soda-lime, low iron",
  dispersion: { form: "powers", a: 1.513, b: -0.003169, c: 0.003962 },
  extinction: perHundredMillion([
    13.09, 6.261, 4.57, 5.013, 5.449, 5.878, 5.095, 4.252, 3.351, 3.675, 3.995, 2.972, 3.257, 3.538, 3.816,
    4.091, 4.362, 4.632, 6.429, 6.721, 8.597, 8.913, 10.87, 11.21, 13.25, 15.34, 17.49, 17.9, 20.13, 22.42,
    24.76, 25.26, 27.69, 30.17, 32.71, 35.31, 37.96, 40.67, 43.44, 46.27, 49.16,
  ]),
};

/**
 * The check glass: its catalogue prints indices to five decimals at the spectral lines.
 * Source: SCHOTT optical glass catalogue (data table of 2018-05-30), the same in refractiveindex.info N-BK7.yml; its C are
 * squared lengths already. 0.3 .. 2.5 um. Absorption left out: 25 mm pass 99.5 %.
 */
export const N_BK7: OpticalGlass = {
  name: "N-BK7",
  dispersion: {
    form: "sellmeier",
    a0: 0,
    b: [1.03961212, 0.231792344, 1.01046945],
    c: [0.00600069867, 0.0200179144, 103.560653],
  },
  extinction: null,
};

/** Refractive index at a wavelength within 380 .. 780 nm. */
export function indexAt(dispersion: Dispersion, nm: number): number {
  const l2 = (nm / 1000) ** 2;
  if (dispersion.form === "powers") return dispersion.a + dispersion.b * l2 + dispersion.c / l2;
  const { a0, b, c } = dispersion;
  return Math.sqrt(
    1 + a0 + (b[0] * l2) / (l2 - c[0]) + (b[1] * l2) / (l2 - c[1]) + (b[2] * l2) / (l2 - c[2]),
  );
}

/** Abbe number V_d = (n_d - 1) / (n_F - n_C). */
export function abbeNumber(dispersion: Dispersion): number {
  const [nd, nF, nC] = [LINE_D_NM, LINE_F_NM, LINE_C_NM].map((nm) => indexAt(dispersion, nm));
  return (nd - 1) / (nF - nC);
}

/**
 * Two-term Cauchy n = a + c / L^2 through a given n_d and V_d: exact at d, and exactly V_d by its definition.
 * @param nd > 1; @param vd > 0 (infinite gives a glass without dispersion)
 */
export function cauchyFrom(nd: number, vd: number): PowerSeries {
  const inverseSquare = (nm: number) => (nm / 1000) ** -2;
  const c = (nd - 1) / vd / (inverseSquare(LINE_F_NM) - inverseSquare(LINE_C_NM));
  return { form: "powers", a: nd - c * inverseSquare(LINE_D_NM), b: 0, c };
}

/** The optics of a plan's glass. A person's own glass is clear, without absorption. */
export function opticalGlass(glass: Glass): OpticalGlass {
  if (glass === "borosilicate") return BOROSILICATE;
  if (glass === "soda-lime") return SODA_LIME;
  return { name: glass.name, dispersion: cauchyFrom(glass.nd, glass.vd), extinction: null };
}

/** Absorption coefficient alpha = 4 pi k / lambda in 1/mm (Bouguer-Lambert); k linear between table rows, held beyond the ends. */
export function absorptionAt(glass: OpticalGlass, nm: number): number {
  if (!glass.extinction) return 0;
  const last = glass.extinction.length - 1;
  const x = Math.min(last, Math.max(0, (nm - EXTINCTION_FIRST_NM) / EXTINCTION_STEP_NM));
  const i = Math.min(last - 1, Math.floor(x));
  const k = glass.extinction[i] + (glass.extinction[i + 1] - glass.extinction[i]) * (x - i);
  return (4 * Math.PI * k) / (nm * 1e-6);
}
