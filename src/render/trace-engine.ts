/**
 * The graphics card's side of the tracer: programs, the scene it holds, and the two things it can do: add one sample to
 * a band of an accumulator, and show accumulators on the screen. Knows nothing of time, frames or the page.
 */
import { scale } from "../core/geometry/vec.ts";
import type { Rgb } from "../core/optics/spectrum.ts";
import type { Accumulator, Area, HalfSum } from "./accumulator.ts";
import { checkDevice } from "./device-check.ts";
import { compileProgram, UniformSetter } from "./gl-program.ts";
import { LightMap } from "./light-map.ts";
import { BEHINDS, planesOf } from "./pack-scene.ts";
import type { ByteTexels, PackedScene, Texels } from "./packed-scene.ts";
import { type Pass, passAt } from "./pass.ts";
import { assembleShader } from "./shader-assembler.ts";
import { shaderFiles } from "./shader-files.ts";
import type { Band } from "./tile-scheduler.ts";
import { float, int, mat3, type Uniforms, vec2, vec3, vec4 } from "./uniforms.ts";
import { type View, viewColumns } from "./view.ts";

interface Program {
  readonly program: WebGLProgram;
  readonly uniforms: UniformSetter;
}

/** Which part of which picture is traced: the accumulator's lower left pixel within a picture of `width` x `height`. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A scene on the card. */
export interface LoadedScene {
  readonly packed: PackedScene;
  /** Passes of the sketch that its pictures begin with. */
  readonly sketches: number;
  /** One a uniform block, in the order of BLOCKS. */
  readonly buffers: readonly WebGLBuffer[];
  /** One a sampler, in the order of SAMPLERS; null where the scene has nothing to read there. */
  readonly textures: readonly (WebGLTexture | null)[];
  /** What the piece changes of the light on its table; null without one. */
  readonly map: LightMap | null;
}

/** What is put on the screen; `right` is the second piece of a comparison. */
export interface Showing {
  readonly left: Accumulator;
  readonly right: Accumulator | null;
  /** Stops. */
  readonly exposure: number;
  /** What red, green and blue are multiplied by besides; missing = 1. */
  readonly gain?: Rgb;
  /** Linear colour of the page that is seen through the piece; missing: colour and coverage, as a file holds them. */
  readonly page?: Rgb;
  /** Where the left picture ends, 0..1 of the width; 1 without a comparison. */
  readonly divider: number;
  readonly sideBySide: boolean;
}

/** Uniform blocks of `trace.frag`; a block's place here is its binding. */
const BLOCKS = [
  { name: "Body", of: (packed: PackedScene) => packed.body },
  { name: "Designs", of: (packed: PackedScene) => packed.designs },
] as const;
/** Samplers of `trace.frag` that belong to a scene; the sum, the guess and the light map come first, these follow. */
const SAMPLERS = [
  { name: "spectrum", of: (packed: PackedScene) => packed.spectrum },
  { name: "planes", of: planesOf },
  { name: "environment", of: (packed: PackedScene) => packed.environment },
  { name: "pictures", of: (packed: PackedScene) => packed.pictures },
  { name: "guide", of: (packed: PackedScene) => packed.guide },
  { name: "nearLight", of: (packed: PackedScene) => packed.nearLight },
] as const;
const [SUM_UNIT, GUESS_UNIT, MAP_UNIT, SCENE_UNIT] = [0, 1, 2, 3];
const [LEFT_UNIT, RIGHT_UNIT] = [0, 1];

export class TraceEngine {
  private readonly tracers = new Map<string, Program>();
  private readonly nothing: WebGLTexture;
  /** The light map of the scene that was unloaded last: the next picture may show the same, from elsewhere. */
  private spare: LightMap | null = null;
  readonly isSoftware: boolean;

  private constructor(
    readonly gl: WebGL2RenderingContext,
    private readonly display: Program,
    private readonly resolver: Program,
    private readonly smoother: Program,
  ) {
    this.nothing = makeTexture(gl, { width: 1, height: 1, rgba: new Float32Array(4) });
    this.isSoftware = checkDevice(gl).code === "software";
  }

  /** @throws ShaderCompileError, or the signal's reason */
  static async create(gl: WebGL2RenderingContext, signal?: AbortSignal): Promise<TraceEngine> {
    gl.getExtension("EXT_color_buffer_float");
    const make = (fragment: string) => makeProgram(gl, fragment, {}, signal);
    const names = ["display.frag", "resolve.frag", "smooth-map.frag"];
    const [display, resolver, smoother] = await Promise.all(names.map(make));
    return new TraceEngine(gl, display, resolver, smoother);
  }

