/** A light as `light.glsl` takes it. */

import { addScaled, scale, type Vec3 } from "../core/geometry/vec.ts";
import type { EquirectPicture } from "../core/optics/equirect.ts";
import { axesOf, type Light, lightRadiance, meanRadiance, outOf, type Panel } from "../core/optics/lights.ts";
import type { Texels } from "./packed-scene.ts";
import { SHADER_LIMITS } from "./shader-limits.ts";
import { float, type Uniforms, vec2, vec3, vec4 } from "./uniforms.ts";

const { MAX_PANELS } = SHADER_LIMITS;
/** The variant of `light.glsl`. */
const LIGHTS = { uniform: 0, setting: 1, picture: 2 } as const;

/** What has to be set for `light.glsl`. */
export const lightDefines = (light: Light): Readonly<Record<string, string>> => ({
  LIGHT: String(LIGHTS[light.kind]),
  PANELS: String(light.kind === "setting" ? light.setting.panels.length : 0),
  NEAR_PANELS: String(light.kind === "setting" ? light.setting.panels.filter(isNear).length : 0),
});

/** @throws RangeError for a setting with more panels than the shader holds */
export function packLight(light: Light): Uniforms {
  const everywhere = { lightAround: vec3(meanRadiance(light)), lightUp: vec3(axesOf(light).up) };
  if (light.kind === "uniform") return everywhere;
  if (light.kind === "setting") return { ...everywhere, ...packSetting(light) };
  return { ...everywhere, lightTurn: vec2([Math.cos(light.turnRad), Math.sin(light.turnRad)]) };
}

type OfSetting = Light & { readonly kind: "setting" };
const isNear = ({ distanceMm }: Panel): boolean => distanceMm !== undefined;

function packSetting(light: OfSetting): Uniforms {
  const { zenith, horizon, floor, nadir, spread, panels } = light.setting;
  if (panels.length > MAX_PANELS) throw new RangeError(`${panels.length} panels, at most ${MAX_PANELS}`);
  const inOrder = [...panels.filter((panel) => !isNear(panel)), ...panels.filter(isNear)];
  return {
    skyColours: vec4([zenith, horizon, floor, nadir].flatMap((rgb) => [...rgb, 0])),
    skySpread: float(spread),
    ...(panels.length > 0 && { panels: vec4(inOrder.flatMap((panel) => packPanel(panel, light))) }),
  };
}

/** A panel turned with its light and put into its axes, so that the shader need not turn every ray. */
function packPanel(panel: Panel, light: OfSetting): number[] {
  const along = (v: Vec3, factor: number) => scale(outOf(light, v), factor);
  const per = light.unitMm && panel.distanceMm ? light.unitMm / panel.distanceMm : 0;
  return [
    ...[...along(panel.towards, 1), panel.round ? 1 : 0],
    ...[...along(panel.right, 1 / panel.halfWidth), 1 / panel.soft],
    ...[...along(panel.up, 1 / panel.halfHeight), panel.bar > 0 ? 5 / panel.bar : 0],
    ...[panel.columns, panel.rows, per, 0],
    ...[...panel.rgb, 0],
    ...[...panel.rgbBelow, 0],
  ];
}

/** Height (d.y) at which what comes from above and below begins. */
const LEVEL = 0.3;
/** Directions over which a band's colour is taken. */
const [RINGS, SPOKES] = [6, 24];

/** Mean radiance from above, level and below: a backdrop without shapes. */
export function packBackdrop(light: Light): Uniforms {
  const { right, up, front } = axesOf(light);
  const mean = (low: number, high: number): Vec3 => {
    const sum: [number, number, number] = [0, 0, 0];
    for (let k = 0; k < RINGS * SPOKES; k++) {
      // Equal steps of height are equal parts of the sphere.
      const y = low + ((high - low) * (Math.floor(k / SPOKES) + 0.5)) / RINGS;
      const [r, a] = [Math.sqrt(1 - y * y), (2 * Math.PI * (k % SPOKES)) / SPOKES];
      const level = addScaled(scale(right, r * Math.cos(a)), front, r * Math.sin(a));
      const rgb = lightRadiance(light, addScaled(level, up, y));
      for (let c = 0; c < 3; c++) sum[c] += rgb[c] / (RINGS * SPOKES);
    }
    return sum;
  };
  return { softBands: vec3([...mean(LEVEL, 1), ...mean(-LEVEL, LEVEL), ...mean(-1, -LEVEL)]) };
}

/** The picture around as a texture's data, RGBA, rows from the top. */
export function packEnvironment(light: Light): Texels | null {
  if (light.kind !== "picture") return null;
  const { width, height, data }: EquirectPicture = light.picture;
  const rgba = new Float32Array(width * height * 4);
  for (let i = 0; i < width * height; i++) rgba.set(data.subarray(3 * i, 3 * i + 3), 4 * i);
  return { width, height, rgba };
}
