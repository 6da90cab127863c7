/** A plan with a photograph of the maker's own piece in it. */
import { encode } from "fast-png";
import type { InsideDesign, Piece, Plan, Side } from "../plan/document.ts";
import { RANGES } from "../plan/limits.ts";
import { pictureUrl } from "../plan/pictures.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "./glasses.ts";
import { insideFromPhoto, largestShown, mirrored, type Outline, type PhotoSetting } from "./photo.ts";
import type { Raster } from "./raster.ts";

export interface PhotoWish {
  readonly outline: Outline;
  /** Camera from the ball's centre. */
  readonly distanceMm: number;
  readonly side: Side;
  readonly shape: "disc" | "core";
  /** z of the middle, in the piece's axes. */
  readonly depthMm: number;
  /** null = that of the picture that stands there, else the largest that the glass shows. */
  readonly diameterMm: number | null;
}

type Picture = InsideDesign & { readonly kind: "picture" };

/** Pixels along the edge of a picture made from a photograph, or the photograph's own if less. */
const MOST_ACROSS = 512;
/** Places closer than this are one, mm. */
const SAME_MM = 1e-6;

/** The turn that sets a picture upright to the piece's own axes, whatever the ink mark says. */
const uprightDeg = ({ inkMarkDeg = 0 }: Piece): number => -inkMarkDeg;

function standsThere(design: InsideDesign, piece: Piece, wish: PhotoWish): design is Picture {
  if (design.kind !== "picture" || design.shape !== wish.shape) return false;
  const near = (a: number, b: number) => Math.abs(a - b) <= SAME_MM;
  const [x, y, z] = design.atMm;
  const isUpright = ((design.turnDeg ?? 0) - uprightDeg(piece)) % 360 === 0 && (design.tiltDeg ?? 0) === 0;
  const hasSize = wish.diameterMm === null || near(wish.diameterMm, design.diameterMm);
  return isUpright && hasSize && near(x, 0) && near(y, 0) && near(z, wish.depthMm);
}

/** A disc lies in the ball whole, and so does a ball. */
export const largestInGlassMm = (radiusMm: number, { shape, depthMm }: PhotoWish): number =>
  shape === "core"
    ? 2 * (radiusMm - Math.abs(depthMm))
    : 2 * Math.sqrt(Math.max(0, radiusMm * radiusMm - depthMm * depthMm));

function freeId(plan: Plan): string {
  const taken = new Set([
    ...Object.keys(plan.pictures ?? {}),
    ...(plan.piece.inside ?? []).flatMap((d) =>
      d.kind === "picture" ? [d.picture, d.back ?? d.picture] : [],
    ),
  ]);
  for (let k = 1; ; k++) if (!taken.has(`photo-${k}`)) return `photo-${k}`;
}

/**
 * The plan with the photograph inside it. From the back it becomes the other side of a picture that stands at the same place; a
 * picture from the back alone is kept as it would be seen from the front, painted on a thin sheet.
 */
export function withPhoto(plan: Plan, photo: Raster, wish: PhotoWish): Plan {
  const { piece } = plan;
  const radiusMm = piece.diameterMm / 2;
  const inside = piece.inside ?? [];
  const isBack = wish.side === "back";
  const there = isBack ? inside.findIndex((design) => standsThere(design, piece, wish)) : -1;
  const other = there >= 0 ? (inside[there] as Picture) : null;
  const setting: PhotoSetting = {
    distance: wish.distanceMm / radiusMm,
    index: indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM),
    shape: wish.shape,
    depth: ((isBack ? -1 : 1) * wish.depthMm) / radiusMm,
  };
  const diameterMm = wish.diameterMm ?? other?.diameterMm ?? 2 * radiusMm * largestShown(setting);
  const size = Math.max(1, Math.min(MOST_ACROSS, photo.width));
  const seen = insideFromPhoto(photo, wish.outline, setting, diameterMm / 2 / radiusMm, size);
  const { width, height, rgba } = isBack && !other ? mirrored(seen) : seen;
  const bytes = encode({ width, height, data: rgba, channels: 4, depth: 8 });
  const id = freeId(plan);
  const turnDeg = uprightDeg(piece);
  const item: Picture = other
    ? { ...other, back: id }
    : {
        kind: "picture",
        shape: wish.shape,
        diameterMm: Math.min(diameterMm, RANGES.sizeMm.max),
        atMm: [0, 0, wish.depthMm],
        ...(turnDeg === 0 ? {} : { turnDeg }),
        picture: id,
      };
  return {
    ...plan,
    piece: { ...piece, inside: other ? inside.map((d, i) => (i === there ? item : d)) : [...inside, item] },
    pictures: { ...plan.pictures, [id]: pictureUrl({ kind: "png", bytes }) },
  };
}
