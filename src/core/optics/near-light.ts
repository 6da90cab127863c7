/**
 * Light that panels near by send to a table: what a white one throws back of it, place by place. Unit-sphere lengths, the
 * piece's own axes.
 */
import { dot, scale, type Vec3 } from "../geometry/vec.ts";
import { type Light, outOf, type Panel, panelCover } from "./lights.ts";
import type { Rgb } from "./spectrum.ts";

/** A small part of a panel. */
export interface Emitter {
  readonly at: Vec3;
  /** Unit direction away from what it glows at. */
  readonly back: Vec3;
  /** Radiance times area over pi. */
  readonly rgb: Rgb;
}

/** Parts of a panel each way: of a round one rings and spokes of the same area. */
const PARTS = 10;

/** Middle of a part, -1 .. 1 from edge to edge, and its share of the panel's area. */
function partOf(panel: Panel, i: number, k: number): readonly [number, number, number] {
  if (!panel.round) return [(2 * i + 1) / PARTS - 1, (2 * k + 1) / PARTS - 1, 4 / PARTS ** 2];
  // the ring's radius of the same second moment
  const r = Math.sqrt((i + 0.5) / PARTS);
  const turn = (2 * Math.PI * (k + 0.5)) / PARTS;
  return [r * Math.cos(turn), r * Math.sin(turn), Math.PI / PARTS ** 2];
}

/** What of a light is near by, in small parts; nothing where the light has no unit. */
export function emittersOf(light: Light): readonly Emitter[] {
  if (light.kind !== "setting" || light.unitMm === undefined) return [];
  const { setting, unitMm } = light;
  return setting.panels.flatMap((panel) => {
    if (panel.distanceMm === undefined) return [];
    const distance = panel.distanceMm / unitMm;
    const [back, right, up] = [panel.towards, panel.right, panel.up].map((v) => outOf(light, v));
    const area = panel.halfWidth * panel.halfHeight * distance ** 2;
    return Array.from({ length: PARTS ** 2 }, (_, n): Emitter => {
      const [x, y, share] = partOf(panel, Math.floor(n / PARTS), n % PARTS);
      const strength = (panelCover(panel, x, y) * share * area) / Math.PI;
      const glow = (c: 0 | 1 | 2) =>
        strength * (panel.rgb[c] + 0.5 * (1 - y) * (panel.rgbBelow[c] - panel.rgb[c]));
      const place = (c: 0 | 1 | 2) => back[c] + x * panel.halfWidth * right[c] + y * panel.halfHeight * up[c];
      return { at: scale([place(0), place(1), place(2)], distance), back, rgb: [glow(0), glow(1), glow(2)] };
    });
  });
}

/** What a white table of unit normal `up` throws back at q of that. */
export function thrownBackOf(emitters: readonly Emitter[], up: Vec3, q: Vec3): Rgb {
  const sum: [number, number, number] = [0, 0, 0];
  for (const { at, back, rgb } of emitters) {
    const v: Vec3 = [at[0] - q[0], at[1] - q[1], at[2] - q[2]];
    const square = dot(v, v);
    const share = (Math.max(0, dot(v, up)) * Math.max(0, dot(v, back))) / (square * square);
    for (let c = 0; c < 3; c++) sum[c] += share * rgb[c];
  }
  return sum;
}
