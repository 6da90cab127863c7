/** A backing: a layer of colour at the skin beyond a plane, on the side away from the dop. */
import { dot, type Vec3 } from "../geometry/vec.ts";
import { RANGES } from "../plan/limits.ts";
import { colour, mm, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { BACKING, type Body, type Hit } from "./scene-design.ts";

export const BACKING_FIELDS = { heightMm: mm(RANGES.heightMm), rgb: colour, ...PLACE } as const;

const hitBacking: Hit = (s, o, d, tMax, from) => {
  if (from >= 0) return null;
  const n: Vec3 = [-s.axisZ[0], -s.axisZ[1], -s.axisZ[2]];
  const depth = dot(s.axisZ, o) - s.size[0];
  if (depth >= 0) return { t: 0, n: [-d[0], -d[1], -d[2]], rgb: s.rgb, grain: 0 };
  const towards = dot(s.axisZ, d);
  if (towards <= 0) return null;
  const t = -depth / towards;
  return t < tMax ? { t, n, rgb: s.rgb, grain: 0 } : null;
};

/** It lies at the skin and is meant to be cut: nobody asks how far it reaches. */
export const layerBehind: Body = { hit: hitBacking, reach: () => 1 };

export const backing: InsideRecord<"backing"> = {
  // size[0]: distance of the layer's face from the centre, along axisZ away from the dop.
  pack: (design, { piece, toUnit, base }) => {
    const back = (piece.dop?.side ?? "back") === "back" ? 1 : -1;
    const { axisZ } = base;
    return [
      {
        ...base,
        kind: BACKING,
        size: [1 - design.heightMm * toUnit, 0, 0],
        axisZ: [-back * axisZ[0], -back * axisZ[1], -back * axisZ[2]],
      },
    ];
  },
  first: (share) => ({ kind: "backing", heightMm: share(0.15), rgb: [0.02, 0.02, 0.03] }),
  moves: ["tiltDeg", "turnDeg"],
};
