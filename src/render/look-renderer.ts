/**
 * The living picture: traces one or two scenes into a canvas, a little every frame, until they are clean. Restarts on a
 * change, survives a lost graphics context, and stands still when there is nothing left to do. Programs compile beside
 * it: until those of a change are there, the picture from before goes on.
 *
 * It draws into a canvas of its own and not into the one of the rasterised piece: the two need different contexts (this
 * one has no depth, no antialiasing, and its alpha lets the page's ground through), and a lost context or a refused
 * shader here must not take the rasterised piece along, which is what is shown then.
 */
import type { Rgb } from "../core/optics/spectrum.ts";
import { checkDevice, type DeviceCheck } from "./device-check.ts";
import { measureGpu } from "./gpu-clock.ts";
import { LivePictures, type Progress } from "./live-pictures.ts";
import type { PackedScene } from "./packed-scene.ts";
import { stillPaths } from "./still.ts";
import { TileScheduler } from "./tile-scheduler.ts";
import { TraceEngine } from "./trace-engine.ts";
import type { View } from "./view.ts";

type LookPhase =
  /** Shaders compile; show the rasterised piece meanwhile. */
  | "preparing"
  | "tracing"
  /** As many samples as asked for; it gathers some more while nothing else is to do. */
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
  /** The light on the table is rough as yet. */
  readonly gathersTable: boolean;
  /** A sample takes so long that each is worth telling. */
  readonly isSlow: boolean;
  /** What shows is the scene from before the last change, whose program still compiles. */
  readonly isBehind: boolean;
}

export interface LookDisplay {
  readonly exposure: number;
  /** Linear colour of the page that is seen through the piece; missing: the canvas lets it through as far as it can. */
  readonly page?: Rgb;
  readonly divider: number;
  readonly sideBySide: boolean;
}

/** Samples per pixel of a clean picture. It is smoothed: its error is that of three to nine times as many that are not. */
const CLEAN_SAMPLES = 64;
/** Samples at which nothing runs any more. */
const FINEST_SAMPLES = 256;
/** How long after the last movement the full picture starts, milliseconds. */
const STILL_AFTER_MS = 140;
/** How long the sketch may hold up the compiling of what follows it, milliseconds. */
const SKETCH_WAIT_MS = 20_000;
/** A software renderer has the time of a frame that a card would leave to the page. */
const SOFTWARE_FRAME_MS = 28;
/** A pass that takes longer is slow, milliseconds. */
const SLOW_PASS_MS = 500;

export class LookRenderer {
  private readonly gl: WebGL2RenderingContext | null;
  private readonly scheduler: TileScheduler;
  private readonly isSoftware: boolean;
  /** Ends what was begun on a context when that is lost, so that nothing of it reaches the one that is given back. */
  private abort = new AbortController();
  private engine: TraceEngine | null = null;
  private pictures: LivePictures | null = null;
  private wanted: readonly PackedScene[] = [];
  /** The last scenes whose programs were there: what is traced. */
  private ready: readonly PackedScene[] = [];
  private view: View | null = null;
  private display: LookDisplay = { exposure: 0, divider: 1, sideBySide: false };
  private width = 0;
  private height = 0;
  /** The canvas does not show what is to be shown, though nothing new was traced. */
  private mustShow = true;
  private movedAt = Number.NEGATIVE_INFINITY;
  private changedAt = 0;
  private frameRequest = 0;
  private cardBusy = false;
  /** Called when a picture's sketch has been traced. */
  private onSketched = () => {};
  private isActive = true;
  private isResting = false;
  private state: LookState;

