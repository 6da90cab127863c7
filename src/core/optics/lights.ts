/**
 * Where the light comes from: radiance by direction, linear sRGB, in the piece's own axes with +y up. The settings are plain
 * data that a shader evaluates by the same few formulas: a sky, a horizon and a ground, and panels that glow.
 */
import { addScaled, dot, scale, type Vec3 } from "../geometry/vec.ts";
import { type EquirectPicture, pictureMean, pictureRadiance } from "./equirect.ts";
import type { Rgb } from "./spectrum.ts";

/** A glowing rectangle or disc, as it is seen from the piece's middle. Sizes are tangents of half angles. */
export interface Panel {
  /** Unit direction of its middle, and the unit directions of its right and upper edge. */
  readonly towards: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly round: boolean;
  /** Panes across and up, divided by bars that take `bar` of a pane's size; 1 and 1 for an undivided one. */
  readonly columns: number;
  readonly rows: number;
  readonly bar: number;
  /** Width of the soft border as a share of the half size. */
  readonly soft: number;
  readonly rgb: Rgb;
  /** Colour at the lower edge; `rgb` is that of the upper one. */
  readonly rgbBelow: Rgb;
  /**
   * How far its middle is from the piece's, millimetres, > 0: where it stands and how large it seems then depends on the place
   * from which it is seen, and its light is added to that of what lies behind it. It glows towards the piece only. Missing: far away.
   */
  readonly distanceMm?: number;
}

export interface LightSetting {
  readonly zenith: Rgb;
  readonly horizon: Rgb;
  /** Just below the horizon, and straight down. */
  readonly floor: Rgb;
  readonly nadir: Rgb;
  /** How quickly the horizon's colour gives way: exponent on |d.y|, below 1 is quick. */
  readonly spread: number;
  /**
   * Over a table whatever that is made of rises from it in a curve and becomes the wall: at the horizon the light has the
   * table's own radiance, and gives way to the zenith by this exponent in place of `spread`. Missing: the table just ends there.
   */
  readonly sweep?: number;
  readonly panels: readonly Panel[];
}

/** Unit directions, a right-handed frame: what the light calls +x, +y and +z. */
export interface LightAxes {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly front: Vec3;
}

export type Light =
  | { readonly kind: "uniform" }
  | {
      readonly kind: "setting";
      readonly setting: LightSetting;
      readonly turnRad: number;
      /** Where its own axes point when they aren't the piece's. */
      readonly axes?: LightAxes;
      /** Millimetres in the unit that places are given in. Missing: what is near is seen from the piece's middle, wherever one is. */
      readonly unitMm?: number;
    }
  | { readonly kind: "picture"; readonly picture: EquirectPicture; readonly turnRad: number };

const lerp = (a: number, b: number, t: number): number => a + (b - a) * t;

/** 0 below a, 1 above b, Hermite between, as in GLSL. */
function smoothstep(a: number, b: number, x: number): number {
  const t = Math.max(0, Math.min(1, (x - a) / (b - a)));
  return t * t * (3 - 2 * t);
}

/** 1 on the glass of a divided window, 0 on its bars; `s` runs from 0 to 1 across all `panes`. */
function paneMask(s: number, panes: number, bar: number): number {
  if (panes <= 1) return 1;
  const inPane = s * panes - Math.floor(s * panes);
  // Outer borders have no bar: distance to the nearest inner division only.
  const nearest = Math.round(s * panes);
  if (nearest <= 0 || nearest >= panes) return 1;
  return smoothstep(bar * 0.4, bar * 0.6, Math.min(inPane, 1 - inPane));
}

/** Coverage 0 .. 1 of a panel at (x, y), both -1 .. 1 from edge to edge. */
export function panelCover(p: Panel, x: number, y: number): number {
  const reach = p.round ? Math.sqrt(x * x + y * y) : Math.max(Math.abs(x), Math.abs(y));
  if (reach >= 1) return 0;
  const cover = 1 - smoothstep(1 - p.soft, 1, reach);
  return cover * paneMask(0.5 * (x + 1), p.columns, p.bar) * paneMask(0.5 * (y + 1), p.rows, p.bar);
}

/** Width of the blurred horizon line, as d.y. */
const HORIZON_BLUR = 0.015;

/** From where a setting is seen: a place in its own axes, and the millimetres in their unit. */
interface Standpoint {
  readonly at: Vec3;
  readonly unitMm: number;
}

/** Adds what a panel near by sends from unit direction d. */
function addNear(rgb: [number, number, number], p: Panel, d: Vec3, from: Standpoint | undefined): void {
  // the place, where the panel's distance is 1
  const per = from && p.distanceMm ? from.unitMm / p.distanceMm : 0;
  const at = from?.at ?? MIDDLE;
  const ahead = dot(d, p.towards);
  const before = 1 - per * dot(at, p.towards);
  if (ahead <= 0 || before <= 0) return;
  const x = (per * dot(at, p.right) + (before / ahead) * dot(d, p.right)) / p.halfWidth;
  const y = (per * dot(at, p.up) + (before / ahead) * dot(d, p.up)) / p.halfHeight;
  const cover = panelCover(p, x, y);
  for (let c = 0; c < 3; c++) rgb[c] += cover * lerp(p.rgb[c], p.rgbBelow[c], 0.5 * (1 - y));
}

