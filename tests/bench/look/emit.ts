/**
 * Writes what `egl.py` runs: assembled shaders and packed scenes. usage: emit.ts FOLDER [NAME ...]; without names all of them
 * With the pictures: one marble in each light, plans of the app half-finished and finished.
 */

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { EDGE_MM } from "../../../src/core/optics/edges.ts";
import { ROUGHNESS } from "../../../src/core/optics/finish.ts";
import { LIGHT_SETTINGS, type LightName } from "../../../src/core/optics/light-settings.ts";
import { MATERIALS } from "../../../src/core/optics/materials.ts";
import { RESTS } from "../../../src/core/optics/rest.ts";
import { makeScene, putOnTable, type Scene, sceneOfPlan } from "../../../src/core/optics/scene.ts";
import type { Piece } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import {
  areaAt,
  blindStepsAt,
  isWholeAt,
  mapPassAt,
  mapPassesDue,
  mapSide,
  SMOOTHING_STEPS,
} from "../../../src/render/light-map.ts";
import {
  DEFAULT_OPTIONS,
  packScene,
  planesOf,
  STILL_MEETINGS,
  type TraceOptions,
} from "../../../src/render/pack-scene.ts";
import { halfOfPass, type Pass, passAt, samplesOfHalves, soFar } from "../../../src/render/pass.ts";
import { assembleShader } from "../../../src/render/shader-assembler.ts";
import { int, mat3, type Uniforms, uint, vec2, vec3 } from "../../../src/render/uniforms.ts";
import {
  DEFAULT_DISTANCE,
  DEFAULT_FIELD_DEG,
  type View,
  viewColumns,
  viewFrom,
} from "../../../src/render/view.ts";
import { EXAMPLES } from "../../../src/ui/examples.ts";
import { CONTACT_PICTURES, sceneOfPicture, viewOfPicture } from "../../browser/contact-pictures.ts";
import { LOOK_SCENES } from "../../browser/look-scenes.ts";
import { BENCH_VIEW, bareUniforms, benchScene, exampleOnTable } from "./scenes.ts";
import { bareText, readShaderTexts } from "./shader-texts.ts";

const SIZES = [
  [1920, 1080],
  [3840, 2160],
];
const PASSES = 65;
const PICTURE = { size: 900, passes: 801 };
/** Day's paper, sRGB bytes. */
const GROUND = [241, 238, 231];

const texts = readShaderTexts();
const shaders: Record<string, string> = {
  "screen.vert": assembleShader(texts, "screen.vert").text,
  "resolve.frag": assembleShader(texts, "resolve.frag").text,
  "smooth-map.frag": assembleShader(texts, "smooth-map.frag").text,
  "display.frag": assembleShader(texts, "display.frag").text,
};

/** Floats as JSON would have them: typed arrays become lists. */
const plain = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (_, v) => (v instanceof Float32Array ? Array.from(v) : v)));

/** A pass with what changes from one to the next, and whether it reads a light map that has so many passes. */
const passOf = (index: number, { channels, uniforms }: Pass, sketches: number, mapPasses: number) => ({
  channels,
  uniforms: plain({ ...uniforms, frameIndex: uint(index) }),
  half: halfOfPass(index, sketches),
  readsMap: mapPasses > 0,
});

/** Every pass, each with those over the light map that come before it: where there is no table nobody draws them. */
function passList(count: number, options: Omit<TraceOptions, "behind">) {
  const sketches = options.hasDispersion ? 1 : 0;
  const scene = { ...options, sketches };
  const map = { passes: 0, smoothedAt: 0 };
  const mapPass = () => {
    const pass = passOf(map.passes, mapPassAt(map.passes, scene), sketches, map.passes);
    const isWhole = isWholeAt(map.passes, sketches);
    map.passes += 1;
    const blind = blindStepsAt(map.passes, map.smoothedAt, sketches);
    if (blind !== null) map.smoothedAt = map.passes;
    const from = ([0, 1] as const).map((each) => soFar(each, map.passes, sketches));
    return { ...pass, isWhole, ...(blind !== null && { smooths: { from, blind } }) };
  };
  return Array.from({ length: count }, (_, index) => {
    const before = Array.from({ length: mapPassesDue(map.passes, index, "card") }, mapPass);
    return { ...passOf(index, passAt(index, scene), sketches, map.passes), map: before };
  });
}