  /**
   * @param onState called after every change of state, at most once a frame
   */
  constructor(
    private readonly canvas: HTMLCanvasElement,
    private readonly onState: (state: LookState) => void,
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
    this.isSoftware = check.code === "software";
    this.scheduler = this.isSoftware ? new TileScheduler(SOFTWARE_FRAME_MS) : new TileScheduler();
    this.state = {
      phase: check.pass ? "preparing" : "unable",
      samples: 0,
      target: CLEAN_SAMPLES,
      check,
      error: null,
      firstPictureMs: null,
      isCoarse: true,
      gathersTable: false,
      isSlow: false,
      isBehind: false,
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
    this.wanted = scenes;
    this.changedAt = performance.now();
    void this.prepareScenes();
  }

  /** @param moving true while a hand or the turntable moves the view: a coarser picture, at once */
  setView(view: View, moving: boolean): void {
    this.view = view;
    this.changedAt = performance.now();
    if (moving) this.movedAt = this.changedAt;
    this.restart();
  }

  /** Changes nothing that was traced. */
  setDisplay(display: LookDisplay): void {
    const reshapes = display.sideBySide !== this.display.sideBySide;
    this.display = display;
    if (reshapes) this.takeScenes();
    else this.showSoon();
  }

  /** Nothing runs while nobody looks; what was gathered stays. */
  setActive(isActive: boolean): void {
    this.isActive = isActive;
    if (isActive) this.showSoon();
    else this.cancelFrame();
  }

  /** True while other work has the card: what shows stays, and only follows the hand. */
  setResting(isResting: boolean): void {
    this.isResting = isResting;
    this.requestFrame();
  }

  /** Device pixels. */
  resize(width: number, height: number): void {
    const [across, down] = [Math.max(1, Math.round(width)), Math.max(1, Math.round(height))];
    if (across === this.width && down === this.height) return;
    [this.width, this.height] = [across, down];
    [this.canvas.width, this.canvas.height] = [across, down];
    this.takeScenes();
  }

  /** About how long a still picture of so many pixels and samples takes, milliseconds; null before anything was traced. */
  stillMs(pixels: number, samples: number, hasTable: boolean): number | null {
    if (!this.pictures?.first?.passes) return null;
    const paths = stillPaths(pixels, samples, hasTable, this.isSoftware ? "software" : "card");
    return this.scheduler.passMs(paths);
  }

  /** The engine, for still pictures on the same card; null while there is none. */
  get tracer(): TraceEngine | null {
    return this.engine;
  }

  /** Mean linear radiance of the first side, RGBA, rows bottom to top, with its size. For tests. */
  readMean(): { width: number; height: number; rgba: Float32Array } | null {
    const first = this.pictures?.first;
    return first ? { width: first.width, height: first.height, rgba: first.readMean() } : null;
  }

  dispose(): void {
    this.abort.abort();
    this.cancelFrame();
    this.canvas.removeEventListener("webglcontextlost", this.onLost);
    this.canvas.removeEventListener("webglcontextrestored", this.onRestored);
    this.pictures?.drop();
    this.engine?.dispose();
    this.engine = null;
  }

  private async build(): Promise<void> {
    if (!this.gl) return;
    const { signal } = this.abort;
    await this.guarded(async (gl) => {
      const engine = await TraceEngine.create(gl, signal);
      signal.throwIfAborted();
      this.engine = engine;
      this.pictures = new LivePictures(engine, this.scheduler, FINEST_SAMPLES);
      await this.prepareScenes();
    }, this.gl);
  }

  private async prepareScenes(): Promise<void> {
    const { engine, wanted } = this;
    if (!engine) return;
    const { signal } = this.abort;
    if (wanted.some((scene) => !engine.canTrace(scene, null)))
      this.report({ isBehind: this.ready.length > 0 });
    await this.guarded(async () => {
      for (const scene of wanted) await engine.prepareFirst(scene, signal);
      signal.throwIfAborted();
      // Another change has come meanwhile, and sees to the rest.
      if (wanted !== this.wanted) return;
      this.ready = wanted;
      this.takeScenes();
      // The sketch shows while the rest compiles: whole, since on some devices compiling holds up everything drawn.
      await this.untilSketched();
      for (const scene of wanted) await engine.prepare(scene, signal);
    }, engine.gl);
  }

  /** Resolves once a picture's sketch has been shown, or after as long as one is worth waiting for. */
  private untilSketched(): Promise<void> {
    return new Promise((resolve) => {
      this.onSketched = resolve;
      setTimeout(resolve, SKETCH_WAIT_MS);
    });
  }

  /** Runs what may fail on the device; a failure becomes a state with a cause, never an exception in the page. */
  private async guarded(work: (gl: WebGL2RenderingContext) => Promise<void>, gl: WebGL2RenderingContext) {
    const { signal } = this.abort;
    try {
      await work(gl);
    } catch (error) {
      if (signal.aborted || gl.isContextLost()) return;
      this.report({ phase: "unable", error: error instanceof Error ? error.message : String(error) });
    }
  }

  /** Loads the scenes anew, into pictures of the right size. */
  private takeScenes(): void {
    if (!this.pictures || this.width === 0 || this.ready.length === 0) return;
    const width = this.display.sideBySide ? Math.ceil(this.width / 2) : this.width;
    this.pictures.take(this.ready, width, this.height);
    this.restart();
  }

  private restart(): void {
    this.pictures?.restart();
    this.mustShow = true;
    this.report({ firstPictureMs: null });
    this.requestFrame();
  }

  private showSoon(): void {
    this.mustShow = true;
    this.requestFrame();
  }

  private requestFrame(): void {
    if (this.frameRequest || !this.isActive || this.abort.signal.aborted) return;
    this.frameRequest = requestAnimationFrame(this.frame);
  }

  private cancelFrame(): void {
    cancelAnimationFrame(this.frameRequest);
    this.frameRequest = 0;
  }

  private readonly frame = (): void => {
    this.frameRequest = 0;
    const { engine, view, pictures } = this;
    if (!engine || !view || !pictures || pictures.isEmpty || engine.gl.isContextLost()) return;
    if (this.cardBusy) {
      this.requestFrame();
      return;
    }
    const isMoving = performance.now() - this.movedAt < STILL_AFTER_MS;
    const rests = this.isResting && !isMoving && !pictures.progress.isCoarse;
    const pixels = rests ? 0 : pictures.traceSome(view, isMoving);
    if (pixels > 0) this.measure(engine, pixels);
    if (this.mustShow || pictures.isStale) {
      pictures.show(this.display, this.width, this.height);
      this.mustShow = false;
    }
    const { progress } = pictures;
    this.reportProgress(progress);
    if (progress.isSketched) this.onSketched();
    if (isMoving || !(rests || progress.isFinest)) this.requestFrame();
  };

  /** Learns how fast the card is. One that has no frames of its own to keep goes on at once, and leaves the page in between. */
  private measure(engine: TraceEngine, pixels: number): void {
    this.cardBusy = true;
    void measureGpu(engine.gl).then((ms) => {
      this.cardBusy = false;
      if (ms > 0) this.scheduler.measured(pixels, ms);
      if (!this.isSoftware || !this.frameRequest || document.hidden) return;
      this.cancelFrame();
      this.frame();
    });
  }

  private reportProgress({ samples, isCoarse, gathersTable }: Progress): void {
    const isClean = !isCoarse && samples >= CLEAN_SAMPLES;
    const isFirst = samples > 0 && this.state.firstPictureMs === null;
    this.report({
      phase: isClean ? "clean" : "tracing",
      samples,
      isCoarse,
      gathersTable,
      isSlow: this.scheduler.passMs(this.width * this.height) > SLOW_PASS_MS,
      isBehind: this.ready !== this.wanted,
      ...(isFirst && { firstPictureMs: performance.now() - this.changedAt }),
    });
  }

  private report(change: Partial<LookState>): void {
    this.state = { ...this.state, ...change };
    this.onState(this.state);
  }

  private readonly onLost = (event: Event): void => {
    // Without this the browser never gives the context back.
    event.preventDefault();
    this.abort.abort();
    this.abort = new AbortController();
    this.pictures = null;
    this.engine = null;
    this.ready = [];
    this.cardBusy = false;
    this.report({ phase: "lost", samples: 0 });
  };

  private readonly onRestored = (): void => {
    const check = checkDevice(this.gl);
    this.report({ phase: check.pass ? "preparing" : "unable", check, error: null });
    if (check.pass) void this.build();
  };
}
