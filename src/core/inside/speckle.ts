/** A speckle: grains of colour strewn in a ball. */
import { RANGES } from "../plan/limits.ts";
import { colour, count, maybe, mm, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { SPECKLE } from "./scene-design.ts";

export const SPECKLE_FIELDS = {
  count: count(RANGES.speckles, 10),
  grainMm: mm(RANGES.sizeMm),
  diameterMm: mm(RANGES.sizeMm),
  rgb: colour,
  seed: maybe(count(RANGES.seed)),
  ...PLACE,
} as const;

export const speckle: InsideRecord<"speckle"> = {
  // size: radius of a grain, of the ball that holds them, edge of the cubes with one grain each; extra: seed.
  pack: (design, { toUnit, base }) => {
    const ball = (design.diameterMm * toUnit) / 2;
    const cell = ball * Math.cbrt((4 / 3) * (Math.PI / design.count));
    const grain = Math.min((design.grainMm * toUnit) / 2, cell / 2);
    return [{ ...base, kind: SPECKLE, size: [grain, ball, cell], extra: design.seed ?? 1 }];
  },
  first: (share) => ({
    kind: "speckle",
    count: 60,
    grainMm: 0.5,
    diameterMm: share(0.5),
    rgb: [0.7, 0.72, 0.75],
  }),
  moves: ["up"],
};
