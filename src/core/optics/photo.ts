/**
 * A photograph of the uncut ball becomes what is inside: for every place of a sheet or of a ball in the glass, where in the
 * photograph it was seen. Unit sphere; camera on the axis, so that all of it turns on one curve: how far from the axis the inside
 * is met by the ray that crosses the picture at a given share of the outline's radius.
 */
import { lookUp, type Raster } from "./raster.ts";
import { encodeSrgb } from "./tone-map.ts";

/** What was photographed, and how; lengths in radii of the ball. */
export interface PhotoSetting {
  /** Camera from the ball's centre, > 1. */
  readonly distance: number;
  /** Refractive index of the ball, >= 1. */
  readonly index: number;
  readonly shape: "disc" | "core";
  /** Middle of the sheet or ball on the axis, -1 .. 1, towards the camera positive. */
  readonly depth: number;
}

/** The ball's outline in the photograph: pixels, x to the right, y down, from the corner of the top left pixel. */
export interface Outline {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Places on the curve; between them it is halved down to doubles. */
const STEPS = 4096;
const HALVINGS = 50;

/**
 * Where the ray at share `s` of the outline's radius meets the inside: distance from the axis, negative when it has crossed it,
 * or null when it does not meet it (or a ball's far half). Pinhole camera at `distance`; the outline is the tangent cone, so
 * tan(angle) = s / sqrt(distance^2 - 1). Snell's law at the skin.
 * @param radius of the ball that is painted; not used for a sheet
 */
function meetsInsideAt(
  s: number,
  { distance, index, shape, depth }: PhotoSetting,
  radius: number,
): number | null {
  const tangent = s / Math.sqrt(distance * distance - 1);
  const down = 1 / Math.sqrt(1 + tangent * tangent);
  const out = tangent * down;
  // nearest point of the ray to the centre, and half the chord
  const along = distance * down;
  const half = Math.sqrt(Math.max(0, 1 - (distance * out) ** 2));
  const t = along - half;
  const [px, pz] = [t * out, distance - t * down];
  const length = Math.hypot(px, pz);
  const [nx, nz] = [px / length, pz / length];
  const cosI = down * nz - out * nx;
  const cosT = Math.sqrt(Math.max(0, 1 - (1 - cosI * cosI) / (index * index)));
  const bend = cosI / index - cosT;
  const [dx, dz] = [out / index + bend * nx, -down / index + bend * nz];
  return shape === "disc" ? meetsSheet(px, pz, dx, dz, depth) : meetsBall(px, pz, dx, dz, depth, radius);
}

function meetsSheet(px: number, pz: number, dx: number, dz: number, depth: number): number | null {
  const t = (depth - pz) / dz;
  if (!(t >= 0)) return null;
  const x = px + t * dx;
  return x * x + depth * depth <= 1 + 1e-12 ? x : null;
}

function meetsBall(
  px: number,
  pz: number,
  dx: number,
  dz: number,
  depth: number,
  radius: number,
): number | null {
  const z = pz - depth;
  const b = px * dx + z * dz;
  const rest = b * b - (px * px + z * z - radius * radius);
  if (rest < 0) return null;
  const t = Math.max(0, -b - Math.sqrt(rest));
  if (t === 0 && b >= 0) return null;
  return z + t * dz >= 0 ? px + t * dx : null;
}

/** The curve, sampled: distance from the axis at a share of the outline's radius, and the greatest distance up to each step. */
interface Curve {
  readonly at: (s: number) => number | null;
  readonly greatest: Float64Array;
}

/** Greatest distance near the place, between two steps, where the curve begins or ends. */
function atItsEnd(at: Curve["at"], there: number, beyond: number): number {
  let [on, off] = [there, beyond];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (on + off) / 2;
    if (at(middle) === null) off = middle;
    else on = middle;
  }
  return Math.abs(at(on) ?? 0);
}

function curveOf(setting: PhotoSetting, radius: number): Curve {
  const at = (s: number) => meetsInsideAt(s, setting, radius);
  const greatest = new Float64Array(STEPS + 1);
  let before = at(0);
  for (let i = 1; i <= STEPS; i++) {
    const here = at(i / STEPS);
    let reach = Math.abs(here ?? 0);
    if (here === null && before !== null) reach = atItsEnd(at, (i - 1) / STEPS, i / STEPS);
    greatest[i] = Math.max(greatest[i - 1], reach);
    before = here;
  }
  return { at, greatest };
}

/** Radius of the largest disc that the glass shows at a depth, or of the largest ball in the glass whose rim it shows. */
export function largestShown(setting: PhotoSetting): number {
  const { greatest } = curveOf({ ...setting, shape: "disc" }, 1);
  const shown = greatest[STEPS];
  return setting.shape === "disc" ? shown : Math.min(shown, 1 - Math.abs(setting.depth));
}

/**
 * Share of the outline's radius at which a place at distance `r` from the axis is seen, negative when beyond the axis; null when
 * it isn't seen. Where it is seen twice, the way nearest the middle counts.
 */
function shareSeeing(curve: Curve, r: number): number | null {
  const { at, greatest } = curve;
  if (r === 0) return 0;
  if (r > greatest[STEPS]) return null;
  let [low, high] = [0, STEPS];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (greatest[middle] >= r) high = middle;
    else low = middle;
  }
  let [below, above] = [low / STEPS, high / STEPS];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (below + above) / 2;
    // beyond its end the curve has passed every distance
    if (Math.abs(at(middle) ?? 1) >= r) above = middle;
    else below = middle;
  }
  return (at(below) ?? 0) < 0 ? -above : above;
}

/**
 * The picture of a disc or ball of radius `radius` (unit sphere) as it must be for the photograph to look as it does, upright as
 * the photograph; transparent where it isn't seen, and round.
 * @param size pixels along its edge
 */
export function insideFromPhoto(
  photo: Raster,
  outline: Outline,
  setting: PhotoSetting,
  radius: number,
  size: number,
): Raster {
  const curve = curveOf(setting, radius);
  const rgba = new Uint8Array(4 * size * size);
  // places at one distance from the axis share their way; whole numbers name the distance
  const shares = new Map<number, number | null>();
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) {
      const [x, y] = [2 * column + 1 - size, size - 2 * row - 1];
      const distance = x * x + y * y;
      if (distance > size * size) continue;
      let share = shares.get(distance);
      if (share === undefined) {
        share = shareSeeing(curve, (radius * Math.sqrt(distance)) / size);
        shares.set(distance, share);
      }
      if (share === null) continue;
      const reach = distance === 0 ? 0 : (share * outline.r) / Math.sqrt(distance);
      const [u, v] = [outline.x + reach * x, outline.y - reach * y];
      if (u < 0 || v < 0 || u > photo.width || v > photo.height) continue;
      const { rgb, alpha } = lookUp(photo, u, v);
      const at = 4 * (row * size + column);
      for (let c = 0; c < 3; c++) rgba[at + c] = Math.round(255 * encodeSrgb(rgb[c]));
      rgba[at + 3] = Math.round(255 * alpha);
    }
  return { width: size, height: size, rgba };
}

/** The same picture with left and right exchanged. */
export function mirrored({ width, height, rgba }: Raster): Raster {
  const from = new Uint32Array(rgba.slice().buffer);
  const to = new Uint32Array(from.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) to[y * width + x] = from[y * width + (width - 1 - x)];
  return { width, height, rgba: new Uint8Array(to.buffer) };
}