function tracerJob(
  name: string,
  scene: Scene,
  view: View,
  options: Partial<TraceOptions> = {},
  picture?: { file: string; exposure: number },
) {
  const packed = packScene(scene, { ...DEFAULT_OPTIONS, ...options });
  const planes = planesOf(packed);
  const fragmentsOf = (name: string) =>
    Object.fromEntries(
      ([1, 3] as const).map((channels) => {
        const defines = { ...packed.defines, CHANNELS: String(channels) };
        const fragment = `${name} ${JSON.stringify(defines)}`;
        shaders[fragment] ??= assembleShader(texts, name, defines).text;
        return [channels, fragment];
      }),
    );
  const passes = picture ? PICTURE.passes : PASSES;
  const camera: Uniforms = {
    eye: vec3(view.eye),
    view: mat3(viewColumns(view)),
    lens: vec2(view.lens ? [view.lens.radius, view.lens.focus] : [0, 1]),
    origin: vec2([0, 0]),
    sumSoFar: int(0),
  };
  return {
    name,
    vertex: "screen.vert",
    fragments: fragmentsOf("trace.frag"),
    ...(packed.hasTable && {
      map: {
        fragments: fragmentsOf("light-map.frag"),
        smooth: "smooth-map.frag",
        steps: SMOOTHING_STEPS,
        ground: plain(vec3(packed.mapGround)),
      },
    }),
    resolve: "resolve.frag",
    display: "display.frag",
    uniforms: plain({ ...packed.uniforms, ...camera }),
    blocks: plain({ Body: packed.body, Designs: packed.designs }),
    textures: plain({
      spectrum: packed.spectrum,
      ...(planes && { planes }),
      ...(packed.environment && { environment: packed.environment }),
      ...(packed.guide && { guide: packed.guide }),
      ...(packed.nearLight && { nearLight: packed.nearLight }),
      // bytes there, floats here: what is looked up is the same
      ...(packed.pictures && {
        pictures: { ...packed.pictures, rgba: Float32Array.from(packed.pictures.rgba, (byte) => byte / 255) },
      }),
    }),
    sizes: picture ? [[PICTURE.size, PICTURE.size]] : SIZES,
    passes: passList(passes, packed),
    samples: samplesOfHalves(passes, packed.hasDispersion ? 1 : 0),
    ...(picture && { picture: { ...picture, gain: packed.gain, ground: GROUND } }),
  };
}

function bareJob(count: number) {
  const fragment = `bare.frag with ${count} planes`;
  shaders[fragment] = bareText(count);
  return {
    name: `yardstick: ${count} planes, 12 bounces`,
    vertex: "screen.vert",
    fragments: { 3: fragment },
    uniforms: plain(bareUniforms(BENCH_VIEW, count)),
    blocks: {},
    textures: {},
    sizes: SIZES,
    passes: passList(PASSES, { ...DEFAULT_OPTIONS, hasDispersion: false }),
    samples: samplesOfHalves(PASSES, 0),
  };
}

const CORE: Piece["inside"] = [{ kind: "core", diameterMm: 12, rgb: [0.7, 0.15, 0.05], atMm: [0, 0, -2] }];

const timings = () => [
  ...[25, 60, 120].map(bareJob),
  ...[25, 60, 120, 250].map((count) => tracerJob(`${count} facets`, benchScene(count), BENCH_VIEW)),
  tracerJob("25 facets, no dispersion", benchScene(25), BENCH_VIEW, { hasDispersion: false }),
  tracerJob("25 facets, at most 12 bounces", benchScene(25), BENCH_VIEW, { maxMeetings: 13 }),
  tracerJob("25 facets, ground", benchScene(25, "ground"), BENCH_VIEW),
  tracerJob("25 facets, core inside", benchScene(25, "polished", CORE), BENCH_VIEW),
  bareJob(25),
];

