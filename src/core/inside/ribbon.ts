/** A ribbon: a flat band, twisted about its own axis, of one colour on each side. */
import { RANGES } from "../plan/limits.ts";
import { colour, count, maybe, mm, PLACE } from "./fields.ts";
import { isMelted, MELT_IF_SAID, melted, thickness, USUAL } from "./melt.ts";
import type { InsideRecord } from "./record.ts";
import { MELTED_RIBBON, RIBBON, THINNEST } from "./scene-design.ts";

export const RIBBON_FIELDS = {
  widthMm: mm(RANGES.sizeMm),
  lengthMm: mm(RANGES.sizeMm),
  thicknessMm: mm(RANGES.sizeMm),
  turns: count(RANGES.ribbonTurns, 0.25),
  rgb: colour,
  rgb2: maybe(colour),
  ...MELT_IF_SAID,
  ...PLACE,
} as const;

export const ribbon: InsideRecord<"ribbon"> = {
  // size: half width, half thickness, half length; extra: radians of twist per unit length. Melted: half width, half length, thickness.
  pack: (design, { toUnit, base }) => {
    const half = (design.lengthMm * toUnit) / 2;
    const rate = (Math.PI * design.turns) / half;
    if (isMelted(design)) {
      const size = [(design.widthMm * toUnit) / 2, half, thickness(design.thicknessMm, toUnit)] as const;
      return [{ ...base, ...melted(design, toUnit, [rate]), kind: MELTED_RIBBON, size }];
    }
    const thick = Math.max(THINNEST, design.thicknessMm * toUnit) / 2;
    return [
      {
        ...base,
        kind: RIBBON,
        size: [(design.widthMm * toUnit) / 2, thick, half],
        extra: rate,
      },
    ];
  },
  first: (share) => ({
    kind: "ribbon",
    widthMm: share(0.25),
    lengthMm: share(0.45),
    thicknessMm: 1,
    turns: 0.75,
    rgb: [0.02, 0.2, 0.26],
    rgb2: [0.75, 0.55, 0.2],
    ...USUAL,
    irregularity: 0.2,
  }),
  moves: ["up", "tiltDeg", "turnDeg"],
};
