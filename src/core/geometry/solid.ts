/**
 * The exact solid: a unit ball cut by half-spaces, in closed form. Outlines as lines and arcs, areas by Green's
 * theorem, round skin by Gauss-Bonnet, volume as cones from the centre: sum of h A / 3 + S / 3.
 * Every number a person reads comes from here, and none leaves before `solid-check.ts` has looked at the whole.
 */
import { type BallCut, cutOn, type Face, uncutBall } from "./cut.ts";
import { InexactCut } from "./inexact-cut.ts";
import { type Outlines, outlinesOf } from "./outlines.ts";
import type { Plane } from "./plane.ts";
import { patchesOf } from "./skin.ts";
import { checkOutlines, checkSizes } from "./solid-check.ts";
import { facetOf } from "./solid-facet.ts";
import type { SkinPatch, Solid, SolidEdge, SolidFacet, SolidVertex } from "./solid-types.ts";
import { ON_PLANE, WIDER_ON_PLANE } from "./tolerance.ts";
import { addScaled, scale, type Vec3 } from "./vec.ts";

const ORIGIN: Vec3 = [0, 0, 0];

/** Each shared edge once; an edge counts when the facet with the lower index has it. */
function edgesOf(facets: readonly SolidFacet[]): SolidEdge[] {
  return facets.flatMap((facet, a) =>
    facet.outline.flatMap((piece) =>
      piece.kind === "line" && piece.with > a
        ? [{ a, b: piece.with, from: piece.from, to: piece.to, length: piece.length }]
        : [],
    ),
  );
}

/** Places where three or more outlines have a vertex. */
function verticesOf(faces: readonly Face[], places: readonly Vec3[]): SolidVertex[] {
  const at = new Map<number, number[]>();
  faces.forEach((face, k) => {
    if (face === null || face === "whole") return;
    for (const id of face.places) {
      const own = at.get(id);
      if (!own) at.set(id, [k]);
      else if (own[own.length - 1] !== k) own.push(k);
    }
  });
  return [...at].flatMap(([id, facets]) => (facets.length < 3 ? [] : [{ at: places[id], facets }]));
}

/** Volume and its first moment: cones over the facets, sectors over the skin (whose vector area closes the facets'). */
function massOf(facets: readonly SolidFacet[], skinArea: number): { volume: number; centroid: Vec3 } {
  let volume = skinArea / 3;
  let moment: Vec3 = ORIGIN;
  for (const { plane, area, centroid } of facets) {
    volume += (plane.h * area) / 3;
    moment = addScaled(moment, centroid, (plane.h * area) / 4);
    moment = addScaled(moment, plane.n, -area / 4);
  }
  return { volume, centroid: volume > 0 ? scale(moment, 1 / volume) : ORIGIN };
}

/** Tries again with places taken as on a plane from farther off, where the usual distance leads to a contradiction. */
export function withWiderSteps<T>(attempt: (onPlane: number) => T): T {
  for (const onPlane of [ON_PLANE, ...WIDER_ON_PLANE.slice(0, -1)]) {
    try {
      return attempt(onPlane);
    } catch (error) {
      if (!(error instanceof InexactCut)) throw error;
    }
  }
  return attempt(WIDER_ON_PLANE[WIDER_ON_PLANE.length - 1]);
}

export function cutAll(planes: readonly Plane[], onPlane: number): BallCut {
  const cut = uncutBall(onPlane);
  for (const plane of planes) cutOn(cut, plane);
  return cut;
}

/**
 * What borders what once all planes have cut: enough to ask which facets are left and where skin is.
 * @throws InexactCut
 */
export function bordersOf(cut: BallCut): { outlines: Outlines; patches: SkinPatch[] } {
  const outlines = outlinesOf(cut);
  const patches = patchesOf(outlines, cut.vanished);
  checkOutlines(outlines, patches);
  return { outlines, patches };
}

function solidOf(cut: BallCut): Solid {
  const { outlines, patches } = bordersOf(cut);
  const { planes, faces, places } = outlines;
  const facets = planes.map((plane, k) => facetOf(plane, faces[k], places, cut.duplicateOf[k]));
  const facetArea = facets.reduce((sum, f) => sum + f.area, 0);
  const skinArea = patches.reduce((sum, p) => sum + p.area, 0);
  const { volume, centroid } = massOf(facets, skinArea);
  const solid: Solid = {
    facets,
    edges: edgesOf(facets),
    vertices: verticesOf(faces, places),
    patches,
    volume,
    facetArea,
    skinArea,
    centroid,
    vanished: facetArea === 0 && skinArea === 0,
  };
  return checkSizes(solid, outlines);
}

/**
 * Cuts the unit ball by planes.
 * @param planes unit normals and signed distances, any number; each keeps n.x <= h
 * Degenerate planes are answers: one that misses or only touches is swallowed, a coincident one is swallowed by the
 * earlier, a plane at h <= -1 (or opposite planes that exclude each other) leaves nothing and `vanished` is true.
 * @throws InexactCut when the solid found breaks a law that every solid keeps
 */
export const cutBall = (planes: readonly Plane[]): Solid =>
  withWiderSteps((onPlane) => solidOf(cutAll(planes, onPlane)));
