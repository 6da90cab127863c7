/** What is in the glass, as the tracer meets it. What each kind is made of stands in `core/inside/`, one file a kind. */
import type { Vec3 } from "../geometry/vec.ts";
import type { InsideKind, InsideRecord } from "../inside/record.ts";
import { BODIES, INSIDE } from "../inside/records.ts";
import {
  axesOf,
  type DesignHit,
  type Packing,
  PICTURE_CORE,
  PICTURE_DISC,
  type SceneDesign,
} from "../inside/scene-design.ts";
import type { InsideDesign, Piece } from "../plan/document.ts";
import type { Random } from "./random.ts";
import type { Rasters } from "./raster.ts";
import type { Rgb } from "./spectrum.ts";

export { bubbleExit, bubbleNormal } from "../inside/bubble.ts";
export { isWithin, lengthWithin } from "../inside/ellipsoid.ts";
export {
  BACKING,
  BUBBLE,
  CORE,
  type DesignHit,
  type Faces,
  PETALS,
  PICTURE_DISC,
  RIBBON,
  type SceneDesign,
  SPECKLE,
  TINTED_CORE,
} from "../inside/scene-design.ts";

const WHITE: Rgb = [1, 1, 1];

/** The bodies of one design as the tracer wants them; sizes typed as seen are converted by `nd` of the glass. */
export function packDesign(
  piece: Piece,
  design: InsideDesign,
  nd: number,
  rasters: Rasters = new Map(),
): readonly SceneDesign[] {
  const toUnit = 2 / piece.diameterMm;
  const at = design.atMm ?? [0, 0, 0];
  const rgb = "rgb" in design ? design.rgb : WHITE;
  const base: Packing["base"] = {
    centre: [at[0] * toUnit, at[1] * toUnit, at[2] * toUnit],
    ...axesOf(piece, design),
    extra: 0,
    rgb,
    rgb2: ("rgb2" in design ? design.rgb2 : undefined) ?? rgb,
    faces: null,
  };
  return recordOf(design.kind).pack(design, { piece, nd, rasters, toUnit, base });
}

/** A record for any design: the table pairs each kind with its own, which the compiler can't follow through a union. */
const recordOf = (kind: InsideKind) => INSIDE[kind] as unknown as InsideRecord<InsideKind>;

/** The designs of a piece that are there: a picture without pixels is not. */
export const packDesigns = (piece: Piece, nd: number, rasters: Rasters): SceneDesign[] =>
  (piece.inside ?? [])
    .flatMap((design) => packDesign(piece, design, nd, rasters))
    .filter(({ kind, faces }) => faces !== null || (kind !== PICTURE_DISC && kind !== PICTURE_CORE));

/**
 * Where a ray first meets a design within 0 <= t < tMax; null when it misses. Tinted cores have no surface.
 * @param from the grain it just left (0 for anything but speckles), or -1 when it comes from elsewhere
 * @param random decides whether a half-transparent place of a picture is met; null = it is when more than half of it is there
 */
export const hitDesign = (
  s: SceneDesign,
  o: Vec3,
  d: Vec3,
  tMax: number,
  from: number,
  random: Random | null = null,
): DesignHit | null => BODIES[s.kind].hit(s, o, d, tMax, from, random);
