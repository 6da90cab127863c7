/** Published values that the bench is held to. `status`: read at the source, or from memory. */

export const GRITS = [
  {
    scale: "ansi",
    source:
      'Table "ISO/FEPA grit, CAMI grit, average particle diameter" (stusshed, 2008-03-24; same numbers in general encyclopaedias)',
    status: "read",
    um: { 60: 265, 80: 190, 120: 115, 220: 68, 240: 53, 320: 36, 400: 23, 600: 16, 1000: 10.3 },
  },
  {
    scale: "fepa-p",
    source: "ISO 6344 as printed in the same table",
    status: "read",
    um: { 60: 269, 120: 125, 220: 68, 240: 58.5, 320: 46.2, 400: 35, 600: 25.8, 1000: 18.3, 2500: 8.4 },
  },
  {
    scale: "fepa-f",
    source: "FEPA 42-2 / ISO 8486-2, median",
    status: "memory",
    um: { 230: 53, 320: 29.2, 400: 17.3, 600: 9.3, 1200: 3 },
  },
  {
    scale: "jis",
    source: "JIS R 6001:1998, median",
    status: "memory",
    um: { 240: 60, 400: 30, 600: 20, 1000: 11.5, 3000: 4 },
  },
  {
    scale: "mesh",
    source: "ASTM E11 (60 to 170 read at Bayunion's technical page, 200 to 400 from memory)",
    status: "read in part",
    um: { 60: 250, 100: 150, 120: 125, 170: 90, 200: 75, 325: 45, 400: 38 },
  },
] as const;

/** Damage depth of loose abrasive in grain diameters. */
export const DAMAGE = {
  grains: [2, 3],
  source: 'AmeriCOM course "The fundamentals of grinding", lesson 2',
  status: "read",
} as const;

/** dh/dt = k p v. */
export const PRESTON = {
  source: "F. W. Preston, J. Soc. Glass Technol. 11, 214-256 (1927)",
  status: "memory",
  /** Worked example: p = 10 kPa, v = 1 m/s, k = 5e-13 1/Pa gives 5 nm/s. */
  example: {
    pPa: 10_000,
    vMs: 1,
    kPerPa: 5e-13,
    nmPerSecond: 5,
    source: "optics literature in general",
    status: "memory",
  },
} as const;
