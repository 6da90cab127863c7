/**
 * A design as the tracer meets it: in unit-sphere lengths, in a frame of its own. Origin at its centre, z along its axis; tilt
 * turns z away from the piece's +z, turn counts from the ink mark.
 */
import { dot, type Vec3 } from "../geometry/vec.ts";
import type { Random } from "../optics/random.ts";
import type { Raster, Rasters } from "../optics/raster.ts";
import type { Rgb } from "../optics/spectrum.ts";
import type { Piece, Placement } from "../plan/document.ts";
import type { BodyNumber } from "./records.ts";

/**
 * Bodies that light meets, as the shaders number them: what a plan calls one kind may be one of several, or many of one. One that a
 * single kind has may have its number in that kind's file. All are told together in `records.ts`.
 */
export const CORE = 0;
export const TINTED_CORE = 1;
export const BUBBLE = 2;
export const RIBBON = 3;
export const PETALS = 4;
export const BACKING = 5;
export const SPECKLE = 6;
export const PICTURE_DISC = 7;
export const PICTURE_CORE = 8;
export const TWIST = 9;
export const MELTED_RIBBON = 10;
export const MELTED_PETALS = 11;
export const SWIRL = 12;

/** What a picture shows on either side; null where its picture is missing: nothing is there. */
export interface Faces {
  readonly front: Raster | null;
  /** "through" = the front's picture as painted on a thin sheet. */
  readonly back: Raster | null | "through";
}

/** One design in unit-sphere lengths. What `size` and `extra` mean depends on `kind`, see where it is packed. */
export interface SceneDesign {
  readonly kind: BodyNumber;
  readonly centre: Vec3;
  /** Directions of the design's own x, y, z in the piece's axes. */
  readonly axisX: Vec3;
  readonly axisY: Vec3;
  readonly axisZ: Vec3;
  readonly size: Vec3;
  readonly extra: number;
  /**
   * Of coloured glass melted into the piece, see `media.ts`: over which length its density falls off, how irregular it is (0 .. 1), four
   * numbers of its shape, three phases by its seed. Of all others nothing.
   */
  readonly more: readonly number[];
  readonly rgb: Rgb;
  readonly rgb2: Rgb;
  /** Of a picture; null for all others, and for a picture whose pixels nobody asked for. */
  readonly faces: Faces | null;
}

/** Where a ray meets a design: distance, outward normal, colour there, and which grain of a speckle. */
export interface DesignHit {
  readonly t: number;
  readonly n: Vec3;
  readonly rgb: Rgb;
  readonly grain: number;
}

/**
 * Where a ray first meets a body within 0 <= t < tMax; null when it misses.
 * @param from the grain it just left (0 for anything but speckles), or -1 when it comes from elsewhere
 * @param random decides what is left to chance; null = the likelier of both
 */
export type Hit = (
  s: SceneDesign,
  o: Vec3,
  d: Vec3,
  tMax: number,
  from: number,
  random: Random | null,
) => DesignHit | null;

/**
 * The greatest n.p over a body in its own frame, for a unit normal n with the components `x, y, z` along its axes; an upper
 * bound where the body has no closed form.
 */
export type Reach = (s: SceneDesign, x: number, y: number, z: number) => number;

/** Sheets are no thinner than this, so that marching can't step over them. */
export const THINNEST = 0.004;

/** How far irregularity pushes a melted shape, as a share of its longer half. */
export const PUSH = 0.1;
export const longer = ({ size }: SceneDesign): number => Math.max(size[0], size[1]);
/** Room around a melted shape for that. */
export const pushOf = (s: SceneDesign): number => 1.5 * PUSH * s.more[1] * longer(s);

/** What a design is packed from. */
export interface Packing {
  readonly piece: Piece;
  /** Index of the glass at the d line: sizes typed as seen are converted by it. */
  readonly nd: number;
  readonly rasters: Rasters;
  /** Unit-sphere lengths of a mm. */
  readonly toUnit: number;
  /** Centre, frame and colours as most designs have them; without size. */
  readonly base: Omit<SceneDesign, "kind" | "size">;
}

/** Axes of a design: turned about +z by the ink mark's azimuth and its own turn, after its z was tilted towards that azimuth. */
export function axesOf(piece: Piece, place: Placement): Pick<SceneDesign, "axisX" | "axisY" | "axisZ"> {
  const turn = (((piece.inkMarkDeg ?? 0) + (place.turnDeg ?? 0)) * Math.PI) / 180;
  const tilt = ((place.tiltDeg ?? 0) * Math.PI) / 180;
  const [ct, st, cp, sp] = [Math.cos(tilt), Math.sin(tilt), Math.cos(turn), Math.sin(turn)];
  return { axisX: [ct * cp, ct * sp, -st], axisY: [-sp, cp, 0], axisZ: [st * cp, st * sp, ct] };
}

export const toLocal = (s: SceneDesign, p: Vec3): Vec3 => {
  const q: Vec3 = [p[0] - s.centre[0], p[1] - s.centre[1], p[2] - s.centre[2]];
  return [dot(q, s.axisX), dot(q, s.axisY), dot(q, s.axisZ)];
};
export const turnToLocal = (s: SceneDesign, d: Vec3): Vec3 => [
  dot(d, s.axisX),
  dot(d, s.axisY),
  dot(d, s.axisZ),
];
export const turnToWorld = (s: SceneDesign, v: Vec3): Vec3 => [
  v[0] * s.axisX[0] + v[1] * s.axisY[0] + v[2] * s.axisZ[0],
  v[0] * s.axisX[1] + v[1] * s.axisY[1] + v[2] * s.axisZ[1],
  v[0] * s.axisX[2] + v[1] * s.axisY[2] + v[2] * s.axisZ[2],
];
