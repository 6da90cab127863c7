/** Petals: a bowl of a thin sheet, open towards +z, with a rosette for its outline. */
import type { Vec3 } from "../geometry/vec.ts";
import type { Rgb } from "../optics/spectrum.ts";
import { RANGES } from "../plan/limits.ts";
import { colour, count, maybe, mm, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { type Body, PETALS, type SceneDesign } from "./scene-design.ts";
import { hitSheet, type Sheet, THINNEST } from "./sheet.ts";

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

/** How far the clefts between petals reach in, and how steep their sides may get (per petal): shape constants of ours. */
const CLEFT = 0.4;
const CLEFT_SLOPE = 0.35;

/** Distance to a bowl of petals, open towards +z: a paraboloid sheet within a rosette outline; shrunk so that it never overshoots. */
function petalsDistance(s: SceneDesign, p: Vec3): number {
  const [radius, depth, thick] = s.size;
  const r = Math.sqrt(p[0] * p[0] + p[1] * p[1]);
  const lobe = Math.abs(Math.cos(0.5 * s.extra * Math.atan2(p[1], p[0])));
  const edge = radius * (1 - CLEFT * (1 - lobe));
  const level = depth * ((r / radius) * (r / radius) - 0.5);
  const slope = (2 * depth * Math.min(r, radius)) / (radius * radius);
  const sheet = (Math.abs(p[2] - level) - thick) / Math.sqrt(1 + slope * slope);
  const outline = (r - edge) / Math.sqrt(1 + (CLEFT_SLOPE * s.extra) ** 2);
  return Math.max(sheet, outline);
}

const SHEET: Sheet = {
  distance: petalsDistance,
  // fading to the second colour towards the tips
  colour: (s, p) => {
    const t = Math.min(1, Math.sqrt(p[0] * p[0] + p[1] * p[1]) / s.size[0]);
    return [0, 1, 2].map((c) => s.rgb[c] + (s.rgb2[c] - s.rgb[c]) * t) as unknown as Rgb;
  },
  ball: ({ size }) => Math.sqrt(size[0] ** 2 + (0.5 * size[1] + size[2]) ** 2),
};

/** They reach as far as the drum that holds their bowl. */
export const bowl: Body = {
  hit: (s, o, d, tMax, from) => hitSheet(SHEET, s, o, d, tMax, from >= 0),
  reach: ({ size }, x, y, z) => size[0] * Math.hypot(x, y) + (size[1] / 2) * Math.abs(z) + size[2],
};

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
