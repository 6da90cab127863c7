/** From the tracer's scene, as the TypeScript twin takes it, to what the shader takes. */

import { mediaOf } from "../core/inside/media.ts";
import { capsOf } from "../core/measure/caps.ts";
import { indexAt } from "../core/optics/glasses.ts";
import type { SceneDesign } from "../core/optics/inside.ts";
import { meteredGain } from "../core/optics/metering.ts";
import type { Scene } from "../core/optics/scene.ts";
import { type Rgb, STRATA, wavelengthIn } from "../core/optics/spectrum.ts";
import { WAVES } from "../core/optics/waviness.ts";
import { lightDefines, packBackdrop, packEnvironment, packLight } from "./pack-light.ts";
import { type PackedPictures, packPictures } from "./pack-pictures.ts";
import { packGuide, packNearLight, packTabletop, tabletopDefines } from "./pack-tabletop.ts";
import type { PackedScene, Texels } from "./packed-scene.ts";
import { planeTexels, ROW_TEXELS } from "./plane-texels.ts";
import { LIMIT_DEFINES, SHADER_LIMITS } from "./shader-limits.ts";
import { float, int, type Uniforms, uint, vec2, vec3, vec4 } from "./uniforms.ts";

const { BLOCK_PLANES, GROUP, MAX_BODIES, MAX_DESIGNS, DESIGN_TEXELS } = SHADER_LIMITS;
/** As in `path.glsl`. */
export const BEHINDS = { nothing: 0, soft: 1, light: 2 } as const;

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

export function packScene(scene: Scene, options: TraceOptions = DEFAULT_OPTIONS): PackedScene {
  const isMany = scene.planeCount > BLOCK_PLANES;
  const isRough = scene.roughness.some((alpha) => alpha > 0);
  const pictures = packPictures(scene.designs);
  const rough = isRough ? (scene.wet ? 2 : 1) : 0;
  return {
    defines: {
      ...LIMIT_DEFINES,
      CAPS: asksCaps(scene) ? "1" : "0",
      MANY_PLANES: isMany ? "1" : "0",
      ROUGH: String(rough),
      MAX_DESIGNS: String(mostDesigns(scene.designs)),
      CASINGS: String(scene.casings.length),
      SEEDS: scene.seeds ? "1" : "0",
      EDGES: scene.edgeRadius > 0 ? "1" : "0",
      WAVES: String(scene.waviness ? WAVES : 0),
      LONE_MEDIUM: String(loneMedium(scene.designs)),
      DESIGNS: String(scene.designs.reduce((kinds, { kind }) => kinds | (1 << kind), 0)),
      ...lightDefines(scene.light),
      ...tabletopDefines(scene.tabletop),
    },
    uniforms: {
      ...packLight(scene.light),
      ...packBackdrop(scene.light),
      ...packTabletop(scene.tabletop),
      ...packNumbers(scene, options),
    },
    planeCount: scene.planeCount,
    hasTable: scene.tabletop !== null,
    gain: meteredGain(scene),
    hasDispersion: options.hasDispersion,
    indexRgb: indexByChannel(scene),
    maxMeetings: options.maxMeetings,
    seed: options.seed,
    body: isMany ? NO_BLOCK : packPlanes(scene, BLOCK_PLANES),
    planes: isMany ? planeRows(scene) : null,
    designs: packDesigns(scene.designs, pictures),
    pictures: pictures.texels,
    spectrum: packSpectrum(scene),
    environment: packEnvironment(scene.light),
    mapGround: scene.tabletop?.bare ?? [0, 0, 0],
    nearLight: packNearLight(scene.tabletop),
    guide: scene.tabletop?.guide ? packGuide(scene.tabletop.guide) : null,
  };
}

/** Where the only medium stands among the designs; -1 where there is none, or several. */
function loneMedium(designs: readonly SceneDesign[]): number {
  const media = mediaOf(designs);
  return media.length === 1 ? designs.indexOf(media[0]) : -1;
}

/** Stands for a uniform block that the program has not got. */
const NO_BLOCK = new Float32Array(4);

/** Whether a ray asks only the planes whose caps it can leave by (`body.glsl`). A bubble on its way may be opened by any of them. */
const asksCaps = ({ seeds }: Scene): boolean => !seeds;

/** The planes as the scene's program asks for them in a texture; null where they come in a block. */
export const planesOf = (packed: PackedScene): Texels | null =>
  packed.defines.CAPS === "1" ? capTexels(packed) : packed.planes;

/**
 * The scene's planes as a program with CAPS asks for them, and below them their finishes in the same places. An edge is rounded
 * from where its other plane is a hair away, at most twice the radius.
 */
