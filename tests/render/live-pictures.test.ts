/** When the first picture of a change is there, on cards of every speed: by the clock of a card that is made up. */
import { describe, expect, it } from "vitest";
import type { Accumulator } from "../../src/render/accumulator.ts";
import { LivePictures } from "../../src/render/live-pictures.ts";
import type { PackedScene } from "../../src/render/packed-scene.ts";
import { COLOURED_SKETCHES } from "../../src/render/pass.ts";
import { type Band, TileScheduler } from "../../src/render/tile-scheduler.ts";
import type { TraceEngine } from "../../src/render/trace-engine.ts";
import { viewFrom } from "../../src/render/view.ts";
import { anyContext } from "./any-context.ts";

const [WIDTH, HEIGHT] = [1920, 1080];
const REFRESH_MS = 1000 / 60;
const VIEW = viewFrom(0, 30, 20, 6);
const SCENE = { hasDispersion: true } as PackedScene;

function picturesOn(scheduler: TileScheduler): LivePictures {
  const engine = {
    gl: anyContext(),
    canTrace: () => true,
    load: (packed: PackedScene) => ({ packed, buffers: [], textures: [] }),
    unload: () => undefined,
    show: () => undefined,
    trace: (_scene: object, target: Accumulator, _view: object, band: Band) => {
      if (band.last) target.endPass();
      return band.height * target.width;
    },
  };
  const pictures = new LivePictures(engine as unknown as TraceEngine, scheduler, 256);
  pictures.take([SCENE], WIDTH, HEIGHT);
  return pictures;
}

/**
 * Milliseconds from a change to its first picture, at worst: the change comes just after a frame has been given to the card,
 * which works it off first; every frame waits for the screen's next one. `pixelsPerMs`: what the card traces.
 */
function firstPictureMs(pixelsPerMs: number): number {
  const scheduler = new TileScheduler();
  const pictures = picturesOn(scheduler);
  let now = 0;
  const frame = () => {
    const pixels = pictures.traceSome(VIEW, false);
    const ms = pixels / pixelsPerMs;
    if (pixels > 0) scheduler.measured(pixels, ms);
    const done = now + ms;
    now = Math.ceil(done / REFRESH_MS + 1e-9) * REFRESH_MS;
    return done;
  };
  pictures.restart();
  for (let k = 0; k < 40; k++) frame();
  const changed = now;
  frame();
  pictures.restart();
  let done = now;
  while (pictures.progress.samples === 0) done = frame();
  return done - changed;
}

describe("the sketch", () => {
  it.each([
    ["card", 1, false],
    ["software", COLOURED_SKETCHES, true],
  ] as const)(
    "is coloured in software, but for what shows while something moves: %s",
    (by, passes, isColoured) => {
      const traced: (readonly [number, number, boolean])[] = [];
      const engine = {
        gl: anyContext(),
        isSoftware: by === "software",
        load: (packed: PackedScene, _pixels: number, sketches: number) => ({ packed, sketches }),
        canTrace: () => true,
        trace: (_scene: object, target: Accumulator, _view: object, band: Band) => {
          const { width, sketches, isColoured } = target;
          traced.push([width, sketches, isColoured]);
          if (band.last) target.endPass();
          return band.height * width;
        },
      };
      const pictures = new LivePictures(engine as unknown as TraceEngine, new TileScheduler(), 256);
      pictures.take([SCENE], WIDTH, HEIGHT);
      pictures.restart();
      pictures.traceSome(VIEW, true);
      for (let frame = 0; frame < 200; frame++) pictures.traceSome(VIEW, false);
      const [coarse, full] = [
        traced.filter(([width]) => width < WIDTH),
        traced.filter(([width]) => width === WIDTH),
      ];
      expect(coarse.length).toBeGreaterThan(0);
      expect(full.length).toBeGreaterThan(0);
      for (const each of coarse) expect(each.slice(1)).toEqual([passes, false]);
      for (const each of full) expect(each.slice(1)).toEqual([passes, isColoured]);
    },
  );
});

describe("the first picture of a change", () => {
  // 100 ms from the edit, of which solving and drawing the plan take a frame.
  it.each([1.1, 2, 5, 10, 20, 35, 38, 50, 52, 60, 100, 300, 1000].map((mega) => [mega]))(
    "is there within 84 ms on a screen of 1920 x 1080, on a card of %s million samples a second",
    (mega) => {
      expect(firstPictureMs(mega * 1e3)).toBeLessThan(84);
    },
  );
});
