/** Where the eye stands and what it sees, through a pinhole or a lens, in units of the piece's radius. */

import { normalize, scale, type Vec3 } from "../core/geometry/vec.ts";
import { cameraFrom, type Lens } from "../core/optics/camera.ts";

export interface View {
  readonly eye: Vec3;
  /** Unit, right and up in the picture and towards the viewer: right-handed. */
  readonly right: Vec3;
  readonly up: Vec3;
  readonly back: Vec3;
  /** Full vertical field of view, degrees, 0 .. 180 exclusive. */
  readonly fieldDeg: number;
  /** Missing: a pinhole. */
  readonly lens?: Lens;
}

/** Field in which the ball fills about five sixths of the picture's height, seen from ten radii. */
export const DEFAULT_FIELD_DEG = 13.8;
export const DEFAULT_DISTANCE = 10;

/**
 * View at the piece's centre from azimuth (counter-clockwise seen from the front) and elevation from the equator, degrees;
 * elevation 90 = front. Up in the picture is the projection of +y, of +z for a view along y.
 * @param up what picture up is the projection of in place of +y, not along the view
 */
export function viewFrom(
  azimuthDeg: number,
  elevationDeg: number,
  distance = DEFAULT_DISTANCE,
  fieldDeg = DEFAULT_FIELD_DEG,
  up?: Vec3,
): View {
  const camera = cameraFrom(azimuthDeg, elevationDeg, distance, fieldDeg, up);
  return {
    eye: camera.at,
    right: normalize(camera.right),
    up: normalize(camera.up),
    back: scale(camera.forward, -1),
    fieldDeg,
  };
}

/** Columns of the shader's matrix: right and up, both times the tangent of half the field, and back. */
export function viewColumns(view: View): readonly number[] {
  const half = Math.tan((view.fieldDeg * Math.PI) / 360);
  return [...scale(view.right, half), ...scale(view.up, half), ...view.back];
}
