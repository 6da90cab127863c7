/**
 * The pictures of one or two scenes as they gather: a full one each, and a coarse one for while something moves and for
 * the first glance. Says which of them is worth tracing, traces a frame's share of it and shows the best there is. Knows
 * nothing of the page and its clock.
 */
import { Accumulator } from "./accumulator.ts";
import type { PackedScene } from "./packed-scene.ts";
import { COLOURED_SKETCHES } from "./pass.ts";
import type { TileScheduler } from "./tile-scheduler.ts";
import type { LoadedScene, Showing, TraceEngine } from "./trace-engine.ts";
import type { View } from "./view.ts";

/** A coarse picture has every so many-th pixel across and down: half while moving, less where a card is slow. */
const COARSENESS = [2, 3, 4, 6, 8] as const;
/** A pass of a coarse picture should take no longer than this, milliseconds. */
const COARSE_PASS_MS = 30;
/** Where a full pass takes longer than this, a coarse one comes first. */
const FIRST_PASS_MS = 40;

/**
 * Passes of the sketch, all light at once. In software it is coloured: a picture that is good enough to judge by before the programs
 * are needed that part the light.
 */
const SKETCHES = { card: 1, software: COLOURED_SKETCHES } as const;

type Resolution = "full" | "coarse";

interface Side {
  readonly scene: LoadedScene;
  readonly full: Accumulator;
  readonly coarse: Accumulator;
}

/** How far the first side is; the other side keeps step. */
export interface Progress {
  /** Samples per pixel of what shows; 0 before there is a picture. */
  readonly samples: number;
  /** Only a coarse picture, or none, has been through yet. */
  readonly isCoarse: boolean;
  /** Its sketch is whole. */
  readonly isSketched: boolean;
  /** The light on its table is rough as yet. */
  readonly gathersTable: boolean;
  /** There is nothing left to do. */
  readonly isFinest: boolean;
}

export class LivePictures {
  private sides: readonly Side[] = [];
  private coarseness: number = COARSENESS[0];
  /** Where the scheduler's next band belongs. */
  private tracedInto: Resolution | null = null;
  private shown: Resolution = "full";
  private hasNews = false;

  /** @param target samples per pixel at which a picture is left as it is */
  constructor(
    private readonly engine: TraceEngine,
    private readonly scheduler: TileScheduler,
    private readonly target: number,
  ) {}

  get isEmpty(): boolean {
    return this.sides.length === 0;
  }

  /** What was traced since it was last shown makes another picture than the one on the screen. */
  get isStale(): boolean {
    return this.hasNews;
  }

  /** The full picture of the first side, or null. */
  get first(): Accumulator | null {
    return this.sides[0]?.full ?? null;
  }

  get progress(): Progress {
    const [side] = this.sides;
    if (!side) return { samples: 0, isCoarse: true, isSketched: false, gathersTable: false, isFinest: false };
    const { full, coarse, scene } = side;
    const gathersTable = scene.map?.isEarly ?? false;
    const isCoarse = full.passes === 0;
    const samples = isCoarse ? Math.min(1, coarse.passes) : full.samples;
    const isSketched = !isCoarse && full.passes >= full.sketches;
    return {
      samples,
      isCoarse,
      isSketched,
      gathersTable,
      isFinest: !isCoarse && full.samples >= this.target,
    };
  }

  /** Puts scenes on the card in place of those before; `width` x `height` of one side. Their first programs must be there. */
  take(scenes: readonly PackedScene[], width: number, height: number): void {
    const before = this.sides;
    this.sides = scenes.map((scene, k) => {
      const old = before[k];
      const loaded = this.engine.load(scene, width * height, this.sketchesOf(scene), old?.scene);
      if (old) this.engine.unload(old.scene, loaded);
      const fits = old && old.full.width === width && old.full.height === height;
      if (old && !fits) disposePictures(old);
      const { full, coarse } = fits ? old : this.makePictures(width, height);
      return { scene: loaded, full, coarse };
    });
    for (const old of before.slice(scenes.length)) this.dropSide(old);
  }

