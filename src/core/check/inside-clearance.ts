/**
 * How much glass is left between a facet's plane and the designs inside: h minus how far the design reaches along the
 * normal, which each kind of body tells for itself (`core/inside/`).
 */

import { dot, type Vec3 } from "../geometry/vec.ts";
import { packDesign } from "../inside/pack.ts";
import { REACHES } from "../inside/records.ts";
import { BACKING, type SceneDesign } from "../inside/scene-design.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "../optics/glasses.ts";
import type { Piece } from "../plan/document.ts";

/** The greatest n.p over the design, unit sphere. */
export const reachOf = (design: SceneDesign, n: Vec3): number =>
  dot(design.centre, n) +
  REACHES[design.kind](design, dot(design.axisX, n), dot(design.axisY, n), dot(design.axisZ, n));

/** The designs that a facet must keep clear of; a backing lies at the skin and is meant to be cut. */
export function designsToClear(piece: Piece): SceneDesign[] {
  const nd = indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM);
  return (piece.inside ?? [])
    .flatMap((design) => packDesign(piece, design, nd))
    .filter((d) => d.kind !== BACKING);
}
