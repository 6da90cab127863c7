/** A swirl: arms wound from the middle outwards, in a funnel that opens to the front. */
import { RANGES } from "../plan/limits.ts";
import { colour, count, maybe, mm, PLACE } from "./fields.ts";
import { MELT, melted, thickness } from "./melt.ts";
import type { InsideRecord } from "./record.ts";
import { SWIRL } from "./scene-design.ts";

export const SWIRL_FIELDS = {
  arms: count(RANGES.arms),
  /** Turns of an arm from its end to the middle; below 0 the other way round. */
  turns: count(RANGES.ribbonTurns, 0.25),
  diameterMm: mm(RANGES.sizeMm),
  depthMm: mm(RANGES.sizeMm),
  thicknessMm: mm(RANGES.sizeMm),
  rgb: colour,
  rgb2: maybe(colour),
  ...MELT,
  ...PLACE,
} as const;

export const swirl: InsideRecord<"swirl"> = {
  // size: radius, half height, thickness; shape: arms, radians of an arm, depth of the funnel.
  pack: (design, { toUnit, base }) => {
    const thick = thickness(design.thicknessMm, toUnit);
    const depth = design.depthMm * toUnit;
    const shape = [design.arms, 2 * Math.PI * design.turns, depth];
    const size = [(design.diameterMm * toUnit) / 2, (depth + thick) / 2, thick] as const;
    return [{ ...base, ...melted(design, toUnit, shape), kind: SWIRL, size }];
  },
  first: (share) => ({
    kind: "swirl",
    arms: 5,
    turns: 0.6,
    diameterMm: share(0.55),
    depthMm: share(0.22),
    thicknessMm: Math.max(1, share(0.05)),
    rgb: [0.03, 0.1, 0.36],
    rgb2: [0.25, 0.6, 0.62],
    fadeMm: 0.4,
    milky: 0.35,
    irregularity: 0.25,
    seed: 1,
  }),
  moves: ["up", "tiltDeg", "turnDeg"],
};
