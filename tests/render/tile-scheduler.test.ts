import { describe, expect, it } from "vitest";
import { type Band, TileScheduler } from "../../src/render/tile-scheduler.ts";

const rowsOf = (bands: readonly Band[]): number => bands.reduce((sum, band) => sum + band.height, 0);

/** Runs frames on a card that traces `pixelsPerMs`; answers the time each frame took, and the passes finished. */
function run(scheduler: TileScheduler, width: number, pixelsPerMs: number, frames: number) {
  const spent: number[] = [];
  let passes = 0;
  for (let k = 0; k < frames; k++) {
    const bands = scheduler.frame();
    const pixels = rowsOf(bands) * width;
    const ms = pixels / pixelsPerMs;
    spent.push(ms);
    passes += bands.filter((band) => band.last).length;
    scheduler.measured(pixels, ms);
  }
  return { spent, passes };
}

describe("the tile scheduler", () => {
  it("covers every row of a pass exactly once, in order", () => {
    const scheduler = new TileScheduler();
    scheduler.restart(700, 333);
    const rows: number[] = [];
    for (let ended = false; !ended; ) {
      for (const band of scheduler.frame()) {
        if (ended) break;
        for (let y = band.y; y < band.y + band.height; y++) rows.push(y);
        ended = band.last;
      }
    }
    expect(rows).toEqual(Array.from({ length: 333 }, (_, y) => y));
  });

  it("keeps a slow card under 30 ms a frame from the second frame on", () => {
    const scheduler = new TileScheduler();
    scheduler.restart(800, 800);
    const { spent } = run(scheduler, 800, 300, 50);
    expect(Math.max(...spent.slice(2))).toBeLessThan(30);
  });

  it("gives a fast card several passes a frame", () => {
    const scheduler = new TileScheduler();
    scheduler.restart(400, 400);
    const { passes } = run(scheduler, 400, 1e6, 40);
    expect(passes).toBeGreaterThan(40 * 4);
  });

  it("tells how long a pass takes by all its rows, wherever the last frame has ended", () => {
    // the middle third, with glass in it, takes eight times as long as what is above and below
    const SIDE = 300;
    const msOfRow = (y: number): number => (y >= SIDE / 3 && y < (2 * SIDE) / 3 ? 0.8 : 0.1);
    const real = Array.from({ length: SIDE }, (_, y) => msOfRow(y)).reduce((sum, ms) => sum + ms);
    const scheduler = new TileScheduler();
    scheduler.restart(SIDE, SIDE);
    for (let k = 0; k < 400; k++) {
      let ms = 0;
      let rows = 0;
      for (const { y, height } of scheduler.frame()) {
        for (let row = y; row < y + height; row++) ms += msOfRow(row);
        rows += height;
      }
      scheduler.measured(rows * SIDE, ms);
      if (k < 100) continue;
      expect(scheduler.passMs(SIDE * SIDE) / real).toBeGreaterThan(1 / 1.2);
      expect(scheduler.passMs(SIDE * SIDE) / real).toBeLessThan(1.2);
    }
  });

  it("always traces at least one row, however slow the card", () => {
    const scheduler = new TileScheduler();
    scheduler.restart(4000, 10);
    run(scheduler, 4000, 1e-3, 20);
    expect(scheduler.frame()[0]?.height).toBe(1);
  });

  it("starts again from the first row, keeping what it learnt", () => {
    const scheduler = new TileScheduler();
    scheduler.restart(800, 800);
    run(scheduler, 800, 4000, 7);
    scheduler.restart(800, 400);
    const first = scheduler.frame()[0];
    expect(first?.y).toBe(0);
    expect(((first?.height ?? 0) * 800) / 4000).toBeGreaterThan(4);
  });
});
