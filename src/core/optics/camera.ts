/** The pinhole camera: looks at the piece's centre from a direction. Unit-sphere lengths. */
import { cosDeg, sinDeg } from "../geometry/plane.ts";
import { addScaled, cross, normalize, scale, type Vec3 } from "../geometry/vec.ts";

export interface Camera {
  readonly at: Vec3;
  /** Unit view direction, and the picture's right and up scaled by the tangent of half the field. */
  readonly forward: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
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
  const level = cosDeg(elevationDeg);
  const towards: Vec3 = [level * cosDeg(azimuthDeg), level * sinDeg(azimuthDeg), sinDeg(elevationDeg)];
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

/** Unit direction through the picture at x (-1 left .. 1 right), y (-1 bottom .. 1 top). */
export const cameraRay = (camera: Camera, x: number, y: number): Vec3 =>
  normalize(addScaled(addScaled(camera.forward, camera.right, x), camera.up, y));
