/**
 * The living picture: traces one or two scenes into a canvas, a little every frame, until they are clean. Restarts on a
 * change, uses a coarser picture while something moves, never takes the card for longer than the scheduler allows,
 * survives a lost graphics context, and stands still when there is nothing left to do.
 *
 * It draws into a canvas of its own and not into the one of the rasterised piece: the two need different contexts (this
 * one has no depth, no antialiasing, and its alpha lets the page's ground through), and a lost context or a refused
 * shader here must not take the rasterised piece along, which is what is shown then.
 */
import { Accumulator } from "./accumulator.ts";
import { checkDevice, type DeviceCheck } from "./device-check.ts";
import { measureGpu } from "./gpu-clock.ts";
import type { PackedScene } from "./packed-scene.ts";
import { type Band, rowsOf, TileScheduler } from "./tile-scheduler.ts";
import { type LoadedScene, TraceEngine } from "./trace-engine.ts";
import type { View } from "./view.ts";

export type LookPhase =
  /** Shaders compile; show the rasterised piece meanwhile. */
  | "preparing"
  | "tracing"
  /** As many samples as asked for: nothing runs. */
  | "clean"
  /** The context is lost; the browser may give it back. */
  | "lost"
  /** This device can't trace; `check` and `error` say why. */
  | "unable";

export interface LookState {
  readonly phase: LookPhase;
  /** Samples per pixel shown now. */
  readonly samples: number;
  /** Samples at which the picture counts as clean. */
  readonly target: number;
  readonly check: DeviceCheck;
  readonly error: string | null;
  /** Milliseconds from the last change to the first picture of it; null before. */
  readonly firstPictureMs: number | null;
  /** What shows has fewer pixels than the screen: a full picture has not been through yet. */
  readonly isCoarse: boolean;
}

export interface LookDisplay {
  readonly exposure: number;
  readonly divider: number;
  readonly sideBySide: boolean;
}

/** Samples per pixel of a clean picture: errors of a smooth piece are below one step of eight bits. */
export const CLEAN_SAMPLES = 256;
/** How long after the last movement the full picture starts, milliseconds. */
const STILL_AFTER_MS = 140;
/** A coarse picture has every so many-th pixel across and down: half while moving, less where a card is slow. */
const COARSENESS = [2, 3, 4, 6, 8] as const;
/** A pass of a coarse picture should take no longer than this, milliseconds. */
const COARSE_PASS_MS = 30;
/** Where a full pass takes longer than this, a coarse one comes first. */
const FIRST_PASS_MS = 60;
/** How long the sketch may hold up the compiling of what follows it, milliseconds. */
const SKETCH_WAIT_MS = 10_000;
/** A software renderer has the time of a frame that a card would leave to the page. */
const SOFTWARE_FRAME_MS = 24;
/** Where putting the page on the screen takes longer than tracing, a frame has to be worth it: 30 ms at 1.6 M samples/s. */
const SOFTWARE_FRAME_PIXELS = 48_000;

/** A picture that got so many samples is one that is being looked at. */
const LASTING_SAMPLES = 12;

type Resolution = "full" | "coarse";

interface Side {
  readonly scene: LoadedScene;
  readonly full: Accumulator;
  readonly coarse: Accumulator;
}

export class LookRenderer {
  private readonly gl: WebGL2RenderingContext | null;
  private readonly scheduler: TileScheduler;
  private readonly abort = new AbortController();
  private engine: TraceEngine | null = null;
  private scenes: readonly PackedScene[] = [];
  private sides: Side[] = [];
  private view: View | null = null;
  private display: LookDisplay = { exposure: 0, divider: 1, sideBySide: false };
  private width = 0;
  private height = 0;
  private coarseness: number = COARSENESS[0];
  /** Where the scheduler's next band belongs. */
  private tracedInto: Resolution | null = null;
  private shown: Resolution = "full";
  /** The canvas does not show what is gathered. */
  private isStale = true;
  private movedAt = Number.NEGATIVE_INFINITY;
  private changedAt = 0;
  private generation = 0;
  private frameRequest = 0;
  private cardBusy = false;
  /** Called when a picture of full size has been traced. */
  private onSketched = () => {};
  private isActive = true;
  private state: LookState;

