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
interface Sellmeier {
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
/** A table in whole numbers of 1e-11. */
const extinctionTable = (values: readonly number[]): readonly number[] => values.map((v) => v * 1e-11);

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
  extinction: extinctionTable([
    5201, 3143, 3356, 3017, 3080, 3154, 3227, 3280, 3291, 3235, 3098, 2891, 2621, 2303, 1984, 1718, 1506,
    1333, 1199, 1124, 1131, 1189, 1254, 1323, 1400, 1494, 1622, 1795, 2012, 2259, 2528, 2815, 3117, 3434,
    3765, 4112, 4477, 4859, 5260, 5684, 6132,
  ]),
};

/**
 * Clear soda-lime with little iron: index and extinction from one set of measurements.
 * Source: M. Rubin, Optical properties of soda lime silica glasses, Sol. Energy Mater. 12, 275-288 (1985), as carried by
 * refractiveindex.info database @ff11b5897ef0 (CC0-1.0), soda-lime/nk/Rubin-lowiron.yml (0.31 .. 4.6 um).
 * Its V_d is 64.0; B 270's data sheet gives 58.8 and tables of window glass 59.3, so the fire shown is some 8 % less than theirs:
 * on the cautious side. Who knows a glass's n_d and V_d types them.
 */
export const SODA_LIME: OpticalGlass = {
  name: "soda-lime, low iron",
  dispersion: { form: "powers", a: 1.513, b: -0.003169, c: 0.003962 },
  extinction: extinctionTable([
    13090, 6261, 4570, 5013, 5449, 5878, 5095, 4252, 3351, 3675, 3995, 2972, 3257, 3538, 3816, 4091, 4362,
    4632, 6429, 6721, 8597, 8913, 10870, 11210, 13250, 15340, 17490, 17900, 20130, 22420, 24760, 25260, 27690,
    30170, 32710, 35310, 37960, 40670, 43440, 46270, 49160,
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

/**
 * The glasses that a plan may name. Densities in g/cm3: borosilicate 3.3 by ISO 3585 (2.23), soda-lime float glass by
 * EN 572-1 (2.50).
 */
const GLASSES = {
  borosilicate: { optics: BOROSILICATE, densityGcm3: 2.23 },
  "soda-lime": { optics: SODA_LIME, densityGcm3: 2.5 },
} as const satisfies Readonly<Record<string, { optics: OpticalGlass; densityGcm3: number }>>;
export type GlassName = keyof typeof GLASSES;
export const GLASS_NAMES = Object.keys(GLASSES) as readonly GlassName[];

/** g/cm3 */
export const densityOf = (glass: Glass): number =>
  typeof glass === "string" ? GLASSES[glass].densityGcm3 : glass.densityGcm3;

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
  if (typeof glass === "string") return GLASSES[glass].optics;
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