const marble: Piece = {
  diameterMm: 30,
  glass: "borosilicate",
  inside: [{ kind: "core", diameterMm: 14, sizeAs: "seen", rgb: [0.03, 0.16, 0.42], atMm: [1, -0.5, -1] }],
};
const inLight = (name: LightName) =>
  ({ kind: "setting", setting: LIGHT_SETTINGS[name], turnRad: 0 }) as const;
const lights = Object.keys(LIGHT_SETTINGS) as LightName[];
const oblique = viewFrom(-70, 62, 10, 14.5);
const pictures = () => [
  ...lights.map((name) =>
    tracerJob(
      `marble, ${name}`,
      makeScene({ piece: marble, planes: [], light: inLight(name) }),
      oblique,
      {
        behind: name === "overcast" ? "light" : "nothing",
      },
      { file: `marble-${name}.png`, exposure: 0 },
    ),
  ),
  ...EXAMPLES.slice(-3).map((plan) =>
    tracerJob(
      plan.name,
      sceneOfPlan(solvePlan(plan), inLight("north-window"), false, undefined, EDGE_MM),
      oblique,
      {},
      {
        file: `plan-${plan.name.toLowerCase().replaceAll(" ", "-")}.png`,
        exposure: 0,
      },
    ),
  ),
  ...(["ground", "prepolished"] as const).map((finish) => {
    const solved = solvePlan(EXAMPLES[EXAMPLES.length - 1]);
    const roughness = solved.planes.map(() => ROUGHNESS[finish]);
    const scene = makeScene({
      piece: solved.plan.piece,
      planes: solved.planes,
      roughness,
      light: inLight("north-window"),
    });
    return tracerJob(`all ${finish}`, scene, oblique, {}, { file: `finish-${finish}.png`, exposure: 0 });
  }),
];

/** The scenes that the shader and its twin share, to hold a real card to the twin as well. */
const CHECK_SIZE = 48;
const CHECK_SAMPLES = 512;
const checks = () =>
  LOOK_SCENES.flatMap((scene, k) =>
    [11, 12].map((seed) => {
      const view = viewFrom(...scene.from, DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, scene.up);
      const options = { hasDispersion: scene.hasDispersion, seed, behind: "light" } as const;
      const job = tracerJob(scene.name, scene.make(), view, options);
      const count = CHECK_SAMPLES;
      return {
        ...job,
        sizes: [[CHECK_SIZE, CHECK_SIZE]],
        passes: passList(count, { ...DEFAULT_OPTIONS, ...options }),
        samples: samplesOfHalves(count, scene.hasDispersion ? 1 : 0),
        dump: `scene-${k}-${seed}.f32`,
      };
    }),
  );

/**
 * A product picture: 61 facets lying on a paper table, dispersion. Timed with the table and without, as many samples as the piece
 * alone would be; then the same piece small, at numbers of passes that a person waits for and converged, to see how much noise is left.
 */
