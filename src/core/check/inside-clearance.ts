/**
 * How much glass is left between a facet's plane and the designs inside: h minus how far the design reaches along the
 * normal. Ball and
 * ellipsoid exactly; a ribbon as the rod it twists in, petals as the drum that holds their bowl, speckle as the ball of its grains.
 */

import { dot, type Vec3 } from "../geometry/vec.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "../optics/glasses.ts";
import {
  BACKING,
  PETALS,
  PICTURE_DISC,
  packDesign,
  RIBBON,
  type SceneDesign,
  SPECKLE,
} from "../optics/inside.ts";
import type { Piece } from "../plan/document.ts";

/** The greatest n.p over the design, unit sphere. */
export function reachOf(design: SceneDesign, n: Vec3): number {
  const centre = dot(design.centre, n);
  const z = dot(design.axisZ, n);
  const level = Math.sqrt(Math.max(0, 1 - z * z));
  const [sx, sy, sz] = design.size;
  switch (design.kind) {
    case SPECKLE:
      return centre + sx + sy;
    case RIBBON:
      return centre + sz * Math.abs(z) + Math.hypot(sx, sy) * level;
    case PICTURE_DISC:
      return centre + sx * level;
    case PETALS:
      return centre + sx * level + (sy / 2) * Math.abs(z) + sz;
    default:
      return centre + Math.hypot(sx * dot(design.axisX, n), sy * dot(design.axisY, n), sz * z);
  }
}

/** The designs that a facet must keep clear of; a backing lies at the skin and is meant to be cut. */
export function designsToClear(piece: Piece): SceneDesign[] {
  const nd = indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM);
  return (piece.inside ?? [])
    .map((design) => packDesign(piece, design, nd))
    .filter((d) => d.kind !== BACKING);
}
