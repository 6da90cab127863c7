/** Thin opaque bodies without a closed form, met by a march along a bound of the distance to them. */
import { normalize, type Vec3 } from "../geometry/vec.ts";
import type { Rgb } from "../optics/spectrum.ts";
import { crossEllipsoid } from "./ellipsoid.ts";
import { type DesignHit, type SceneDesign, toLocal, turnToLocal, turnToWorld } from "./scene-design.ts";

/** Sheets are no thinner than this, so that marching can't step over them. */
export const THINNEST = 0.004;

export interface Sheet {
  /** Never more than the distance from a local place; negative within. */
  readonly distance: (s: SceneDesign, p: Vec3) => number;
  readonly colour: (s: SceneDesign, p: Vec3) => Rgb;
  /** Radius of a ball about the centre that holds all of it. */
  readonly ball: (s: SceneDesign) => number;
}

/** A march ends this close to a sheet, and gives up after so many steps. */
const NEAR = 2e-4;
const MOST_STEPS = 160;
/** Share of the distance that one step takes; the petals' bound is only nearly one. */
const CAUTION = 0.8;

function normalOf({ distance }: Sheet, s: SceneDesign, p: Vec3): Vec3 {
  const e = NEAR;
  return normalize([
    distance(s, [p[0] + e, p[1], p[2]]) - distance(s, [p[0] - e, p[1], p[2]]),
    distance(s, [p[0], p[1] + e, p[2]]) - distance(s, [p[0], p[1] - e, p[2]]),
    distance(s, [p[0], p[1], p[2] + e]) - distance(s, [p[0], p[1], p[2] - e]),
  ]);
}

/** Marches to a sheet. A ray that starts on the sheet first has to get clear of it. */
export function hitSheet(
  sheet: Sheet,
  s: SceneDesign,
  o: Vec3,
  d: Vec3,
  tMax: number,
  leaving: boolean,
): DesignHit | null {
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const reach = sheet.ball(s) + NEAR;
  const around = crossEllipsoid([reach, reach, reach], p, v);
  if (!around || around[1] <= 0) return null;
  const end = Math.min(tMax, around[1]);
  let t = Math.max(0, around[0]);
  let clear = !leaving;
  for (let step = 0; step < MOST_STEPS && t < end; step++) {
    const q: Vec3 = [p[0] + t * v[0], p[1] + t * v[1], p[2] + t * v[2]];
    const distance = sheet.distance(s, q);
    if (clear && distance < NEAR)
      return { t, n: turnToWorld(s, normalOf(sheet, s, q)), rgb: sheet.colour(s, q), grain: 0 };
    clear ||= distance > 2 * NEAR;
    t += Math.max(NEAR, CAUTION * distance);
  }
  return null;
}
