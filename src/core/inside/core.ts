/** A core: a ball or a rod of colour, opaque, or tinted glass that light runs through. */
import { realSizeMm } from "../optics/apparent-size.ts";
import { RANGES } from "../plan/limits.ts";
import { colour, maybe, mm, oneOf, PLACE, yesNo } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { CORE, TINTED_CORE } from "./scene-design.ts";

export const CORE_FIELDS = {
  diameterMm: mm(RANGES.sizeMm),
  lengthMm: maybe(mm(RANGES.sizeMm)),
  rgb: colour,
  opaque: maybe(yesNo),
  sizeAs: maybe(oneOf("real", "seen")),
  ...PLACE,
} as const;

export const core: InsideRecord<"core"> = {
  // size: half axes.
  pack: (design, { piece, nd, toUnit, base }) => {
    const across = realSizeMm(piece, design, nd);
    const along = design.lengthMm === undefined ? across : (across * design.lengthMm) / design.diameterMm;
    const [a, c] = [(across * toUnit) / 2, (along * toUnit) / 2];
    return [{ ...base, kind: design.opaque === false ? TINTED_CORE : CORE, size: [a, a, c] }];
  },
  first: (share) => ({ kind: "core", diameterMm: share(0.3), rgb: [0.03, 0.16, 0.3], opaque: true }),
  moves: ["up", "tiltDeg", "turnDeg"],
};
