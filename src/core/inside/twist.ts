/** A cane twist: strands wound about an axis, a veil of fine threads over them if wished. */
import { RANGES } from "../plan/limits.ts";
import { colour, count, maybe, mm, PLACE } from "./fields.ts";
import { MELT, melted, thickness } from "./melt.ts";
import type { InsideRecord } from "./record.ts";
import { TWIST } from "./scene-design.ts";

export const TWIST_FIELDS = {
  strands: count(RANGES.strands),
  strandMm: mm(RANGES.sizeMm),
  diameterMm: mm(RANGES.sizeMm),
  lengthMm: mm(RANGES.sizeMm),
  /** Length of one full turn. */
  pitchMm: mm(RANGES.sizeMm),
  /** 0 a rod .. 1 a point at the back. */
  taper: maybe(count(RANGES.unit, 0.05), 0),
  /** Fine threads, of the second colour. */
  veil: maybe(count(RANGES.threads), 0),
  rgb: colour,
  rgb2: maybe(colour),
  ...MELT,
  ...PLACE,
} as const;

export const twist: InsideRecord<"twist"> = {
  // size: radius of the cane, half length, thickness of a strand; shape: radians per unit length, strands, taper, threads.
  pack: (design, { toUnit, base }) => {
    const radius = (design.diameterMm * toUnit) / 2;
    const thick = Math.min(2 * radius, thickness(design.strandMm, toUnit));
    const rate = (2 * Math.PI) / (design.pitchMm * toUnit);
    const shape = [rate, design.strands, design.taper ?? 0, design.veil ?? 0];
    const size = [radius, (design.lengthMm * toUnit) / 2, thick] as const;
    return [{ ...base, ...melted(design, toUnit, shape), kind: TWIST, size }];
  },
  first: (share) => ({
    kind: "twist",
    strands: 3,
    strandMm: Math.max(1, share(0.06)),
    diameterMm: share(0.2),
    lengthMm: share(0.6),
    pitchMm: share(0.35),
    taper: 0.3,
    veil: 9,
    rgb: [0.02, 0.13, 0.42],
    rgb2: [0.92, 0.9, 0.84],
    fadeMm: 0.3,
    milky: 0.4,
    irregularity: 0.2,
    seed: 1,
  }),
  moves: ["up", "tiltDeg", "turnDeg"],
};
