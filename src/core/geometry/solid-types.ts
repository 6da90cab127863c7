/**
 * What the exact solid says of a ball cut by half-spaces. Everything on the unit sphere, in radians;
 * indices are positions in the list of planes. Outlines run counter-clockwise seen from outside.
 */
import type { FacetFrame, Plane } from "./plane.ts";
import type { Vec3 } from "./vec.ts";

/** Marks an arc: its neighbour is the round skin, not a plane. */
export const SKIN = -1;

export interface OutlinePiece {
  readonly kind: "line" | "arc";
  readonly from: Vec3;
  /** Equal to `from` for a whole circle, which is one arc. */
  readonly to: Vec3;
  /** The plane on the other side of a line, SKIN for an arc. */
  readonly with: number;
  readonly length: number;
}

export interface SolidFacet {
  readonly plane: Plane;
  readonly frame: FacetFrame;
  /** True when nothing of the plane is left on the solid; then outline is empty and every size exactly 0. */
  readonly swallowed: boolean;
  /** Index of the earlier plane that this one coincides with, or -1. */
  readonly duplicateOf: number;
  readonly outline: readonly OutlinePiece[];
  readonly area: number;
  readonly perimeter: number;
  /** Extent across and along the meridian, arcs included. */
  readonly width: number;
  readonly height: number;
  readonly centroid: Vec3;
}

/** A straight edge shared by two facets, a < b. */
export interface SolidEdge {
  readonly a: number;
  readonly b: number;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly length: number;
}

/** A true vertex of the solid: three or more planes meet there, strictly inside the ball or on it. */
export interface SolidVertex {
  readonly at: Vec3;
  readonly facets: readonly number[];
}

/** One connected patch of round skin left between facets. */
export interface SkinPatch {
  /** Planes that border it, ascending. Empty for the whole uncut sphere. */
  readonly facets: readonly number[];
  readonly area: number;
  /** Boundary loops: each a ring of arcs, as `(plane, from, to)` with the skin on the left seen from outside. */
  readonly loops: readonly (readonly { readonly plane: number; readonly from: Vec3; readonly to: Vec3 }[])[];
}

export interface Solid {
  readonly facets: readonly SolidFacet[];
  readonly edges: readonly SolidEdge[];
  readonly vertices: readonly SolidVertex[];
  readonly patches: readonly SkinPatch[];
  readonly volume: number;
  readonly facetArea: number;
  readonly skinArea: number;
  /** Centre of mass; the origin when nothing is left. */
  readonly centroid: Vec3;
  /** True when the planes leave nothing of the ball. */
  readonly vanished: boolean;
}
