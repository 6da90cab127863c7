/**
 * Grain sizes of grit numbers. The same number means different sizes on different scales, so a number without its scale
 * says nothing. Sizes in micrometres; each table names its source and whether it was read there or is from memory.
 */
import type { GritScale } from "../../plan/document.ts";

export interface GritTable {
  readonly scale: GritScale;
  readonly name: string;
  /** Grit number to size, um. */
  readonly sizes: readonly (readonly [grit: number, um: number])[];
  readonly source: string;
  readonly status: "read" | "read in part, rest from memory" | "from memory";
}

const SANDPAPER =
  'Table "ISO/FEPA grit, CAMI grit, average particle diameter" (as printed at stusshed, 2008)';

/** Coarse to fine within each scale. */
export const GRIT_TABLES: readonly GritTable[] = [
  {
    scale: "fepa-f",
    name: "FEPA F (loose grain, wheels), median",
    // F230 on: median d50; F220 from "at least 50 % within 50 to 56 um".
    sizes: [
      [220, 53],
      [230, 53],
      [240, 44.5],
      [280, 36.5],
      [320, 29.2],
      [360, 22.8],
      [400, 17.3],
      [500, 12.8],
      [600, 9.3],
      [800, 6.5],
      [1000, 4.5],
      [1200, 3],
    ],
    source: "FEPA 42-2 / ISO 8486-2",
    status: "from memory",
  },
  {
    scale: "fepa-p",
    name: "FEPA P (coated abrasives), mean",
    sizes: [
      [60, 269],
      [80, 201],
      [100, 162],
      [120, 125],
      [150, 100],
      [180, 82],
      [220, 68],
      [240, 58.5],
      [280, 52.2],
      [320, 46.2],
      [360, 40.5],
      [400, 35],
      [500, 30.2],
      [600, 25.8],
      [800, 21.8],
      [1000, 18.3],
      [1200, 15.3],
      [1500, 12.6],
      [2000, 10.3],
      [2500, 8.4],
    ],
    source: `ISO 6344; ${SANDPAPER}`,
    status: "read",
  },
  {
    scale: "jis",
    name: "JIS R 6001 (micro grits), median",
    sizes: [
      [240, 60],
      [320, 40],
      [400, 30],
      [600, 20],
      [800, 14],
      [1000, 11.5],
      [1200, 9.5],
      [2000, 6.7],
      [3000, 4],
    ],
    source: "JIS R 6001:1998",
    status: "from memory",
  },
  {
    scale: "ansi",
    name: "ANSI / CAMI (coated abrasives), mean",
    sizes: [
      [60, 265],
      [80, 190],
      [100, 140],
      [120, 115],
      [150, 92],
      [180, 82],
      [220, 68],
      [240, 53],
      [320, 36],
      [360, 28],
      [400, 23],
      [500, 20],
      [600, 16],
      [800, 12.6],
      [1000, 10.3],
    ],
    source: SANDPAPER,
    status: "read",
  },
  {
    scale: "mesh",
    name: "Sieve mesh (plated diamond), opening",
    sizes: [
      [40, 425],
      [60, 250],
      [80, 180],
      [100, 150],
      [120, 125],
      [140, 106],
      [170, 90],
      [200, 75],
      [230, 63],
      [270, 53],
      [325, 45],
      [400, 38],
    ],
    source: "ASTM E11 (40 to 170 as tabled by Bayunion; 200 to 400 from memory)",
    status: "read in part, rest from memory",
  },
];

/** Grain size of a grit number on its scale, um; null when the scale doesn't have that number. */
export function grainOfGrit(scale: GritScale, grit: number): number | null {
  const table = GRIT_TABLES.find((t) => t.scale === scale);
  return table?.sizes.find(([number]) => number === grit)?.[1] ?? null;
}

/** The numbers that a scale has, coarse to fine. */
export const gritsOf = (scale: GritScale): readonly number[] =>
  GRIT_TABLES.find((t) => t.scale === scale)?.sizes.map(([grit]) => grit) ?? [];

/** What one number means on every scale that has it: the reason to ask for the scale. */
export const sizesOfNumber = (grit: number): readonly { readonly scale: GritScale; readonly um: number }[] =>
  GRIT_TABLES.flatMap(({ scale }) => {
    const um = grainOfGrit(scale, grit);
    return um === null ? [] : [{ scale, um }];
  });