  /** Compiles what the first pass over a picture of the scene needs: a picture can be shown before the rest is there. */
  async prepareFirst(packed: PackedScene, signal?: AbortSignal): Promise<void> {
    await this.prepareVariants(packed, [FIRST_CHANNELS], signal);
  }

  /** Compiles what the scene needs, if it isn't there yet, without holding up the page. */
  async prepare(packed: PackedScene, signal?: AbortSignal): Promise<void> {
    await this.prepareVariants(packed, channelsOf(packed), signal);
  }

  private async prepareVariants(
    packed: PackedScene,
    channels: readonly Channels[],
    signal?: AbortSignal,
  ): Promise<void> {
    const wanted = channels.flatMap((each) => fragmentsOf(packed).map((name) => [name, each] as const));
    const missing = wanted.filter(([name, each]) => !this.tracers.has(variantKey(packed, name, each)));
    await Promise.all(missing.map(([name, each]) => this.prepareVariant(packed, name, each, signal)));
  }

  private async prepareVariant(
    packed: PackedScene,
    fragment: Fragment,
    channels: Channels,
    signal?: AbortSignal,
  ): Promise<void> {
    const defines = { ...packed.defines, CHANNELS: String(channels) };
    const made = await makeProgram(this.gl, fragment, defines, signal);
    this.gl.useProgram(made.program);
    BLOCKS.forEach(({ name }, binding) => {
      const block = this.gl.getUniformBlockIndex(made.program, name);
      if (block !== this.gl.INVALID_INDEX) this.gl.uniformBlockBinding(made.program, block, binding);
    });
    made.uniforms.set({ sumSoFar: int(SUM_UNIT), guessSum: int(GUESS_UNIT), lightMap: int(MAP_UNIT) });
    made.uniforms.set(Object.fromEntries(SAMPLERS.map(({ name }, k) => [name, int(SCENE_UNIT + k)])));
    this.tracers.set(variantKey(packed, fragment, channels), made);
  }

  /** True when the programs are there that the next pass over a picture of the scene needs; without one, its first pass. */
  canTrace(packed: PackedScene, target: Accumulator | null): boolean {
    const channels = target ? passOf(packed, target).channels : FIRST_CHANNELS;
    return fragmentsOf(packed).every((name) => this.hasProgram(packed, name, channels));
  }

  private hasProgram(packed: PackedScene, fragment: Fragment, channels: Channels): boolean {
    return this.tracers.has(variantKey(packed, fragment, channels));
  }

  /**
   * @param pixels of the pictures that are traced of it
   * @param sketches passes of their sketch
   * @param before the scene in whose place it comes, to be unloaded after this: its light map goes on where it would be the same,
   * and so does the one of the scene that was unloaded last
   */
  load(
    packed: PackedScene,
    pixels: number,
    sketches = leastSketches(packed),
    before?: LoadedScene,
  ): LoadedScene {
    const { gl } = this;
    const buffers = BLOCKS.map((block) => {
      const buffer = gl.createBuffer();
      gl.bindBuffer(gl.UNIFORM_BUFFER, buffer);
      gl.bufferData(gl.UNIFORM_BUFFER, block.of(packed), gl.STATIC_DRAW);
      return buffer;
    });
    const textures = SAMPLERS.map((sampler) => {
      const texels = sampler.of(packed);
      return texels && makeTexture(gl, texels);
    });
    const leading = this.isSoftware ? "software" : "card";
    const map = packed.hasTable
      ? LightMap.make(gl, packed, pixels, [before?.map, this.spare], leading, sketches)
      : null;
    if (map === this.spare) this.spare = null;
    return { packed, sketches, buffers, textures, map };
  }

  /** @param successor what came in its place and may go on with its light map */
  unload(scene: LoadedScene, successor?: LoadedScene): void {
    for (const buffer of scene.buffers) this.gl.deleteBuffer(buffer);
    for (const texture of scene.textures) this.gl.deleteTexture(texture);
    if (!scene.map || scene.map === successor?.map) return;
    this.spare?.dispose();
    this.spare = scene.map;
  }