export function capTexels({ planes, body, planeCount, uniforms }: PackedScene): Texels {
  const packed = planes?.rgba ?? body;
  const half = packed.length / 2;
  const four = Float64Array.from(packed.subarray(0, 4 * planeCount));
  const hair = 2 * Number(uniforms.edgeRadius?.value ?? 0);
  const caps = capsOf(
    four.map((v, k) => (k % 4 === 3 ? v - hair : v)),
    planeCount,
  );
  const upper = planeTexels(four, caps);
  const lower = planeTexels(four, caps, packed.subarray(half));
  const rgba = new Float32Array(upper.length + lower.length);
  rgba.set(upper);
  rgba.set(lower, upper.length);
  return { width: ROW_TEXELS, height: rgba.length / (4 * ROW_TEXELS), rgba };
}

const wholeGroups = (count: number): number => Math.ceil(count / GROUP) * GROUP;

function packNumbers(scene: Scene, options: TraceOptions): Uniforms {
  return {
    planeCount: int(wholeGroups(scene.planeCount)),
    designCount: int(scene.designs.length),
    indexD: float(scene.nd),
    indexRgb: vec3(options.hasDispersion ? indexByChannel(scene) : [scene.nd, scene.nd, scene.nd]),
    sigmaRgb: vec3(scene.sigmaRgb),
    behind: int(BEHINDS[options.behind]),
    ...(scene.edgeRadius > 0 ? { edgeRadius: float(scene.edgeRadius) } : {}),
    ...(scene.casings.length > 0
      ? { casings: vec4(scene.casings.flatMap(({ sigmaRgb, radius }) => [...sigmaRgb, radius])) }
      : {}),
    ...(scene.seeds
      ? { seedSize: vec2([scene.seeds.radius, scene.seeds.cell]), seedOfSeeds: uint(scene.seeds.seed) }
      : {}),
    ...(scene.waviness
      ? { waves: vec4(Array.from(scene.waviness.waves)), waveSlope: float(scene.waviness.slope) }
      : {}),
  };
}

/** Index as each channel weighs it: Fresnel at it is the channel's mean Fresnel to first order in the dispersion. */
function indexByChannel(scene: Scene): Rgb {
  const channel = (c: number) =>
    scene.strata.reduce((sum, s) => sum + s.weight[c] * indexAt(scene.dispersion, wavelengthIn(s, 0.5)), 0) /
    STRATA;
  return [channel(0), channel(1), channel(2)];
}

/** Room for `places` planes, then for as many finishes, four numbers each. */
function packPlanes(scene: Scene, places: number): Float32Array {
  const packed = new Float32Array(2 * places * 4);
  packed.set(scene.planes, 0);
  // Planes that fill the last group lie far out and have no normal: no ray meets them.
  for (let i = scene.planeCount; i < places; i++) packed[4 * i + 3] = 1;
  scene.roughness.forEach((alpha, i) => {
    packed[4 * (places + i)] = alpha;
  });
  return packed;
}

function planeRows(scene: Scene): Texels {
  const width = wholeGroups(scene.planeCount);
  return { width, height: 2, rgba: packPlanes(scene, width) };
}

function packSpectrum(scene: Scene): Texels {
  const height = scene.casings.length > 0 ? 4 : 3;
  const rgba = new Float32Array(STRATA * height * 4);
  scene.strata.forEach((s, j) => {
    const index = [s.fromNm, s.midNm, s.toNm].map((nm) => indexAt(scene.dispersion, nm));
    rgba.set([...s.weight, scene.sigma[j]], 4 * j);
    rgba.set(s.basis, 4 * (STRATA + j));
    rgba.set(index, 4 * (2 * STRATA + j));
    scene.casings.forEach(({ sigma }, i) => {
      rgba[4 * (3 * STRATA + j) + i] = sigma[j];
    });
  });
  return { width: STRATA, height, rgba };
}

/** Two vectors of colour and two numbers of shape; of a picture, where its two sides lie among the pictures. */
function looksOf({ rgb, rgb2, faces, more }: SceneDesign, { placeOf }: PackedPictures): readonly number[] {
  if (!faces) return [...rgb, more[3] ?? 0, ...rgb2, more[4] ?? 0];
  return [...placeOf(faces.front), ...placeOf(faces.back === "through" ? null : faces.back)];
}

/** Room in the program and its block: a row of bubbles is many bodies. */
const mostDesigns = ({ length }: readonly SceneDesign[]): number =>
  length > MAX_DESIGNS ? MAX_BODIES : MAX_DESIGNS;

function packDesigns(designs: readonly SceneDesign[], pictures: PackedPictures): Float32Array {
  const packed = new Float32Array(mostDesigns(designs) * DESIGN_TEXELS * 4);
  designs.forEach((design, i) => {
    const [over = 0, irregular = 0, p = 0, , , s = 0, ...phases] = design.more;
    const texels = [
      [...design.centre, design.kind],
      [...design.axisX, design.extra],
      [...design.axisY, over],
      [...design.axisZ, irregular],
      [...design.size, p],
      looksOf(design, pictures),
      [...phases, s],
    ];
    packed.set(texels.flat(), i * DESIGN_TEXELS * 4);
  });
  return packed;
}