  /** Forgets what was gathered; what shows stays until there is something new. */
  restart(): void {
    this.fitCoarse();
    for (const { scene, full, coarse } of this.sides) {
      full.restart(scene.sketches, scene.sketches === COLOURED_SKETCHES);
      coarse.restart(scene.sketches);
    }
    this.tracedInto = null;
  }

  /** Traces one frame's share. Answers how many paths of one side that were: 0 when there is nothing to do. */
  traceSome(view: View, isMoving: boolean): number {
    const [side] = this.sides;
    if (!side) return 0;
    const into = this.wanted(side, isMoving);
    const isDone = side[into].samples >= this.target && side[into].passes > 0;
    if (isDone || !this.canTrace(into)) return 0;
    const { width, height } = side[into];
    if (this.tracedInto !== into) this.scheduler.restart(width, height);
    this.tracedInto = into;
    let paths = 0;
    for (const band of this.scheduler.frame()) {
      // The sketch is through and its followers' program still compiles: the rest of the frame is given up.
      if (!this.canTrace(into)) {
        this.tracedInto = null;
        break;
      }
      const each = this.sides.map(({ scene, [into]: picture }) =>
        this.engine.trace(scene, picture, view, band, { x: 0, y: 0, width, height }),
      );
      paths += each[0];
    }
    this.hasNews ||= this.sides.some((each) => each[into].overdue !== null);
    return paths;
  }

  /** The full picture as soon as it has one whole pass, until then the coarse one, until then what was there before. */
  show(how: Omit<Showing, "left" | "right">, width: number, height: number): void {
    const { full, coarse } = this.sides[0];
    if (full.passes > 0) this.shown = "full";
    else if (coarse.passes > 0) this.shown = "coarse";
    const [left, right] = this.sides.map((side) => side[this.shown]);
    const { gain } = this.sides[0].scene.packed;
    this.engine.show({ left, right: right ?? null, gain, ...how }, width, height);
    this.hasNews = false;
  }

  drop(): void {
    for (const side of this.sides) this.dropSide(side);
    this.sides = [];
  }

  private makePictures(width: number, height: number) {
    return { full: new Accumulator(this.engine.gl, width, height), coarse: this.makeCoarse(width, height) };
  }

  private makeCoarse(width: number, height: number): Accumulator {
    const coarse = (length: number) => Math.max(1, Math.ceil(length / this.coarseness));
    return new Accumulator(this.engine.gl, coarse(width), coarse(height));
  }

  /** Gives the coarse pictures the size that this card can trace at once. */
  private fitCoarse(): void {
    const [side] = this.sides;
    if (!side) return;
    const pixels = side.full.width * side.full.height;
    const fits = (times: number) => this.scheduler.passMs(pixels / times ** 2) <= COARSE_PASS_MS;
    const coarseness = COARSENESS.find(fits) ?? COARSENESS[COARSENESS.length - 1];
    if (coarseness === this.coarseness) return;
    this.coarseness = coarseness;
    this.sides = this.sides.map((old) => {
      old.coarse.dispose();
      return { ...old, coarse: this.makeCoarse(old.full.width, old.full.height) };
    });
  }

  /** Coarse while something moves, and for one pass where a full one would keep the eye waiting. */
  private wanted({ full, coarse }: Side, isMoving: boolean): Resolution {
    if (isMoving) return "coarse";
    const isSlow = this.scheduler.passMs(full.width * full.height) > FIRST_PASS_MS;
    return isSlow && full.passes === 0 && coarse.passes === 0 ? "coarse" : "full";
  }

  private canTrace(into: Resolution): boolean {
    return this.sides.every((side) => this.engine.canTrace(side.scene.packed, side[into]));
  }

  private sketchesOf({ hasDispersion }: PackedScene): number {
    return hasDispersion ? SKETCHES[this.engine.isSoftware ? "software" : "card"] : 0;
  }

  private dropSide(side: Side): void {
    this.engine.unload(side.scene);
    disposePictures(side);
  }
}

function disposePictures({ full, coarse }: Pick<Side, "full" | "coarse">): void {
  for (const picture of [full, coarse]) picture.dispose();
}