  /**
   * Adds one sample to every pixel of the band; a band that ends the pass turns the accumulator over. Before the first band of a
   * pass the scene's light map is brought as far as the pass needs it. Answers how many paths that were in all.
   */
  trace(scene: LoadedScene, target: Accumulator, view: View, band: Band, frame: Frame): number {
    const { packed, map } = scene;
    const due = map && band.y === 0 ? map.due(target) : 0;
    let [gained, paths] = [0, band.height * target.width];
    // where the map is ahead of the picture it can want a program that is still being made: then it waits, not the picture
    while (map && gained < due && this.hasProgram(packed, "light-map.frag", map.next.channels)) {
      paths += this.traceMap(scene, map);
      gained++;
    }
    const area = { x: 0, y: band.y, width: target.width, height: band.height };
    const pass = passOf(packed, target);
    this.draw(scene, "trace.frag", target, area, pass, {
      eye: vec3(view.eye),
      view: mat3(viewColumns(view)),
      away: vec3(scale(view.back, -1)),
      lens: vec2(view.lens ? [view.lens.radius, view.lens.focus] : [0, 1]),
      resolution: vec2([frame.width, frame.height]),
      origin: vec2([frame.x, frame.y]),
    });
    if (band.last) target.endPass();
    return paths;
  }

  /** Adds one sample to texels of a light map, and answers to how many. From a table no page is seen. */
  private traceMap(scene: LoadedScene, map: LightMap): number {
    const area = map.nextArea;
    if (area.width < map.sums.width) map.sums.carryOver();
    this.draw(scene, "light-map.frag", map.sums, area, map.next, { behind: int(BEHINDS.light) });
    map.sums.endPass();
    for (const { from, into, apart, isBlind } of map.smoothing) {
      const ground = vec3(scene.packed.mapGround);
      this.drawHalves(this.smoother, from, into, map.sums, {
        apart: int(apart),
        blind: int(isBlind ? 1 : 0),
        ground,
      });
      map.endSmoothing();
    }
    return area.width * area.height;
  }

  private draw(
    scene: LoadedScene,
    fragment: Fragment,
    target: Accumulator,
    { x, y, width, height }: Area,
    pass: Pass,
    more: Uniforms,
  ): void {
    const { gl } = this;
    const { packed, map } = scene;
    const tracer = this.tracers.get(variantKey(packed, fragment, pass.channels));
    if (!tracer) throw new Error("prepare() comes before trace()");
    const thrown = map?.smoothedOf(target.half) ?? this.nothing;
    gl.bindFramebuffer(gl.FRAMEBUFFER, target.back);
    gl.viewport(0, 0, target.width, target.height);
    gl.enable(gl.SCISSOR_TEST);
    gl.scissor(x, y, width, height);
    gl.useProgram(tracer.program);
    scene.buffers.forEach((buffer, binding) => {
      gl.bindBufferBase(gl.UNIFORM_BUFFER, binding, buffer);
    });
    this.bindTexture(SUM_UNIT, target.front);
    this.bindTexture(GUESS_UNIT, target.guess);
    this.bindTexture(MAP_UNIT, thrown);
    scene.textures.forEach((texture, k) => {
      this.bindTexture(SCENE_UNIT + k, texture ?? this.nothing);
    });

    tracer.uniforms.set(packed.uniforms);
    tracer.uniforms.set({ ...pass.uniforms, ...more });
    gl.drawArrays(gl.TRIANGLES, 0, 3);
    gl.disable(gl.SCISSOR_TEST);
  }

  /** Brings what shows of an accumulator up to what it has gathered. */
  private resolve(gathered: Accumulator): void {
    const now = gathered.overdue;
    if (!now) return;
    const smooths = int(now.smoothed ? 1 : 0);
    this.drawHalves(this.resolver, now.halves, gathered.pictureTarget, gathered, {
      apart: int(1),
      blind: int(0),
      ground: vec3([0, 0, 0]),
      smooths,
    });
    gathered.resolved(now);
  }

  /** Draws what `program` makes of two halves. */
  private drawHalves(
    { program, uniforms }: Program,
    halves: readonly [HalfSum, HalfSum],
    into: WebGLFramebuffer,
    { width, height }: { readonly width: number; readonly height: number },
    more: Uniforms,
  ): void {
    const { gl } = this;
    gl.bindFramebuffer(gl.FRAMEBUFFER, into);
    gl.viewport(0, 0, width, height);
    gl.useProgram(program);
    halves.forEach(({ texture }, half) => {
      this.bindTexture(half, texture);
    });
    uniforms.set({
      firstSum: int(0),
      secondSum: int(1),
      firstSamples: float(halves[0].samples),
      secondSamples: float(halves[1].samples),
      ...more,
    });
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  }

