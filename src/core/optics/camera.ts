/** The camera: looks at the piece's centre from a direction, through a pinhole or a lens. Unit-sphere lengths. */
import { cosDeg, sinDeg } from "../geometry/plane.ts";
import { addScaled, cross, dot, normalize, scale, type Vec3 } from "../geometry/vec.ts";

export interface Camera {
  readonly at: Vec3;
  /** Unit view direction, and the picture's right and up scaled by the tangent of half the field. */
  readonly forward: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  /** Missing: a pinhole, all is sharp. */
  readonly lens?: Lens;
}

/** A thin lens: its aperture, and how far ahead, along the view, all is sharp. Unit-sphere lengths. */
export interface Lens {
  readonly radius: number;
  readonly focus: number;
}

/** Height of the picture in the camera that an f-number is said for, mm: the small-picture format, 36 mm by 24 mm. ISO 1007. */
const FRAME_MM = 24;
/** How much nearer than the centre is sharp: the facets that face the eye, as one focuses on the front of a thing. */
const FOCUS_BEFORE_CENTRE = 0.7;

/**
 * The lens that a photographer would have: the small-picture camera whose full height sees `fieldDeg`, focused on the front of the
 * piece. Thin lens: with the picture v behind it and the sharp plane u before it, f = u v / (u + v); aperture across = f / N.
 * @param distance of the lens from the centre, radii, > 1
 * @param fNumber N, > 0
 */
export function lensOf(fNumber: number, distance: number, fieldDeg: number, radiusMm: number): Lens {
  const focus = distance - FOCUS_BEFORE_CENTRE;
  const u = focus * radiusMm;
  const v = FRAME_MM / 2 / Math.tan((fieldDeg * Math.PI) / 360);
  const f = (u * v) / (u + v);
  return { radius: f / (2 * fNumber) / radiusMm, focus };
}

/** Views closer to +-y than this take +z for up. */
const ALONG_Y = 1e-9;

/**
 * Camera at `distance` radii from the centre in the direction azimuth (0 at +x, 90 at +y), elevation (90 at +z), degrees.
 * Picture up is the projection of +y, of +z for a view along y; seen from the front +x is to the right.
 * @param fieldDeg full vertical field of view, within 0 .. 180
 * @param up what picture up is the projection of in place of +y, not along the view
 */
export function cameraFrom(
  azimuthDeg: number,
  elevationDeg: number,
  distance: number,
  fieldDeg: number,
  up?: Vec3,
): Camera {
  return cameraTowards(directionOf(azimuthDeg, elevationDeg), distance, fieldDeg, up);
}

/** Unit direction of an azimuth (0 at +x, 90 at +y) and an elevation (90 at +z), degrees. */
export function directionOf(azimuthDeg: number, elevationDeg: number): Vec3 {
  const level = cosDeg(elevationDeg);
  return [level * cosDeg(azimuthDeg), level * sinDeg(azimuthDeg), sinDeg(elevationDeg)];
}

/** The same from a unit direction. */
export function cameraTowards(towards: Vec3, distance: number, fieldDeg: number, up?: Vec3): Camera {
  const forward = scale(towards, -1);
  const alongY = Math.hypot(forward[0], forward[2]) < ALONG_Y;
  const right = normalize(cross(forward, up ?? (alongY ? [0, 0, 1] : [0, 1, 0])));
  const spread = Math.tan((fieldDeg * Math.PI) / 360);
  return {
    at: scale(towards, distance),
    forward,
    right: scale(right, spread),
    up: scale(cross(right, forward), spread),
  };
}

/**
 * Directions of one full turn about `up`, counter-clockwise seen from above: the first above where `from` stands, the last one
 * step before the first.
 * @param from not along `up`
 * @param elevationDeg above the level that `up` is the normal of, within -90 .. 90
 */
export function turnAbout(up: Vec3, from: Vec3, elevationDeg: number, count: number): readonly Vec3[] {
  const ahead = normalize(addScaled(from, up, -dot(from, up)));
  const aside = cross(up, ahead);
  return Array.from({ length: count }, (_, k) => {
    const deg = (360 * k) / count;
    const level = addScaled(scale(ahead, cosDeg(deg)), aside, sinDeg(deg));
    return addScaled(scale(level, cosDeg(elevationDeg)), up, sinDeg(elevationDeg));
  });
}

/**
 * Ray through the picture at x (-1 left .. 1 right), y (-1 bottom .. 1 top) and, of a lens, through the point of its aperture
 * that two even numbers give.
 */
export function lensRay(
  camera: Camera,
  x: number,
  y: number,
  pair: () => readonly [number, number],
): { readonly o: Vec3; readonly d: Vec3 } {
  const { at, lens } = camera;
  const d = cameraRay(camera, x, y);
  if (!lens || lens.radius === 0) return { o: at, d };
  const [u, v] = pair();
  const [r, turn] = [lens.radius * Math.sqrt(u), 2 * Math.PI * v];
  const aside = addScaled(
    scale(normalize(camera.right), r * Math.cos(turn)),
    normalize(camera.up),
    r * Math.sin(turn),
  );
  const sharp = scale(d, lens.focus / dot(d, camera.forward));
  return { o: addScaled(at, aside, 1), d: normalize(addScaled(sharp, aside, -1)) };
}

/** Unit direction through the picture at x (-1 left .. 1 right), y (-1 bottom .. 1 top). */
export const cameraRay = (camera: Camera, x: number, y: number): Vec3 =>
  normalize(addScaled(addScaled(camera.forward, camera.right, x), camera.up, y));