  /**
   * @param target samples per pixel at which the picture is clean
   * @param onState called after every change of state, at most once a frame
   */
  constructor(
    private readonly canvas: HTMLCanvasElement,
    private readonly onState: (state: LookState) => void,
    private readonly target = CLEAN_SAMPLES,
  ) {
    this.gl = canvas.getContext("webgl2", {
      alpha: true,
      premultipliedAlpha: true,
      antialias: false,
      depth: false,
      stencil: false,
      preserveDrawingBuffer: false,
      powerPreference: "high-performance",
    });
    const check = checkDevice(this.gl);
    this.scheduler =
      check.code === "software"
        ? new TileScheduler(SOFTWARE_FRAME_MS, SOFTWARE_FRAME_PIXELS)
        : new TileScheduler();
    this.state = {
      phase: check.pass ? "preparing" : "unable",
      samples: 0,
      target,
      check,
      error: null,
      firstPictureMs: null,
      isCoarse: true,
    };
    canvas.addEventListener("webglcontextlost", this.onLost);
    canvas.addEventListener("webglcontextrestored", this.onRestored);
    if (check.pass) void this.build();
  }

  get current(): LookState {
    return this.state;
  }

  /** One scene, or two to compare. */
  setScenes(scenes: readonly PackedScene[]): void {
    this.scenes = scenes;
    void this.prepareScenes();
  }

  /** @param moving true while a hand or the turntable moves the view: a coarser picture, at once */
  setView(view: View, moving: boolean): void {
    this.view = view;
    if (moving) this.movedAt = performance.now();
    this.restart();
  }

  /** Changes nothing that was traced. */
  setDisplay(display: LookDisplay): void {
    const reshapes = display.sideBySide !== this.display.sideBySide;
    this.display = display;
    if (reshapes) this.rebuildSides();
    else this.showSoon();
  }

  /** Nothing runs while nobody looks; what was gathered stays. */
  setActive(isActive: boolean): void {
    this.isActive = isActive;
    if (isActive) this.showSoon();
    else cancelAnimationFrame(this.frameRequest);
    if (!isActive) this.frameRequest = 0;
  }

  /** Device pixels. */
  resize(width: number, height: number): void {
    if (width === this.width && height === this.height) return;
    [this.width, this.height] = [Math.max(1, Math.round(width)), Math.max(1, Math.round(height))];
    [this.canvas.width, this.canvas.height] = [this.width, this.height];
    this.rebuildSides();
  }

  /** The engine, for still pictures on the same card; null while there is none. */
  get tracer(): TraceEngine | null {
    return this.engine;
  }

  /** Mean linear radiance of the first side, RGBA, rows bottom to top, with its size. For tests. */
  readMean(): { width: number; height: number; rgba: Float32Array } | null {
    const side = this.sides[0];
    if (!side) return null;
    const { full } = side;
    return { width: full.width, height: full.height, rgba: full.readMean() };
  }

  dispose(): void {
    this.abort.abort();
    cancelAnimationFrame(this.frameRequest);
    this.canvas.removeEventListener("webglcontextlost", this.onLost);
    this.canvas.removeEventListener("webglcontextrestored", this.onRestored);
    this.dropSides();
    this.engine?.dispose();
    this.engine = null;
  }

  private async build(): Promise<void> {
    if (!this.gl) return;
    await this.guarded(async (gl) => {
      this.engine = await TraceEngine.create(gl, this.abort.signal);
      await this.prepareScenes();
    }, this.gl);
  }

  private async prepareScenes(): Promise<void> {
    const { engine, scenes } = this;
    if (!engine) return;
    const generation = ++this.generation;
    const waits = scenes.some((scene) => !engine.canTrace(scene, 0));
    if (waits) this.report({ phase: "preparing" });
    await this.guarded(async () => {
      for (const scene of scenes) await engine.prepareFirst(scene, this.abort.signal);
      if (generation === this.generation) this.rebuildSides();
      // The sketch shows while the rest compiles: whole, since on some devices compiling holds up everything drawn.
      await this.untilSketched();
      for (const scene of scenes) await engine.prepare(scene, this.abort.signal);
    }, engine.gl);
  }

