/** The tracer without the app: traces one of the shared scenes and hands the linear picture to the test. */
import type { Lens } from "../../src/core/optics/camera.ts";
import { Accumulator } from "../../src/render/accumulator.ts";
import { checkDevice } from "../../src/render/device-check.ts";
import { makeFramebuffer } from "../../src/render/gl-target.ts";
import { type Behind, DEFAULT_OPTIONS, packScene } from "../../src/render/pack-scene.ts";
import type { PackedScene } from "../../src/render/packed-scene.ts";
import { COLOURED_SKETCHES } from "../../src/render/pass.ts";
import { type LoadedScene, TraceEngine } from "../../src/render/trace-engine.ts";
import { float } from "../../src/render/uniforms.ts";
import { DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, viewFrom } from "../../src/render/view.ts";
import { ALL_SCENES } from "./look-scenes.ts";

let engine: Promise<TraceEngine> | null = null;

function openEngine(): Promise<TraceEngine> {
  const gl = document.createElement("canvas").getContext("webgl2");
  const check = checkDevice(gl);
  if (!gl || !check.pass) throw new Error(`${check.code}: ${check.detail}`);
  return TraceEngine.create(gl);
}

export interface TraceWish {
  /** Pixels across and down of what is traced: the middle of a picture of `of` x `of`. */
  readonly size: number;
  readonly of: number;
  readonly seed: number;
  readonly samples: number;
  /** Missing: the light itself. */
  readonly behind?: Behind;
  /** Missing: a pinhole. */
  readonly lens?: Lens;
}

/** Passes of a picture by which its table's light map holds enough paths to be smoothed by what its halves differ by. */
const PASSES_BEFORE = 10;

/** Traces scene `k` of all shared ones, and hands over what was gathered. */
async function gather<T>(
  k: number,
  { size, of, seed, samples, behind = "light", lens }: TraceWish,
  take: (tracer: TraceEngine, target: Accumulator, loaded: LoadedScene) => T,
): Promise<T> {
  engine ??= openEngine();
  const tracer = await engine;
  const { make, from, up, hasDispersion } = ALL_SCENES[k];
  const packed = packScene(make(), { ...DEFAULT_OPTIONS, hasDispersion, seed, behind });
  await tracer.prepare(packed);
  const loaded = tracer.load(packed, of * of);
  const target = new Accumulator(tracer.gl, size, size);
  target.restart(loaded.sketches);
  const pinhole = viewFrom(...from, DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, up);
  const view = lens ? { ...pinhole, lens } : pinhole;
  const corner = Math.floor((of - size) / 2);
  const frame = { x: corner, y: corner, width: of, height: of };
  // a map's first passes are smoothed blindly, so that a table is soft at once: a line of a picture asks for as many as it takes
  if (packed.hasTable) {
    for (let k = 0; k < PASSES_BEFORE; k++)
      tracer.trace(loaded, target, view, { y: 0, height: 1, last: true }, frame);
    target.restart(loaded.sketches);
  }
  while (target.samples < samples || target.passes < 2)
    tracer.trace(loaded, target, view, { y: 0, height: size, last: true }, frame);
  const taken = take(tracer, target, loaded);
  target.dispose();
  tracer.unload(loaded);
  return taken;
}

/** Linear RGBA, rows bottom to top. */
const traceScene = (k: number, wish: TraceWish): Promise<number[]> =>
  gather(k, wish, (_, target) => Array.from(target.readMean()));

interface BlocksWish extends TraceWish {
  /** What is handed over are the means of so many blocks across and down. */
  readonly into: number;
}

function blocks(rgba: Float32Array, { size, into }: BlocksWish): number[] {
  const edge = size / into;
  const means = new Array<number>(4 * into * into).fill(0);
  rgba.forEach((value, i) => {
    const pixel = i >> 2;
    const [x, y] = [Math.floor((pixel % size) / edge), Math.floor(Math.floor(pixel / size) / edge)];
    means[4 * (y * into + x) + (i % 4)] += value / edge ** 2;
  });
  return means;
}

/** Means of each half of what was gathered: their noise is independent. A light map's texels count their samples. */
const halvesOf = (gl: WebGL2RenderingContext, sums: Accumulator, isMap = false): readonly Float32Array[] =>
  ([0, 1] as const).map((half) => {
    const { texture, samples } = sums.soFar(half);
    const framebuffer = makeFramebuffer(gl, [texture]);
    const rgba = new Float32Array(4 * sums.width * sums.height);
    gl.bindFramebuffer(gl.FRAMEBUFFER, framebuffer);
    gl.readPixels(0, 0, sums.width, sums.height, gl.RGBA, gl.FLOAT, rgba);
    gl.deleteFramebuffer(framebuffer);
    return rgba.map((v, k) => v / (isMap ? rgba[k | 3] : samples));
  });

/** Each half of it. */
const traceHalves = (k: number, wish: BlocksWish): Promise<number[][]> =>
  gather(k, wish, ({ gl }, target) => halvesOf(gl, target).map((half) => blocks(half, wish)));

/** The same, and what shows of it, before tone and colour space. */
const showScene = (k: number, wish: TraceWish) =>
  gather(k, wish, (tracer, target) => {
    const gathered = Array.from(target.readMean());
    tracer.readShown({ left: target, right: null, exposure: 0, divider: 1, sideBySide: false }, 1, 1);
    return { gathered, shown: Array.from(target.readPicture()) };
  });

/**
 * The two halves of what the scene's light map has gathered, by how much a white table throws back more than without the piece, its
 * spread, and the picture as means of `into` x `into` blocks.
 */
const traceMap = (k: number, wish: BlocksWish) =>
  gather(k, wish, ({ gl }, target, { map, packed }) => ({
    spread: map ? Array.from(packed.uniforms.mapSpread.value as ArrayLike<number>) : [],
    halves: map ? halvesOf(gl, map.sums, true).map((half) => Array.from(half)) : [],
    picture: blocks(target.readMean(), wish),
  }));

const SKETCH_OF = { size: 24, of: 24, seed: 3 };

/**
 * A coloured sketch of scene `k`, and plain ones of the same rays at the index that red, green and blue each see on average: means of
 * `readMean`.
 */
async function sketchColours(k: number): Promise<{ coloured: number[]; plain: number[][] }> {
  engine ??= openEngine();
  const tracer = await engine;
  const { size, of, seed } = SKETCH_OF;
  const { make, from, up } = ALL_SCENES[k];
  const packed = packScene(make(), { ...DEFAULT_OPTIONS, hasDispersion: true, seed, behind: "light" });
  await tracer.prepareFirst(packed);
  const view = viewFrom(...from, DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, up);
  const sketch = (scene: PackedScene, passes: number, isColoured: boolean): number[] => {
    const loaded = tracer.load(scene, of * of, passes);
    const target = new Accumulator(tracer.gl, size, size);
    target.restart(passes, isColoured);
    // in bands, as a picture that is lived with
    for (let pass = 0; pass < passes; pass++)
      for (const y of [0, size / 2])
        tracer.trace(
          loaded,
          target,
          view,
          { y, height: size / 2, last: y > 0 },
          { x: 0, y: 0, width: of, height: of },
        );
    const mean = Array.from(target.readMean());
    target.dispose();
    tracer.unload(loaded);
    return mean;
  };
  return {
    coloured: sketch(packed, COLOURED_SKETCHES, true),
    plain: packed.indexRgb.map((index) =>
      sketch({ ...packed, uniforms: { ...packed.uniforms, indexD: float(index) } }, 2, false),
    ),
  };
}

Object.assign(window, { traceScene, traceHalves, showScene, traceMap, sketchColours });