const PRODUCT_SIZE = 1080;
const NOISE_SIZE = 540;
const NOISE_PASSES = [1, 5, 17, 33, 65, 129, 513];
const CONVERGED_PASSES = 4097;
const productView = viewFrom(...RESTS.back.from, 10, 14.5, [0, 0, 1]);
const productPiece = benchScene(61);
const onPaper = putOnTable(productPiece, [0, 0, 1], -1, { material: MATERIALS.paper, radiusMm: 15 });
const productJob = (
  name: string,
  scene: Scene,
  sizes: readonly number[][],
  passes: number,
  seed: number,
  maxMeetings = DEFAULT_OPTIONS.maxMeetings,
) => ({
  ...tracerJob(name, scene, productView, { seed, maxMeetings }),
  sizes,
  passes: passList(passes, { ...DEFAULT_OPTIONS, seed, maxMeetings }),
  samples: samplesOfHalves(passes, 1),
});
const square = (size: number) => [[size, size]];
const product = () => [
  productJob("61 facets, no table", productPiece, square(PRODUCT_SIZE), PASSES, 1),
  productJob("61 facets on paper", onPaper, square(PRODUCT_SIZE), PASSES, 1),
  productJob("61 facets on paper, saved", onPaper, square(PRODUCT_SIZE), PASSES, 1, STILL_MEETINGS),
  ...NOISE_PASSES.map((passes) => ({
    ...productJob(`on paper, ${passes} passes`, onPaper, square(NOISE_SIZE), passes, 1),
    dump: `product-${passes}.f32`,
    picture: { file: `product-${passes}.png`, exposure: 0, gain: [1, 1, 1], ground: GROUND },
  })),
  {
    ...productJob("on paper, converged", onPaper, square(NOISE_SIZE), CONVERGED_PASSES, 2),
    dump: "product-converged.f32",
    picture: { file: "product-converged.png", exposure: 0, gain: [1, 1, 1], ground: GROUND },
  },
];

/** The contact sheet as a card traces it in seconds: as large as a page wants them, free of noise. */
const CONTACT = { size: 840, passes: 401 };
const contact = () =>
  CONTACT_PICTURES.map((picture, k) => {
    const scene = sceneOfPicture(picture);
    const options = { maxMeetings: STILL_MEETINGS, behind: "light" } as const;
    const file = `contact-${String(k + 1).padStart(2, "0")}.png`;
    const job = tracerJob(picture.name, scene, viewOfPicture(picture, scene), options, {
      file,
      exposure: picture.exposure,
    });
    return {
      ...job,
      sizes: square(CONTACT.size),
      passes: passList(CONTACT.passes, { ...DEFAULT_OPTIONS, ...options }),
      samples: samplesOfHalves(CONTACT.passes, 1),
    };
  });

/** What Look shows first of examples on tables, converged: what a first picture in software is held to. */
const FIRST_SIZE = 480;
const firstOnTables = () =>
  (
    [
      ["Both banks", "paper"],
      ["Three steps up", "linen"],
    ] as const
  ).map(([plan, table]) => {
    const { scene, view } = exampleOnTable(plan, table);
    const options = { behind: "light", seed: 2 } as const;
    const file = `first-${plan.toLowerCase().replaceAll(" ", "-")}.png`;
    return {
      ...tracerJob(`${plan} on ${table}`, scene, view, options, { file, exposure: 0 }),
      sizes: square(FIRST_SIZE),
      passes: passList(CONVERGED_PASSES, { ...DEFAULT_OPTIONS, ...options }),
      samples: samplesOfHalves(CONVERGED_PASSES, 1),
    };
  });

const [folder, ...only] = process.argv.slice(2);
if (!folder) throw new Error("usage: emit.ts FOLDER [NAME ...]");
mkdirSync(folder, { recursive: true });
/** A pass over a map that only goes over what lies close to the piece. */
const INNER_PASS = 24;
/** Each table's light map has the size that the picture wants. */
type Job = { readonly sizes: readonly (readonly number[])[]; readonly map?: object };
const withMapSides = <T extends Job>(job: T): T => {
  if (!job.map) return job;
  const sides = job.sizes.map(([width, height]) => mapSide(width * height));
  const inner = sides.map((side) => areaAt(INNER_PASS, 1, side));
  return { ...job, map: { ...job.map, sides, inner } };
};
for (const [name, make] of Object.entries({
  timings,
  checks,
  product,
  contact,
  pictures,
  first: firstOnTables,
})) {
  if (only.length > 0 && !only.includes(name)) continue;
  const jobs: readonly Job[] = make();
  writeFileSync(join(folder, `${name}.json`), JSON.stringify({ shaders, jobs: jobs.map(withMapSides) }));
}