  /** Draws to the canvas, or to `into` (then `width` x `height` is its size). */
  show(showing: Showing, width: number, height: number, into: WebGLFramebuffer | null = null): void {
    const { gl, display } = this;
    for (const side of [showing.left, showing.right]) if (side) this.resolve(side);
    const left = showing.left.picture;
    const right = showing.right?.picture ?? left;
    gl.bindFramebuffer(gl.FRAMEBUFFER, into);
    gl.viewport(0, 0, width, height);
    gl.useProgram(display.program);
    this.bindTexture(LEFT_UNIT, left);
    this.bindTexture(RIGHT_UNIT, right);
    display.uniforms.set({
      leftPicture: int(LEFT_UNIT),
      rightPicture: int(RIGHT_UNIT),
      resolution: vec2([width, height]),
      exposure: float(showing.exposure),
      page: vec4(showing.page ? [...showing.page, 1] : [0, 0, 0, 0]),
      gain: vec3(showing.gain ?? [1, 1, 1]),
      dividerX: float(showing.divider * width),
      sideBySide: int(showing.sideBySide ? 1 : 0),
    });
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  }

  /** The bytes that `show` would put on the screen: RGBA, premultiplied, rows bottom to top. Waits for the card. */
  readShown(showing: Showing, width: number, height: number): Uint8Array {
    const { gl } = this;
    const texture = gl.createTexture();
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.texStorage2D(gl.TEXTURE_2D, 1, gl.RGBA8, width, height);
    const framebuffer = gl.createFramebuffer();
    gl.bindFramebuffer(gl.FRAMEBUFFER, framebuffer);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0);
    this.show(showing, width, height, framebuffer);
    const bytes = new Uint8Array(width * height * 4);
    gl.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, bytes);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    gl.deleteFramebuffer(framebuffer);
    gl.deleteTexture(texture);
    return bytes;
  }

  dispose(): void {
    for (const { program } of this.tracers.values()) this.gl.deleteProgram(program);
    this.gl.deleteProgram(this.display.program);
    this.gl.deleteProgram(this.resolver.program);
    this.gl.deleteProgram(this.smoother.program);
    this.gl.deleteTexture(this.nothing);
    this.spare?.dispose();
    this.tracers.clear();
  }

  private bindTexture(unit: number, texture: WebGLTexture): void {
    this.gl.activeTexture(this.gl.TEXTURE0 + unit);
    this.gl.bindTexture(this.gl.TEXTURE_2D, texture);
  }
}

type Channels = 1 | 3;
/** Every picture begins with all light at once: as a sketch, or because no wavelengths part. */
const FIRST_CHANNELS: Channels = 3;

/** Where wavelengths part, a picture begins with a sketch. */
const leastSketches = ({ hasDispersion }: PackedScene): number => (hasDispersion ? 1 : 0);

/** The pass that a picture of the scene gains next. */
const passOf = (packed: PackedScene, { passes, sketches, isColoured }: Accumulator): Pass =>
  passAt(passes, { ...packed, sketches, ...(isColoured && { sketchIndex: packed.indexRgb }) });

const channelsOf = (packed: PackedScene): readonly Channels[] => (packed.hasDispersion ? [3, 1] : [3]);
type Fragment = "trace.frag" | "light-map.frag";
const fragmentsOf = (packed: PackedScene): readonly Fragment[] =>
  packed.hasTable ? ["trace.frag", "light-map.frag"] : ["trace.frag"];
const variantKey = (packed: PackedScene, fragment: Fragment, channels: Channels): string =>
  JSON.stringify({ ...packed.defines, fragment, channels });

async function makeProgram(
  gl: WebGL2RenderingContext,
  fragment: string,
  defines: Readonly<Record<string, string>>,
  signal?: AbortSignal,
): Promise<Program> {
  const program = await compileProgram(
    gl,
    assembleShader(shaderFiles, "screen.vert"),
    assembleShader(shaderFiles, fragment, defines),
    signal,
  );
  return { program, uniforms: new UniformSetter(gl, program) };
}

/** Floats or bytes RGBA, read texel by texel. */
function makeTexture(gl: WebGL2RenderingContext, { width, height, rgba }: Texels | ByteTexels): WebGLTexture {
  const texture = gl.createTexture();
  gl.bindTexture(gl.TEXTURE_2D, texture);
  const [format, kind] = rgba instanceof Uint8Array ? [gl.RGBA8, gl.UNSIGNED_BYTE] : [gl.RGBA32F, gl.FLOAT];
  gl.texImage2D(gl.TEXTURE_2D, 0, format, width, height, 0, gl.RGBA, kind, rgba);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST);
  return texture;
}