  /** Resolves once a picture of full size has been shown, or after as long as one is worth waiting for. */
  private untilSketched(): Promise<void> {
    return new Promise((resolve) => {
      this.onSketched = resolve;
      setTimeout(resolve, SKETCH_WAIT_MS);
    });
  }

  /** Runs what may fail on the device; a failure becomes a state with a cause, never an exception in the page. */
  private async guarded(work: (gl: WebGL2RenderingContext) => Promise<void>, gl: WebGL2RenderingContext) {
    try {
      await work(gl);
    } catch (error) {
      if (this.abort.signal.aborted || gl.isContextLost()) return;
      this.report({ phase: "unable", error: error instanceof Error ? error.message : String(error) });
    }
  }

  /** Loads the scenes anew and makes pictures of the right size for them. */
  private rebuildSides(): void {
    const { engine, scenes } = this;
    if (!engine || scenes.some((scene) => !engine.canTrace(scene, 0)) || this.width === 0) return;
    const width = this.display.sideBySide ? Math.ceil(this.width / 2) : this.width;
    const kept = this.sides;
    this.sides = scenes.map((scene, k) => {
      const old = kept[k];
      if (old) engine.unload(old.scene);
      const fits = old && old.full.width === width && old.full.height === this.height;
      if (old && !fits) for (const picture of [old.full, old.coarse]) picture.dispose();
      const made = fits ? old : this.makePictures(engine.gl, width);
      return { scene: engine.load(scene), full: made.full, coarse: made.coarse };
    });
    for (const old of kept.slice(scenes.length)) this.dropSide(old);
    this.restart();
  }

  private makePictures(gl: WebGL2RenderingContext, width: number) {
    const coarse = (length: number) => Math.max(1, Math.ceil(length / this.coarseness));
    return {
      full: new Accumulator(gl, width, this.height),
      coarse: new Accumulator(gl, coarse(width), coarse(this.height)),
    };
  }

  private restart(): void {
    this.changedAt = performance.now();
    this.fitCoarse();
    for (const { scene, full, coarse } of this.sides)
      for (const picture of [full, coarse]) picture.restart(scene.packed.hasDispersion);
    this.tracedInto = null;
    this.report({ firstPictureMs: null });
    this.requestFrame();
  }

  /** Gives the coarse pictures the size that this card can trace at once. */
  private fitCoarse(): void {
    const side = this.sides[0];
    const gl = this.engine?.gl;
    if (!side || !gl) return;
    const pixels = side.full.width * side.full.height;
    const fits = (times: number) => this.scheduler.passMs(pixels / times ** 2) <= COARSE_PASS_MS;
    const coarseness = COARSENESS.find(fits) ?? COARSENESS[COARSENESS.length - 1];
    if (coarseness === this.coarseness) return;
    this.coarseness = coarseness;
    const length = (full: number) => Math.max(1, Math.ceil(full / coarseness));
    this.sides = this.sides.map((old) => {
      old.coarse.dispose();
      const coarse = new Accumulator(gl, length(old.full.width), length(old.full.height));
      return { ...old, coarse };
    });
  }

  private isMoving(): boolean {
    return performance.now() - this.movedAt < STILL_AFTER_MS;
  }

  private requestFrame(): void {
    if (this.frameRequest || !this.isActive || this.abort.signal.aborted) return;
    this.frameRequest = requestAnimationFrame(() => {
      this.frameRequest = 0;
      this.frame();
    });
  }

