/** Published optical values, each with its source; "computed" ones follow from a published formula. */

/** N-BK7 catalogue indices at spectral lines (nm). Source: SCHOTT optical glass catalogue, data table of 2018-05-30. */
export const N_BK7_CATALOGUE: readonly (readonly [nm: number, n: number])[] = [
  [404.6561, 1.53024],
  [435.8343, 1.52668],
  [479.9914, 1.52283],
  [486.1327, 1.52238],
  [546.074, 1.51872],
  [587.5618, 1.5168],
  [589.2938, 1.51673],
  [632.8, 1.51509],
  [643.8469, 1.51472],
  [656.2725, 1.51432],
  [706.5188, 1.51289],
];
export const N_BK7_ABBE = 64.17;

/** BOROFLOAT 33 fit evaluated at lines. Source: refractiveindex.info database BOROFLOAT33.yml (CC0), computed from its formula. */
export const BOROSILICATE_INDICES: readonly (readonly [number, number])[] = [
  [435.8343, 1.480206],
  [486.1327, 1.476422],
  [546.074, 1.473197],
  [587.5618, 1.471493],
  [656.2725, 1.469282],
];
/** n_d as listed by the maker, June 2021. */
export const BOROSILICATE_ND_SHEET = 1.471;

/** M. Rubin, Sol. Energy Mater. 12, 275-288 (1985): formula evaluated at lines (computed). */
export const SODA_LIME_INDICES: readonly (readonly [number, number])[] = [
  [435.8343, 1.533256],
  [486.1327, 1.529016],
  [546.074, 1.525342],
  [587.5618, 1.523382],
  [656.2725, 1.520834],
];

/** Internal transmittance of 25 mm, computed as exp(-4 pi k d / lambda) from the tables of the same sources: Rubin low-iron, BOROFLOAT 33. */
export const TRANSMITTANCE_25_MM = {
  sodaLime: { 450: 0.9708, 500: 0.9797, 550: 0.9739, 600: 0.9447, 650: 0.9171, 700: 0.8831 },
  borosilicate: { 450: 0.9774, 500: 0.9837, 550: 0.9924, 600: 0.9935, 650: 0.9914, 700: 0.9861 },
} as const;

/** Unpolarised reflectance, air to n = 1.5, by angle in degrees. Computed from Fresnel's equations (Born and Wolf 1.5.2). */
export const FRESNEL_AT_1_5: Readonly<Record<number, number>> = {
  0: 0.04,
  10: 0.040015,
  20: 0.040266,
  30: 0.041523,
  40: 0.045734,
  45: 0.05024,
  50: 0.057663,
  60: 0.089187,
  70: 0.171043,
  80: 0.387704,
  85: 0.6128,
};
/** At Brewster's angle for 1.5, 56.31 degrees, only s is reflected: (5/13)^2 / 2 unpolarised. */
export const BREWSTER_1_5_DEG = 56.3099;
/** Critical angles by index. 1.49: OpenStax University Physics vol. 3, 1.4 (42.2); others computed asin(1/n). */
export const CRITICAL_DEG: readonly (readonly [n: number, deg: number, digits: number])[] = [
  [1.49, 42.2, 1],
  [1.5, 41.8103, 4],
  [1.4714, 42.8143, 4],
  [1.5234, 41.0279, 4],
];

/** Minimum deviation of a 60-degree prism: n = sin((A + d) / 2) / sin(A / 2). n = sqrt 2 gives exactly 30; 1.5 gives 37.18 (textbooks print 37.2). */
export const PRISM_60: readonly (readonly [n: number, deviationDeg: number])[] = [
  [Math.SQRT2, 30],
  [1.5, 37.1808],
  [1.4714, 34.7328],
  [1.5168, 38.6467],
  [1.5234, 39.2286],
];

/** Focal length of a ball from its centre, in radii: n / (2 (n - 1)), which is EFL = nD / 4(n - 1). Source: Edmund Optics, "Ball lens". */
export const BALL_FOCUS: readonly (readonly [n: number, radii: number])[] = [
  [1.4714, 1.56067],
  [1.5, 1.5],
  [1.5168, 1.46749],
  [1.5234, 1.45529],
];

/** D65 from the 5 nm tables, 380 .. 780 nm (computed), and sRGB's white. Source: colour-science datasets; IEC 61966-2-1. */
export const D65_XY_5NM = [0.312721, 0.329031] as const;
export const SRGB_TO_XYZ: readonly (readonly [number, number, number])[] = [
  [0.4123907992659593, 0.357584339383878, 0.1804807884018343],
  [0.2126390058715102, 0.715168678767756, 0.0721923153607337],
  [0.0193308187155918, 0.119194779794626, 0.9505321522496607],
];
/** sRGB encoding of 0.18. Source: colour-science tests/test_srgb.py. */
export const SRGB_OF_018 = 0.461356129500442;

/**
 * Abbe numbers of other clear soda-lime glasses. B 270: computed from the four-decimal indices of its data sheet, August 1993, in the
 * refractiveindex.info database B270.yml (CC0), so good to 0.7. Window and container glass: from n_F - n_C 0.00877 and 0.00867
 * in a table of typical properties (secondary source). Rubin's formula lies above them all.
 */
export const OTHER_SODA_LIME_ABBE = { b270: 58.8, window: 59.3, container: 59.7 } as const;

/** GGX roughness of etched or ground glass: "0.3 .. 0.7", of a relatively rough one 0.1. Source: Mitsuba 3, roughdielectric (BSD-3). */
export const ROUGHNESS_SCALE = { ground: [0.3, 0.7], relativelyRough: 0.1 } as const;
