/** A ribbon: a flat band, twisted about its own axis, of one colour on each side. */
import type { Vec3 } from "../geometry/vec.ts";
import { RANGES } from "../plan/limits.ts";
import { colour, count, maybe, mm, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { type Body, RIBBON, type SceneDesign } from "./scene-design.ts";
import { hitSheet, type Sheet, THINNEST } from "./sheet.ts";

export const RIBBON_FIELDS = {
  widthMm: mm(RANGES.sizeMm),
  lengthMm: mm(RANGES.sizeMm),
  thicknessMm: mm(RANGES.sizeMm),
  turns: count(RANGES.ribbonTurns, 0.25),
  rgb: colour,
  rgb2: maybe(colour),
  ...PLACE,
} as const;

/** Distance to a twisted ribbon: untwist, then a box; shrunk so that it never overshoots. */
function ribbonDistance(s: SceneDesign, p: Vec3): number {
  const angle = s.extra * p[2];
  const [c, n] = [Math.cos(angle), Math.sin(angle)];
  const x = Math.abs(c * p[0] + n * p[1]) - s.size[0];
  const y = Math.abs(-n * p[0] + c * p[1]) - s.size[1];
  const z = Math.abs(p[2]) - s.size[2];
  const [ox, oy, oz] = [Math.max(x, 0), Math.max(y, 0), Math.max(z, 0)];
  const box = Math.sqrt(ox * ox + oy * oy + oz * oz) + Math.min(0, Math.max(x, y, z));
  const reach = Math.min(1, Math.sqrt(p[0] * p[0] + p[1] * p[1]));
  return box / Math.sqrt(1 + (s.extra * reach) ** 2);
}

const SHEET: Sheet = {
  distance: ribbonDistance,
  // its second colour on its far side
  colour: (s, p) => {
    const angle = s.extra * p[2];
    return -Math.sin(angle) * p[0] + Math.cos(angle) * p[1] >= 0 ? s.rgb : s.rgb2;
  },
  ball: ({ size }) => Math.sqrt(size[0] ** 2 + size[1] ** 2 + size[2] ** 2),
};

/** It reaches as far as the rod that it twists in. */
export const band: Body = {
  hit: (s, o, d, tMax, from) => hitSheet(SHEET, s, o, d, tMax, from >= 0),
  reach: ({ size }, x, y, z) => size[2] * Math.abs(z) + Math.hypot(size[0], size[1]) * Math.hypot(x, y),
};

export const ribbon: InsideRecord<"ribbon"> = {
  // size: half width, half thickness, half length; extra: radians of twist per unit length.
  pack: (design, { toUnit, base }) => {
    const half = (design.lengthMm * toUnit) / 2;
    const thick = Math.max(THINNEST, design.thicknessMm * toUnit) / 2;
    return [
      {
        ...base,
        kind: RIBBON,
        size: [(design.widthMm * toUnit) / 2, thick, half],
        extra: (Math.PI * design.turns) / half,
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
  }),
  moves: ["up", "tiltDeg", "turnDeg"],
};
