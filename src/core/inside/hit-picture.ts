/** How light meets a picture: alpha is the chance to be met. */
import { normalize, type Vec3 } from "../geometry/vec.ts";
import { nextRandom, type Random } from "../optics/random.ts";
import { lookUp, type Raster } from "../optics/raster.ts";
import type { Rgb } from "../optics/spectrum.ts";
import { crossEllipsoid } from "./hit-ellipsoid.ts";
import { type Hit, type SceneDesign, toLocal, turnToLocal, turnToWorld } from "./scene-design.ts";

/** Without chances a place of a picture is met when more than this of it is there. */
const MIDDLE = 0.5;

/**
 * A picture's colour at x, y of its own frame, or null when chance lets the ray pass (alpha is the chance to be met) or
 * nothing is there.
 */
function pictureAt(s: SceneDesign, x: number, y: number, onBack: boolean, random: Random | null): Rgb | null {
  if (!s.faces) return null;
  const own = onBack && s.faces.back !== "through";
  const raster = own ? (s.faces.back as Raster | null) : s.faces.front;
  if (!raster) return null;
  const across = (own ? -x : x) / s.size[0];
  const { rgb, alpha } = lookUp(
    raster,
    (0.5 + 0.5 * across) * raster.width,
    (0.5 - (0.5 * y) / s.size[0]) * raster.height,
  );
  if (alpha <= 0) return null;
  return alpha >= 1 || (random ? nextRandom(random) : MIDDLE) < alpha ? rgb : null;
}

/** A round sheet across its axis: seen from +z it shows its front. */
export const hitPictureDisc: Hit = (s, o, d, tMax, from, random) => {
  if (from >= 0) return null;
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const t = -p[2] / v[2];
  if (!(t >= 0 && t < tMax)) return null;
  const x = p[0] + t * v[0];
  const y = p[1] + t * v[1];
  if (x * x + y * y > s.size[0] * s.size[0]) return null;
  const onBack = v[2] > 0;
  const rgb = pictureAt(s, x, y, onBack, random);
  return rgb && { t, n: turnToWorld(s, [0, 0, onBack ? -1 : 1]), rgb, grain: 0 };
};

/** From a ball's wall into it, shorter ways are the start itself. */
const LEAST_CHORD = 1e-9;

/**
 * A ball painted along its axis, z > 0 with the front's picture. Where nothing is painted one looks in, onto the far side's
 * back. From its own wall only the far side is ahead; a facet that cuts into it shows it right behind the glass.
 */
export const hitPictureCore: Hit = (s, o, d, tMax, from, random) => {
  const leaving = from >= 0;
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const t = crossEllipsoid(s.size, p, v);
  if (!t || t[1] <= 0) return null;
  const crossings = leaving ? (t[0] + t[1] > LEAST_CHORD ? [t[0] + t[1]] : []) : [Math.max(0, t[0]), t[1]];
  for (const at of crossings) {
    if (at >= tMax) return null;
    const q: Vec3 = [p[0] + at * v[0], p[1] + at * v[1], p[2] + at * v[2]];
    const rgb = pictureAt(s, q[0], q[1], q[2] < 0, random);
    if (!rgb) continue;
    const isCut = at === 0;
    return { t: at, n: isCut ? [-d[0], -d[1], -d[2]] : turnToWorld(s, normalize(q)), rgb, grain: 0 };
  }
  return null;
};
