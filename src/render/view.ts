/** Where the eye stands: a pinhole that looks at the piece's centre, in units of the piece's radius. */
import { cosDeg, sinDeg } from "../core/geometry/plane.ts";
import { add, cross, dot, normalize, scale, type Vec3 } from "../core/geometry/vec.ts";

export interface View {
  /** Unit, from the centre towards the eye. */
  readonly towardsEye: Vec3;
  /** Unit, right in the picture; at right angles to `towardsEye`. */
  readonly right: Vec3;
  /** Of the eye from the centre, radii; > 1. */
  readonly distance: number;
  /** Full vertical field of view, degrees, 0..180 exclusive. */
  readonly fieldDeg: number;
}

/** Field in which the ball fills about five sixths of the picture's height, seen from ten radii. */
export const DEFAULT_FIELD_DEG = 13.8;
export const DEFAULT_DISTANCE = 10;

/** Two directions nearer than this to parallel leave the picture's "up" open (sine of the angle). */
const NEARLY_ALONG = 1e-6;

/**
 * View from azimuth (counter-clockwise seen from the front) and elevation from the equator, degrees; 0, 90 = front.
 * Up in the picture is the projection of +y, of +z for a view along y.
 */
export function viewFrom(
  azimuthDeg: number,
  elevationDeg: number,
  distance = DEFAULT_DISTANCE,
  fieldDeg = DEFAULT_FIELD_DEG,
): View {
  const c = cosDeg(elevationDeg);
  const towardsEye: Vec3 = [c * cosDeg(azimuthDeg), c * sinDeg(azimuthDeg), sinDeg(elevationDeg)];
  const upright: Vec3 = Math.hypot(towardsEye[0], towardsEye[2]) < NEARLY_ALONG ? [0, 0, 1] : [0, 1, 0];
  return { towardsEye, right: normalize(cross(upright, towardsEye)), distance, fieldDeg };
}

/** Up in the picture. */
export const upOf = (view: View): Vec3 => cross(view.towardsEye, view.right);

/** Turns v about the unit axis by an angle in radians, counter-clockwise seen from the axis' tip (Rodrigues). */
export function turnAbout(v: Vec3, axis: Vec3, angle: number): Vec3 {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return add(add(scale(v, c), scale(cross(axis, v), s)), scale(axis, dot(axis, v) * (1 - c)));
}

/**
 * The eye walks round the piece: `across` radians to the right, `up` radians upwards, as the picture shows them. The
 * piece follows the finger: a drag to the right turns its near side to the right (the eye walks left).
 */
export function orbited(view: View, across: number, up: number): View {
  const vertical = upOf(view);
  const sideways: View = {
    ...view,
    towardsEye: normalize(turnAbout(view.towardsEye, vertical, across)),
    right: normalize(turnAbout(view.right, vertical, across)),
  };
  return { ...sideways, towardsEye: normalize(turnAbout(sideways.towardsEye, sideways.right, -up)) };
}

/** What the shader takes: the eye, and the columns right, up (both times tan of half the field) and back. */
export function viewUniforms(view: View): { readonly eye: Vec3; readonly columns: readonly number[] } {
  const half = Math.tan((view.fieldDeg * Math.PI) / 360);
  const columns = [...scale(view.right, half), ...scale(upOf(view), half), ...view.towardsEye];
  return { eye: scale(view.towardsEye, view.distance), columns };
}