const MIDDLE: Vec3 = [0, 0, 0];

/** Radiance of a setting in unit direction d. Later panels stand before earlier ones, those near by before all. */
export function settingRadiance(s: LightSetting, d: Vec3, from?: Standpoint): Rgb {
  const t = Math.abs(d[1]) ** s.spread;
  const above = smoothstep(-HORIZON_BLUR, HORIZON_BLUR, d[1]);
  const rgb: [number, number, number] = [0, 0, 0];
  for (let c = 0; c < 3; c++)
    rgb[c] = lerp(lerp(s.floor[c], s.nadir[c], t), lerp(s.horizon[c], s.zenith[c], t), above);
  for (const p of s.panels) {
    if (p.distanceMm !== undefined) continue;
    const ahead = dot(d, p.towards);
    if (ahead <= 0) continue;
    const y = dot(d, p.up) / (ahead * p.halfHeight);
    const cover = panelCover(p, dot(d, p.right) / (ahead * p.halfWidth), y);
    if (cover === 0) continue;
    const down = 0.5 * (1 - y);
    for (let c = 0; c < 3; c++) rgb[c] = lerp(rgb[c], lerp(p.rgb[c], p.rgbBelow[c], down), cover);
  }
  for (const p of s.panels) if (p.distanceMm !== undefined) addNear(rgb, p, d, from);
  return rgb;
}

const WHITE: Rgb = [1, 1, 1];

/** Turns a direction about +y so that the light as a whole seems turned by `turnRad` counter-clockwise seen from above. */
function turned(d: Vec3, turnRad: number): Vec3 {
  if (turnRad === 0) return d;
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  return [c * d[0] - s * d[2], d[1], s * d[0] + c * d[2]];
}

/** Whether anything of a setting is so near that its light depends on the place. */
export const isNear = (setting: LightSetting): boolean =>
  setting.panels.some(({ distanceMm }) => distanceMm !== undefined);

/** The light where a unit of length has so many millimetres. */
export const inUnits = (light: Light, unitMm: number): Light =>
  light.kind === "setting" && isNear(light.setting) ? { ...light, unitMm } : light;

/** Radiance that arrives from unit direction d at a place (missing: in the piece's middle), linear sRGB. */
export function lightRadiance(light: Light, d: Vec3, at: Vec3 = MIDDLE): Rgb {
  if (light.kind === "uniform") return WHITE;
  if (light.kind === "picture") return pictureRadiance(light.picture, turned(d, light.turnRad));
  const { axes, unitMm, turnRad } = light;
  const own = (v: Vec3): Vec3 =>
    turned(axes ? [dot(v, axes.right), dot(v, axes.up), dot(v, axes.front)] : v, turnRad);
  return settingRadiance(light.setting, own(d), unitMm === undefined ? undefined : { at: own(at), unitMm });
}

/** Where a light's axes are that is not turned with a table: the piece's own. */
const OWN_AXES: LightAxes = { right: [1, 0, 0], up: [0, 1, 0], front: [0, 0, 1] };
export const axesOf = (light: Light): LightAxes => (light.kind === "setting" && light.axes) || OWN_AXES;

/** From a setting's own axes to the piece's. */
export function outOf(light: Light & { readonly kind: "setting" }, v: Vec3): Vec3 {
  const { right, up, front } = axesOf(light);
  const [x, y, z] = turned(v, -light.turnRad);
  return addScaled(addScaled(scale(right, x), up, y), front, z);
}

/** Directions over which a mean is taken: equal steps of height are equal parts of the sphere. */
const [RINGS, SPOKES] = [96, 192];
const means = new WeakMap<object, Rgb>();

/** Mean radiance from all around. A light is asked once; turning it changes nothing. */
export function meanRadiance(light: Light): Rgb {
  if (light.kind === "uniform") return WHITE;
  const source = light.kind === "setting" ? light.setting : light.picture;
  const mean =
    means.get(source) ?? (light.kind === "setting" ? settingMean(light.setting) : pictureMean(light.picture));
  means.set(source, mean);
  return mean;
}

function settingMean(setting: LightSetting): Rgb {
  const sum: [number, number, number] = [0, 0, 0];
  for (let ring = 0; ring < RINGS; ring++)
    for (let spoke = 0; spoke < SPOKES; spoke++) {
      const y = (2 * ring + 1) / RINGS - 1;
      const [r, a] = [Math.sqrt(1 - y * y), (2 * Math.PI * spoke) / SPOKES];
      const rgb = settingRadiance(setting, [r * Math.cos(a), y, r * Math.sin(a)]);
      for (let c = 0; c < 3; c++) sum[c] += rgb[c] / (RINGS * SPOKES);
    }
  return sum;
}
