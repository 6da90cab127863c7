/** A picture: pixels on a round sheet across the axis, or on a ball painted along it. Alpha is the chance to be met. */
import type { Rasters } from "../optics/raster.ts";
import { RANGES } from "../plan/limits.ts";
import { id, maybe, mm, oneOf, PLACE, point } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { type Faces, PICTURE_CORE, PICTURE_DISC } from "./scene-design.ts";

export const PICTURE_FIELDS = {
  /** A round sheet across its axis, or a ball with both halves painted along its axis. */
  shape: oneOf("disc", "core"),
  diameterMm: mm(RANGES.sizeMm),
  /** Id of a picture in `Plan.pictures`: what is seen from the front, upright with +x to the right. */
  picture: id,
  /** What is seen from the back, upright with -x to the right; missing = the front's picture from behind. */
  back: maybe(id),
  ...PLACE,
  atMm: point,
} as const;

/** What a picture shows; null when neither side has anything. */
function facesOf(
  design: { readonly picture: string; readonly back?: string },
  rasters: Rasters,
): Faces | null {
  const front = rasters.get(design.picture) ?? null;
  const back = design.back === undefined ? "through" : (rasters.get(design.back) ?? null);
  return front || (back && back !== "through") ? { front, back } : null;
}

export const picture: InsideRecord<"picture"> = {
  // size: radius of disc or ball, thrice for a ball; extra: 1 where the back has a picture of its own.
  pack: (design, { toUnit, rasters, base }) => {
    const r = (design.diameterMm * toUnit) / 2;
    const own = { extra: design.back === undefined ? 0 : 1, faces: facesOf(design, rasters) };
    return [
      design.shape === "disc"
        ? { ...base, ...own, kind: PICTURE_DISC, size: [r, r, 0] }
        : { ...base, ...own, kind: PICTURE_CORE, size: [r, r, r] },
    ];
  },
  // it comes with a photograph
  first: null,
  moves: ["up", "tiltDeg", "turnDeg"],
};
