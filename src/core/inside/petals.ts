/** Petals: a bowl of a thin sheet, open towards +z, with a rosette for its outline. */
import { RANGES } from "../plan/limits.ts";
import { colour, count, maybe, mm, PLACE } from "./fields.ts";
import { isMelted, MELT_IF_SAID, melted, USUAL } from "./melt.ts";
import type { InsideRecord } from "./record.ts";
import { MELTED_PETALS, PETALS, THINNEST } from "./scene-design.ts";

export const PETALS_FIELDS = {
  count: count(RANGES.petals),
  diameterMm: mm(RANGES.sizeMm),
  depthMm: mm(RANGES.sizeMm),
  rgb: colour,
  rgb2: maybe(colour),
  /** How wide a line of the second colour runs along the middle of each; 0 .. 1, for melted ones. */
  vein: maybe(count(RANGES.unit, 0.05)),
  ...MELT_IF_SAID,
  ...PLACE,
} as const;

/** Petals are this thick as a share of their diameter (stated). */
const PETAL_THICKNESS = 0.02;
/** Melted ones at the heart; they thin out towards the rim. */
const MELTED_THICKNESS = 0.08;

export const petals: InsideRecord<"petals"> = {
  // size: radius, depth of the bowl, half thickness; extra: number of petals.
  pack: (design, { toUnit, base }) => {
    const r = (design.diameterMm * toUnit) / 2;
    const depth = design.depthMm * toUnit;
    if (isMelted(design)) {
      const thick = Math.max(THINNEST, MELTED_THICKNESS * 2 * r);
      const size = [r, (depth + thick) / 2, thick] as const;
      const shape = [design.count, design.vein ?? 0, depth];
      return [{ ...base, ...melted(design, toUnit, shape), kind: MELTED_PETALS, size }];
    }
    const thick = Math.max(THINNEST, PETAL_THICKNESS * 2 * r) / 2;
    return [{ ...base, kind: PETALS, size: [r, depth, thick], extra: design.count }];
  },
  first: (share) => ({
    kind: "petals",
    count: 6,
    diameterMm: share(0.45),
    depthMm: share(0.12),
    rgb: [0.5, 0.06, 0.12],
    rgb2: [0.85, 0.6, 0.62],
    vein: 0.4,
    ...USUAL,
    irregularity: 0.2,
  }),
  moves: ["up", "tiltDeg", "turnDeg"],
};
