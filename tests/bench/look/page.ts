/** Times the tracer, the plain yardstick and a general path tracer in this browser; called by `look.ts`. */
import { Accumulator } from "../../../src/render/accumulator.ts";
import { compileProgram, UniformSetter } from "../../../src/render/gl-program.ts";
import { type Behind, DEFAULT_OPTIONS, packScene } from "../../../src/render/pack-scene.ts";
import { assembleShader } from "../../../src/render/shader-assembler.ts";
import { shaderFiles } from "../../../src/render/shader-files.ts";
import { TraceEngine } from "../../../src/render/trace-engine.ts";
import { uint, vec2 } from "../../../src/render/uniforms.ts";
import bareText from "./bare.frag?raw";
import { earlyPictures } from "./early.ts";
import { firstPictures } from "./first.ts";
import { traceGeneral } from "./general.ts";
import { blocksOf, type Run, relativeError, type Step } from "./noise.ts";
import { savedPictures } from "./saved.ts";
import { BENCH_VIEW, bareUniforms, benchScene, onPaper } from "./scenes.ts";

function openContext(): WebGL2RenderingContext {
  const context = document.createElement("canvas").getContext("webgl2");
  if (!context) throw new Error("no WebGL2");
  return context;
}

const gl = openContext();
const opened = TraceEngine.create(gl);

/** Waits for the card. */
const finish = () => gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.FLOAT, new Float32Array(4));

/** Million samples a second of the yardstick with so many planes. */
async function timeBare(count: number, size: number, passes: number): Promise<number> {
  await opened;
  const vertex = assembleShader(shaderFiles, "screen.vert");
  const fragment = assembleShader({ "bare.frag": bareText }, "bare.frag", { PLANES: String(count) });
  const program = await compileProgram(gl, vertex, fragment);
  const target = new Accumulator(gl, size, size);
  gl.useProgram(program);
  const uniforms = new UniformSetter(gl, program);
  uniforms.set({ ...bareUniforms(BENCH_VIEW, count), resolution: vec2([size, size]) });
  gl.viewport(0, 0, size, size);
  const draw = (index: number) => {
    gl.bindFramebuffer(gl.FRAMEBUFFER, target.back);
    uniforms.set({ frameIndex: uint(index) });
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  };
  draw(0);
  finish();
  const started = performance.now();
  for (let index = 1; index <= passes; index++) draw(index);
  finish();
  const ms = performance.now() - started;
  target.dispose();
  gl.deleteProgram(program);
  return (size * size * passes) / ms / 1e3;
}

/** The product's tracer, with programs made for the piece as for one that is looked at for a while. */
async function load(
  count: number,
  hasDispersion: boolean,
  size: number,
  seed: number,
  behind: Behind = "nothing",
  isOnPaper = false,
) {
  const engine = await opened;
  const packed = packScene(isOnPaper ? onPaper(count) : benchScene(count), {
    ...DEFAULT_OPTIONS,
    hasDispersion,
    seed,
    behind,
  });
  await engine.prepare(packed);
  const scene = engine.load(packed, size * size);
  const target = new Accumulator(gl, size, size);
  target.restart(hasDispersion ? 1 : 0);
  const frame = { x: 0, y: 0, width: size, height: size };
  return {
    target,
    pass: () => engine.trace(scene, target, BENCH_VIEW, { y: 0, height: size, last: true }, frame),
    shown: () => {
      engine.readShown({ left: target, right: null, exposure: 0, divider: 1, sideBySide: false }, size, size);
      return target.readPicture();
    },
    dispose: () => {
      target.dispose();
      engine.unload(scene);
    },
  };
}

/** Million samples a second. */
async function timeTracer(
  count: number,
  hasDispersion: boolean,
  size: number,
  passes: number,
  isOnPaper = false,
): Promise<number> {
  const { pass, dispose } = await load(count, hasDispersion, size, 1, "nothing", isOnPaper);
  // a table's light map gains more than a pass a pass at first
  for (let warm = 0; warm < (isOnPaper ? 10 : 2); warm++) pass();
  finish();
  const started = performance.now();
  for (let index = 0; index < passes; index++) pass();
  finish();
  const ms = performance.now() - started;
  dispose();
  return (size * size * passes) / ms / 1e3;
}

/** How far the product's picture is from its own converged one after 1, 2, 4 .. samples, and the time that took. */
async function convergeTracer(
  count: number,
  hasDispersion: boolean,
  size: number,
  most: number,
  reference: number,
): Promise<Run> {
  const truth = await load(count, hasDispersion, size, 99, "light");
  while (truth.target.samples < reference) truth.pass();
  const right = truth.target.readMean();
  truth.dispose();
  // A first run warms up, so that no step pays for what is made once.
  const steps: Step[] = [];
  const { target, pass, shown, dispose } = await load(count, hasDispersion, size, 1, "light");
  pass();
  finish();
  target.restart(hasDispersion ? 1 : 0);
  let ms = 0;
  for (let samples = 1; samples <= most; samples *= 2) {
    const started = performance.now();
    while (target.passes === 0 || target.samples < samples) pass();
    finish();
    ms += performance.now() - started;
    steps.push({
      samples,
      ms,
      error: relativeError(target.readMean(), right),
      shownError: relativeError(shown(), right),
    });
  }
  dispose();
  return { steps, blocks: blocksOf(right, size) };
}

Object.assign(window, {
  timeBare,
  timeTracer,
  convergeTracer,
  traceGeneral,
  firstPictures,
  earlyPictures,
  savedPictures,
});
