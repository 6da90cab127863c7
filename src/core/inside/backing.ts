/** A backing: a layer of colour at the skin beyond a plane, on the side away from the dop. */
import { RANGES } from "../plan/limits.ts";
import { colour, mm, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { BACKING } from "./scene-design.ts";

export const BACKING_FIELDS = { heightMm: mm(RANGES.heightMm), rgb: colour, ...PLACE } as const;

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
