/** Petals: a bowl of a thin sheet, open towards +z, with a rosette for its outline. */
import { RANGES } from "../plan/limits.ts";
import { colour, count, maybe, mm, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { PETALS, THINNEST } from "./scene-design.ts";

export const PETALS_FIELDS = {
  count: count(RANGES.petals),
  diameterMm: mm(RANGES.sizeMm),
  depthMm: mm(RANGES.sizeMm),
  rgb: colour,
  rgb2: maybe(colour),
  ...PLACE,
} as const;

/** Petals are this thick as a share of their diameter (stated). */
const PETAL_THICKNESS = 0.02;

export const petals: InsideRecord<"petals"> = {
  // size: radius, depth of the bowl, half thickness; extra: number of petals.
  pack: (design, { toUnit, base }) => {
    const r = (design.diameterMm * toUnit) / 2;
    const thick = Math.max(THINNEST, PETAL_THICKNESS * 2 * r) / 2;
    return [{ ...base, kind: PETALS, size: [r, design.depthMm * toUnit, thick], extra: design.count }];
  },
  first: (share) => ({
    kind: "petals",
    count: 6,
    diameterMm: share(0.45),
    depthMm: share(0.12),
    rgb: [0.5, 0.06, 0.12],
  }),
  moves: ["up", "tiltDeg", "turnDeg"],
};
