/**
 * How much of a picture one frame may trace. A pass over the picture (one sample everywhere) is cut into bands of rows;
 * their height follows the time that earlier bands took, so that a slow graphics card stays responsive and is never
 * reset by its watchdog, while a fast one gets whole passes, and several a frame. Pure: time comes in from outside.
 */

/** Rows [y, y + height) of the picture. */
export interface Band {
  readonly y: number;
  readonly height: number;
  /** True when this band ends the pass: one more sample everywhere. */
  readonly last: boolean;
}

/** Time that one frame's tracing should take, milliseconds: most of a 60 Hz frame, the rest is the page's. */
const TARGET_MS = 12;
/** A first band is this many pixels: 11 ms on a software renderer of 1.5 M samples/s, a blink on any card. */
const FIRST_PIXELS = 16_384;
/** A frame never traces less: what the page itself takes is measured too, and must not starve the picture. 20 ms at 0.3 M samples/s. */
const LEAST_PIXELS = 6_000;
/** One measurement changes the rate at most by these factors, so that a hiccup neither stalls nor floods the card. */
const GROWTH = 2;
const SHRINK = 0.25;
/** A band never gets more than this many passes' worth of rows in one frame. */
const MAX_PASSES_A_FRAME = 8;
/** How long a pass takes is a mean over about so many: rows through the glass take many times as long as rows beside it. */
const REMEMBERED_PASSES = 4;

export class TileScheduler {
  private width = 1;
  private height = 1;
  private nextRow = 0;
  /** As the last band had it. */
  private pixelsPerMs: number;
  /** Of the passes that are remembered, the older the less. */
  private readonly past = { pixels: 0, ms: 0 };

  /** @param targetMs time that one frame's tracing should take */
  constructor(private readonly targetMs = TARGET_MS) {
    this.pixelsPerMs = FIRST_PIXELS / targetMs;
  }

  /** Starts a picture of the given size from its first row; what was learnt about speed is kept. */
  restart(width: number, height: number): void {
    this.width = Math.max(1, width);
    this.height = Math.max(1, height);
    this.nextRow = 0;
  }

  /** About how long one pass over so many pixels takes, milliseconds. */
  passMs(pixels: number): number {
    const { past } = this;
    return past.ms > 0 ? (pixels * past.ms) / past.pixels : pixels / this.pixelsPerMs;
  }

  /** The bands to trace in this frame, in order; at least one row. */
  frame(): Band[] {
    const wanted = Math.max(LEAST_PIXELS, this.pixelsPerMs * this.targetMs);
    const budget = Math.min(wanted, this.width * this.height * MAX_PASSES_A_FRAME);
    const bands: Band[] = [];
    let rows = Math.max(1, Math.floor(budget / this.width));
    while (rows > 0) {
      const height = Math.min(rows, this.height - this.nextRow);
      const last = this.nextRow + height === this.height;
      bands.push({ y: this.nextRow, height, last });
      this.nextRow = last ? 0 : this.nextRow + height;
      rows -= height;
    }
    return bands;
  }

  /** Learns from `pixels` traced in `ms` milliseconds, > 0. */
  measured(pixels: number, ms: number): void {
    const rate = pixels / Math.max(ms, Number.EPSILON);
    const change = Math.min(GROWTH, Math.max(SHRINK, rate / this.pixelsPerMs));
    this.pixelsPerMs *= change;
    const { past } = this;
    const kept = Math.exp(-pixels / (REMEMBERED_PASSES * this.width * this.height));
    past.pixels = past.pixels * kept + pixels;
    past.ms = past.ms * kept + pixels / this.pixelsPerMs;
  }
}
