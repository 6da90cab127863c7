/**
 * From where the piece is seen. The eye goes around the piece like a hand turning it: azimuth and elevation as in the plan
 * (azimuth 0 at +x, elevation 90 looks at the front pole), distance in radii of the piece.
 */
import { addScaled, dot, scale, type Vec3 } from "../../core/geometry/vec.ts";

export interface Orbit {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly distance: number;
  /** Shift of the piece on the screen, in radii, to the right and up. */
  readonly panX: number;
  readonly panY: number;
  /** What the piece lies on, if anything: then azimuth and elevation count from that. */
  readonly stand?: Stand;
}

/** A table's own axes in the piece's, right-handed: azimuth counts from `along` to `across`, elevation towards `up`. */
export interface Stand {
  readonly along: Vec3;
  readonly across: Vec3;
  readonly up: Vec3;
}

/** Full angle of view across the shorter side of the picture. */
export const FIELD_DEG = 28;
const NEAREST = 1.6;
const FARTHEST = 14;
const HOME_DISTANCE = 5;
const MOST_PAN = 1.4;
/** The eye may go over a pole and this far down the other side, degrees of elevation: one leans over a piece on the bench. */
const MOST_LEAN = 135;

/** Half front, half side: shows the front pattern and that the piece is round. */
export const HOME: Orbit = { azimuthDeg: -62, elevationDeg: 38, distance: HOME_DISTANCE, panX: 0, panY: 0 };
/** The three looks a maker knows; azimuth -90 puts +x to the right and +y up. */
export const LOOKS = {
  front: { ...HOME, azimuthDeg: -90, elevationDeg: 90 },
  side: { ...HOME, azimuthDeg: -90, elevationDeg: 0 },
  back: { ...HOME, azimuthDeg: -90, elevationDeg: -90 },
} as const;
export type LookFrom = keyof typeof LOOKS;

const RAD = Math.PI / 180;
const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value));

/** Unit vectors of the eye: `out` from the centre to the eye, `right` and `up` of the picture. Steady through both poles. */
export function eyeFrame(view: Orbit): { out: Vec3; right: Vec3; up: Vec3 } {
  const { out, right, up } = ownFrame(view);
  const { stand } = view;
  if (!stand) return { out, right, up };
  const placed = ([x, y, z]: Vec3): Vec3 =>
    addScaled(addScaled(scale(stand.along, x), stand.across, y), stand.up, z);
  return { out: placed(out), right: placed(right), up: placed(up) };
}

function ownFrame({ azimuthDeg, elevationDeg }: Orbit): { out: Vec3; right: Vec3; up: Vec3 } {
  const [ca, sa] = [Math.cos(azimuthDeg * RAD), Math.sin(azimuthDeg * RAD)];
  const [ce, se] = [Math.cos(elevationDeg * RAD), Math.sin(elevationDeg * RAD)];
  return { out: [ce * ca, ce * sa, se], right: [-sa, ca, 0], up: [-se * ca, -se * sa, ce] };
}

/** Turns by a drag of the hand: the near side follows the pointer. */
export const turned = (view: Orbit, rightDeg: number, upDeg: number): Orbit => ({
  ...view,
  azimuthDeg: view.azimuthDeg - rightDeg,
  elevationDeg: clamp(view.elevationDeg + upDeg, -MOST_LEAN, MOST_LEAN),
});

export const nearer = (view: Orbit, factor: number): Orbit => ({
  ...view,
  distance: clamp(view.distance * factor, NEAREST, FARTHEST),
});

export const panned = (view: Orbit, x: number, y: number): Orbit => ({
  ...view,
  panX: clamp(view.panX + x, -MOST_PAN, MOST_PAN),
  panY: clamp(view.panY + y, -MOST_PAN, MOST_PAN),
});

/** Between two views on the same stand, the short way round. `t` from 0 to 1. */
export function between(from: Orbit, to: Orbit, t: number): Orbit {
  const mix = (a: number, b: number) => a + (b - a) * t;
  const turn = ((to.azimuthDeg - from.azimuthDeg + 540) % 360) - 180;
  return {
    ...to,
    azimuthDeg: from.azimuthDeg + turn * t,
    elevationDeg: mix(from.elevationDeg, to.elevationDeg),
    distance: mix(from.distance, to.distance),
    panX: mix(from.panX, to.panX),
    panY: mix(from.panY, to.panY),
  };
}

/** Vertical angle of view (degrees) so that the shorter side of a picture of this shape spans FIELD_DEG. */
export function verticalField(aspect: number): number {
  if (aspect >= 1) return FIELD_DEG;
  return (2 * Math.atan(Math.tan((FIELD_DEG * RAD) / 2) / aspect)) / RAD;
}

/** Where the eye is, in radii of the piece. */
export function eyePlace(view: Orbit): Vec3 {
  const { out, right, up } = eyeFrame(view);
  const at = (k: 0 | 1 | 2) => out[k] * view.distance - right[k] * view.panX - up[k] * view.panY;
  return [at(0), at(1), at(2)];
}

/** Where points (radii of the piece) stand in the picture: right and up, 1 at the end of its shorter side. */
export function pictureOf(view: Orbit): (p: Vec3) => readonly [x: number, y: number] {
  const { out, right, up } = eyeFrame(view);
  const end = Math.tan((FIELD_DEG * RAD) / 2);
  return (p) => {
    const away = (view.distance - dot(out, p)) * end;
    return [(dot(right, p) + view.panX) / away, (dot(up, p) + view.panY) / away];
  };
}

/** The ray through a point of the picture; x and y from -1 to 1, right and up. Unit direction, lengths in radii. */
export function rayThrough(view: Orbit, aspect: number, x: number, y: number): { from: Vec3; along: Vec3 } {
  const { out, right, up } = eyeFrame(view);
  const high = Math.tan((verticalField(aspect) * RAD) / 2);
  const [sx, sy] = [x * high * aspect, y * high];
  const toward = (k: 0 | 1 | 2) => -out[k] + right[k] * sx + up[k] * sy;
  const size = Math.hypot(1, sx, sy);
  return {
    from: eyePlace(view),
    along: [toward(0) / size, toward(1) / size, toward(2) / size],
  };
}
