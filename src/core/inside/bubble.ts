/** A bubble: a ball of air in the glass, with a wall that light crosses. */
import { realSizeMm } from "../optics/apparent-size.ts";
import { RANGES } from "../plan/limits.ts";
import { maybe, mm, oneOf, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { BUBBLE } from "./scene-design.ts";

export const BUBBLE_FIELDS = {
  diameterMm: mm(RANGES.sizeMm),
  sizeAs: maybe(oneOf("real", "seen")),
  ...PLACE,
} as const;

export const bubble: InsideRecord<"bubble"> = {
  // size: radius, thrice.
  pack: (design, { piece, nd, toUnit, base }) => {
    const r = (realSizeMm(piece, design, nd) * toUnit) / 2;
    return [{ ...base, kind: BUBBLE, size: [r, r, r] }];
  },
  first: (share) => ({ kind: "bubble", diameterMm: share(0.2) }),
  moves: ["up"],
};
