/** The tracer without the app: traces one of the shared scenes and hands the linear picture to the test. */
import { Accumulator } from "../../src/render/accumulator.ts";
import { checkDevice } from "../../src/render/device-check.ts";
import { DEFAULT_OPTIONS, packScene } from "../../src/render/pack-scene.ts";
import { PROCESSOR } from "../../src/render/pass.ts";
import { TraceEngine } from "../../src/render/trace-engine.ts";
import { viewFrom } from "../../src/render/view.ts";
import { LOOK_SCENES } from "./look-scenes.ts";

let engine: Promise<TraceEngine> | null = null;

function openEngine(): Promise<TraceEngine> {
  const gl = document.createElement("canvas").getContext("webgl2");
  const check = checkDevice(gl);
  if (!gl || !check.pass) throw new Error(`${check.code}: ${check.detail}`);
  return TraceEngine.create(gl, PROCESSOR);
}

export interface TraceWish {
  readonly size: number;
  readonly seed: number;
  readonly samples: number;
  /** With the program for this very number of facets, as for a piece one keeps looking at. */
  readonly own: boolean;
}

/** Traces scene `k` of the shared list; linear RGBA, rows bottom to top. */
async function traceScene(k: number, { size, seed, samples, own }: TraceWish): Promise<number[]> {
  engine ??= openEngine();
  const tracer = await engine;
  const { make, from, hasDispersion } = LOOK_SCENES[k];
  const packed = packScene(make(), { ...DEFAULT_OPTIONS, hasDispersion, seed, behind: "light" });
  await tracer.prepare(packed);
  if (own) await tracer.specialise([packed]);
  const loaded = tracer.load(packed);
  const target = new Accumulator(tracer.gl, size, size);
  target.restart(hasDispersion);
  const view = viewFrom(from[0], from[1]);
  const frame = { x: 0, y: 0, width: size, height: size };
  while (target.samples < samples || target.passes < 2)
    tracer.trace(loaded, target, view, { y: 0, height: size, last: true }, frame);
  const rgba = Array.from(target.readMean());
  target.dispose();
  tracer.unload(loaded);
  return rgba;
}

Object.assign(window, { traceScene });
