/** How light meets a ribbon and petals, thin opaque bodies without a closed form, met by a march along a bound of the distance to them. */
import { normalize, type Vec3, vec3 } from "../geometry/vec.ts";
import type { Rgb } from "../optics/spectrum.ts";
import { crossEllipsoid } from "./hit-ellipsoid.ts";
import {
  type DesignHit,
  type Hit,
  type SceneDesign,
  toLocal,
  turnToLocal,
  turnToWorld,
} from "./scene-design.ts";

interface Sheet {
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
function hitSheet(
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

/** Distance to a twisted ribbon: untwist, then a box; shrunk so that it never overshoots. */
function ribbonDistance(s: SceneDesign, p: Vec3): number {
  const angle = s.extra * p[2];
  const [c, n] = [Math.cos(angle), Math.sin(angle)];
  const x = Math.abs(c * p[0] + n * p[1]) - s.size[0];
  const y = Math.abs(-n * p[0] + c * p[1]) - s.size[1];
  const z = Math.abs(p[2]) - s.size[2];
  const [ox, oy, oz] = [Math.max(x, 0), Math.max(y, 0), Math.max(z, 0)];
  const box = Math.sqrt(ox * ox + oy * oy + oz * oz) + Math.min(0, Math.max(x, y, z));
  const reach = Math.min(1, Math.sqrt(p[0] * p[0] + p[1] * p[1]));
  return box / Math.sqrt(1 + (s.extra * reach) ** 2);
}

const BAND: Sheet = {
  distance: ribbonDistance,
  // its second colour on its far side
  colour: (s, p) => {
    const angle = s.extra * p[2];
    return -Math.sin(angle) * p[0] + Math.cos(angle) * p[1] >= 0 ? s.rgb : s.rgb2;
  },
  ball: ({ size }) => Math.sqrt(size[0] ** 2 + size[1] ** 2 + size[2] ** 2),
};

export const hitRibbon: Hit = (s, o, d, tMax, from) => hitSheet(BAND, s, o, d, tMax, from >= 0);

/** How far the clefts between petals reach in, and how steep their sides may get (per petal): shape constants of ours. */
const CLEFT = 0.4;
const CLEFT_SLOPE = 0.35;

/** Distance to a bowl of petals, open towards +z: a paraboloid sheet within a rosette outline; shrunk so that it never overshoots. */
function petalsDistance(s: SceneDesign, p: Vec3): number {
  const [radius, depth, thick] = s.size;
  const r = Math.sqrt(p[0] * p[0] + p[1] * p[1]);
  const lobe = Math.abs(Math.cos(0.5 * s.extra * Math.atan2(p[1], p[0])));
  const edge = radius * (1 - CLEFT * (1 - lobe));
  const level = depth * ((r / radius) * (r / radius) - 0.5);
  const slope = (2 * depth * Math.min(r, radius)) / (radius * radius);
  const sheet = (Math.abs(p[2] - level) - thick) / Math.sqrt(1 + slope * slope);
  const outline = (r - edge) / Math.sqrt(1 + (CLEFT_SLOPE * s.extra) ** 2);
  return Math.max(sheet, outline);
}

const BOWL: Sheet = {
  distance: petalsDistance,
  // fading to the second colour towards the tips
  colour: (s, p) => {
    const t = Math.min(1, Math.sqrt(p[0] * p[0] + p[1] * p[1]) / s.size[0]);
    return vec3((c) => s.rgb[c] + (s.rgb2[c] - s.rgb[c]) * t);
  },
  ball: ({ size }) => Math.sqrt(size[0] ** 2 + (0.5 * size[1] + size[2]) ** 2),
};

export const hitPetals: Hit = (s, o, d, tMax, from) => hitSheet(BOWL, s, o, d, tMax, from >= 0);
