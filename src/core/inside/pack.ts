/** A design of a plan as bodies that light meets. */
import type { Rasters } from "../optics/raster.ts";
import type { Rgb } from "../optics/spectrum.ts";
import type { InsideDesign, Piece } from "../plan/document.ts";
import type { InsideKind, InsideRecord } from "./record.ts";
import { INSIDE } from "./records.ts";
import { axesOf, type Packing, PICTURE_CORE, PICTURE_DISC, type SceneDesign } from "./scene-design.ts";

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
    more: [],
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
