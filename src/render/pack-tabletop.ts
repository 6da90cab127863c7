/** A table under the piece as `tabletop.glsl` takes it. */
import { addScaled, scale } from "../core/geometry/vec.ts";
import type { Guide } from "../core/optics/guide.ts";
import { thrownBackOf } from "../core/optics/near-light.ts";
import type { Tabletop } from "../core/optics/tabletop.ts";
import type { Texels } from "./packed-scene.ts";
import { float, type Uniforms, vec2, vec3 } from "./uniforms.ts";

/** What has to be set for `path.glsl` and `tabletop.glsl`. */
export const tabletopDefines = (tabletop: Tabletop | null): Readonly<Record<string, string>> => ({
  TABLE: tabletop ? "1" : "0",
  RING: tabletop?.hasRing ? "1" : "0",
  GUIDED: tabletop?.guide ? "1" : "0",
  MATERIAL: String(tabletop?.material.pattern ?? 0),
});

/** With a table its light and what it throws back of it, half each, are the mean of the light all around. */
export function packTabletop(tabletop: Tabletop | null): Uniforms {
  if (!tabletop) return {};
  const { up, height, material, radiusMm, across, along, bare, bareFar } = tabletop;
  const { rgb } = material;
  const around = (c: 0 | 1 | 2) => (bare[c] + rgb[c] * bare[c]) / 2;
  return {
    tableUp: vec3(up),
    tableHeight: float(height),
    tableRgb: vec3(rgb),
    radiusMm: float(radiusMm),
    tableBare: vec3(bareFar),
    nearSpread: vec2(nearSpread(tabletop)),
    tableAcross: vec3(across),
    tableAlong: vec3(along),
    lightAround: vec3([around(0), around(1), around(2)]),
    mapSpread: vec2(mapSpread(tabletop)),
  };
}

/** The ring stands beside the piece, and throws its own shadow. */
const BESIDE_RING = 1.2;
/** Half a side of the light map, were all of it as close as it is in the middle. */
const CLOSE = 1.5;

/** How steeply the light map's texels grow towards the rim, and their scale: see `tabletop.glsl`. */
function mapSpread({ reach, hasRing }: Tabletop): readonly [number, number] {
  return spreadTo(reach + (hasRing ? BESIDE_RING : 0), CLOSE);
}

/**
 * Steepness and scale of a square with `half` a side, which would be `close` were all of it as close as in the middle:
 * scale * steepness = close, scale * sinh(steepness) = half.
 */
function spreadTo(half: number, close: number): readonly [number, number] {
  // by halves, since sinh(x) / x grows
  let [low, high] = [0, 10];
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2;
    if ((close * Math.sinh(middle)) / middle < half) low = middle;
    else high = middle;
  }
  return [low, close / low];
}

/** Texels each way of what the table throws back of panels near by. */
const NEAR_SIDE = 96;
/** Half a side of that, in distances of the farthest panel; were all as close as in the middle, in those of the nearest. */
const [NEAR_HALF, NEAR_CLOSE] = [5, 2.5];

function nearSpread({ emitters }: Tabletop): readonly [number, number] {
  if (emitters.length === 0) return [1, 1];
  const distances = emitters.map(({ at }) => Math.hypot(...at));
  return spreadTo(NEAR_HALF * Math.max(...distances), NEAR_CLOSE * Math.min(...distances));
}

/** What a white table throws back of panels near by, texel by texel; null where there are none. */
export function packNearLight(tabletop: Tabletop | null): Texels | null {
  if (!tabletop || tabletop.emitters.length === 0) return null;
  const { emitters, up, across, along, height } = tabletop;
  const [steepness, size] = nearSpread(tabletop);
  const at = (k: number) => size * Math.sinh(steepness * ((2 * k + 1) / NEAR_SIDE - 1));
  const rgba = new Float32Array(4 * NEAR_SIDE ** 2);
  for (let i = 0; i < NEAR_SIDE ** 2; i++) {
    const level = addScaled(scale(across, at(i % NEAR_SIDE)), along, at(Math.floor(i / NEAR_SIDE)));
    rgba.set(thrownBackOf(emitters, up, addScaled(level, up, height)), 4 * i);
  }
  return { width: NEAR_SIDE, height: NEAR_SIDE, rgba };
}

/** Each interval's two ends: columns row by row, and in the last row the rows' own. */
export function packGuide({ rows, columns, rowsBefore, columnsBefore }: Guide): Texels {
  const rgba = new Float32Array(4 * columns * (rows + 1));
  for (let row = 0; row < rows; row++) {
    rgba.set([rowsBefore[row], rowsBefore[row + 1]], 4 * (rows * columns + row));
    for (let column = 0; column < columns; column++) {
      const at = row * (columns + 1) + column;
      rgba.set([columnsBefore[at], columnsBefore[at + 1]], 4 * (row * columns + column));
    }
  }
  return { width: columns, height: rows + 1, rgba };
}
