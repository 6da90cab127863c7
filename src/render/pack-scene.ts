/** From the tracer's scene, as the TypeScript twin takes it, to what the shader takes. */
import { indexAt } from "../core/optics/glasses.ts";
import type { SceneDesign } from "../core/optics/inside.ts";
import type { Scene } from "../core/optics/scene.ts";
import { type Rgb, STRATA, wavelengthIn } from "../core/optics/spectrum.ts";
import { float, int, type Uniforms, vec3 } from "./gl-program.ts";
import { lightDefines, packBackdrop, packEnvironment, packLight } from "./pack-light.ts";
import type { PackedScene, Texels } from "./packed-scene.ts";

/** As in `body.glsl` and `inside.glsl`. */
export const MAX_PLANES = 256;
const GROUP = 8;
export const MAX_DESIGNS = 8;
const DESIGN_TEXELS = 8;
/** As in `path.glsl`. */
const BEHINDS = { nothing: 0, soft: 1, light: 2 } as const;

/** What whoever looks past the piece sees: nothing, so that the page shows; the light without its shapes; the light. */
export type Behind = "nothing" | "soft" | "light";

export interface TraceOptions {
  readonly hasDispersion: boolean;
  /** Surfaces a path may meet, 1 .. 256; the light's mean stands for where what is still inside would come from. */
  readonly maxMeetings: number;
  readonly seed: number;
  readonly behind: Behind;
}

/**
 * On a graphics card all pixels wait for the longest path of their neighbours, and what goes on after so many surfaces is a
 * hundredth or two of the light. A still picture takes its time.
 */
const LIVE_MEETINGS = 16;
export const STILL_MEETINGS = 64;

export const DEFAULT_OPTIONS: TraceOptions = {
  hasDispersion: true,
  maxMeetings: LIVE_MEETINGS,
  seed: 1,
  behind: "nothing",
};

/** @throws RangeError for more planes or designs than the shader holds */
export function packScene(scene: Scene, options: TraceOptions = DEFAULT_OPTIONS): PackedScene {
  atMost("planes", scene.planeCount, MAX_PLANES);
  atMost("designs inside", scene.designs.length, MAX_DESIGNS);
  const isRough = scene.roughness.some((alpha) => alpha > 0);
  const rough = isRough ? (scene.wet ? 2 : 1) : 0;
  return {
    defines: {
      ROUGH: String(rough),
      DESIGNS: String(scene.designs.reduce((kinds, { kind }) => kinds | (1 << kind), 0)),
      ...lightDefines(scene.light),
    },
    uniforms: { ...packLight(scene.light), ...packBackdrop(scene.light), ...packNumbers(scene, options) },
    planeCount: scene.planeCount,
    hasDispersion: options.hasDispersion,
    maxMeetings: options.maxMeetings,
    seed: options.seed,
    body: packBody(scene),
    designs: packDesigns(scene.designs),
    spectrum: packSpectrum(scene),
    environment: packEnvironment(scene.light),
  };
}

function atMost(what: string, count: number, most: number): void {
  if (count > most) throw new RangeError(`${count} ${what}, at most ${most} can be shown`);
}

function packNumbers(scene: Scene, options: TraceOptions): Uniforms {
  return {
    planeCount: int(Math.ceil(scene.planeCount / GROUP) * GROUP),
    designCount: int(scene.designs.length),
    indexD: float(scene.nd),
    indexRgb: vec3(options.hasDispersion ? indexByChannel(scene) : [scene.nd, scene.nd, scene.nd]),
    sigmaRgb: vec3(scene.sigmaRgb),
    behind: int(BEHINDS[options.behind]),
  };
}

/** Index as each channel weighs it: Fresnel at it is the channel's mean Fresnel to first order in the dispersion. */
function indexByChannel(scene: Scene): Rgb {
  const channel = (c: number) =>
    scene.strata.reduce((sum, s) => sum + s.weight[c] * indexAt(scene.dispersion, wavelengthIn(s, 0.5)), 0) /
    STRATA;
  return [channel(0), channel(1), channel(2)];
}

function packBody(scene: Scene): Float32Array {
  const body = new Float32Array(2 * MAX_PLANES * 4);
  body.set(scene.planes, 0);
  // Planes that fill the last group lie far out and have no normal: no ray meets them.
  for (let i = scene.planeCount; i < MAX_PLANES; i++) body[4 * i + 3] = 1;
  scene.roughness.forEach((alpha, i) => {
    body[4 * (MAX_PLANES + i)] = alpha;
  });
  return body;
}

function packSpectrum(scene: Scene): Texels {
  const rgba = new Float32Array(STRATA * 3 * 4);
  scene.strata.forEach((s, j) => {
    const index = [s.fromNm, s.midNm, s.toNm].map((nm) => indexAt(scene.dispersion, nm));
    rgba.set([...s.weight, scene.sigma[j]], 4 * j);
    rgba.set(s.basis, 4 * (STRATA + j));
    rgba.set(index, 4 * (2 * STRATA + j));
  });
  return { width: STRATA, height: 3, rgba };
}

function packDesigns(designs: readonly SceneDesign[]): Float32Array {
  const packed = new Float32Array(MAX_DESIGNS * DESIGN_TEXELS * 4);
  designs.forEach((design, i) => {
    const texels = [
      [...design.centre, design.kind],
      [...design.axisX, design.extra],
      [...design.axisY, 0],
      [...design.axisZ, 0],
      [...design.size, 0],
      [...design.rgb, 0],
      [...design.rgb2, 0],
    ];
    packed.set(texels.flat(), i * DESIGN_TEXELS * 4);
  });
  return packed;
}
