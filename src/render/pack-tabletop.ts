/** A table under the piece as `tabletop.glsl` takes it. */
import type { Guide } from "../core/optics/guide.ts";
import type { Tabletop } from "../core/optics/tabletop.ts";
import { float, type Uniforms, vec2, vec3 } from "./gl-program.ts";
import type { Texels } from "./packed-scene.ts";

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
  const { up, height, material, radiusMm, across, along, bare } = tabletop;
  const { rgb } = material;
  const around = (c: 0 | 1 | 2) => (bare[c] + rgb[c] * bare[c]) / 2;
  return {
    tableUp: vec3(up),
    tableHeight: float(height),
    tableRgb: vec3(rgb),
    radiusMm: float(radiusMm),
    tableBare: vec3(bare),
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
  const half = reach + (hasRing ? BESIDE_RING : 0);
  // scale * steepness = CLOSE, scale * sinh(steepness) = half: by halves, since sinh(x) / x grows
  let [low, high] = [0, 10];
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2;
    if ((CLOSE * Math.sinh(middle)) / middle < half) low = middle;
    else high = middle;
  }
  return [low, CLOSE / low];
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