  private frame(): void {
    const { engine, view } = this;
    const side = this.sides[0];
    if (!engine || !view || !side || engine.gl.isContextLost()) return;
    if (this.cardBusy) {
      this.requestFrame();
      return;
    }
    const into = this.wanted(side);
    const wants = side[into].samples < this.target || side[into].passes === 0;
    if (wants && this.canTrace(engine, into)) this.traceSome(engine, view, into);
    if (this.isStale) this.showBest(engine);
    if (side.full.passes > 0) this.onSketched();
    const isClean = into === "full" && side.full.passes > 0 && side.full.samples >= this.target;
    const samples = side.full.passes > 0 ? side.full.samples : side.coarse.passes > 0 ? 1 : 0;
    const isCoarse = side.full.passes === 0;
    this.report({ phase: isClean ? "clean" : "tracing", samples, isCoarse, ...this.firstPicture(samples) });
    if (side.full.samples === LASTING_SAMPLES) void this.specialise(engine);
    if (!isClean) this.requestFrame();
  }

  /** The piece has been looked at for a while: programs of its own make the rest quicker. It goes on without, if refused. */
  private async specialise(engine: TraceEngine): Promise<void> {
    try {
      for (const scene of this.scenes) await engine.specialise(scene, this.abort.signal);
    } catch (error) {
      if (!this.abort.signal.aborted && !engine.gl.isContextLost()) this.report({ error: String(error) });
    }
  }

  /** Coarse while something moves, and for one pass where a full one would keep the eye waiting. */
  private wanted({ full, coarse }: Side): Resolution {
    if (this.isMoving()) return "coarse";
    const isSlow = this.scheduler.passMs(full.width * full.height) > FIRST_PASS_MS;
    return isSlow && full.passes === 0 && coarse.passes === 0 ? "coarse" : "full";
  }

  private traceSome(engine: TraceEngine, view: View, into: Resolution): void {
    const { width, height } = this.sides[0][into];
    if (this.tracedInto !== into) this.scheduler.restart(width, height);
    this.tracedInto = into;
    const bands: Band[] = [];
    for (const band of this.scheduler.frame()) {
      // The sketch is through and its followers' program still compiles: the rest of the frame is given up.
      if (!this.canTrace(engine, into)) {
        this.tracedInto = null;
        break;
      }
      for (const side of this.sides)
        engine.trace(side.scene, side[into], view, band, { x: 0, y: 0, width, height });
      bands.push(band);
    }
    this.isStale ||= bands.some((band) => band.last);
    const pixels = rowsOf(bands) * width;
    this.cardBusy = true;
    void measureGpu(engine.gl).then((ms) => {
      this.cardBusy = false;
      if (ms > 0) this.scheduler.measured(pixels, ms);
    });
  }

  private canTrace(engine: TraceEngine, into: Resolution): boolean {
    return this.sides.every((side) => engine.canTrace(side.scene.packed, side[into].passes));
  }

  /** The full picture as soon as it has one whole pass, until then the coarse one, until then what was there before. */
  private showBest(engine: TraceEngine): void {
    const { full, coarse } = this.sides[0];
    if (full.passes > 0) this.shown = "full";
    else if (coarse.passes > 0) this.shown = "coarse";
    const [left, right] = this.sides.map((side) => side[this.shown]);
    engine.show({ left, right: right ?? null, ...this.display }, this.width, this.height);
    this.isStale = false;
  }

  private showSoon(): void {
    this.isStale = true;
    this.requestFrame();
  }

  private firstPicture(samples: number): Partial<LookState> {
    if (samples === 0 || this.state.firstPictureMs !== null) return {};
    return { firstPictureMs: performance.now() - this.changedAt };
  }

  private report(change: Partial<LookState>): void {
    this.state = { ...this.state, ...change };
    this.onState(this.state);
  }

  private dropSide(side: Side): void {
    this.engine?.unload(side.scene);
    for (const picture of [side.full, side.coarse]) picture.dispose();
  }

  private dropSides(): void {
    for (const side of this.sides) this.dropSide(side);
    this.sides = [];
  }

  private readonly onLost = (event: Event): void => {
    // Without this the browser never gives the context back.
    event.preventDefault();
    this.sides = [];
    this.engine = null;
    this.cardBusy = false;
    this.report({ phase: "lost", samples: 0 });
  };

  private readonly onRestored = (): void => {
    this.report({ phase: "preparing", check: checkDevice(this.gl) });
    void this.build();
  };
}
