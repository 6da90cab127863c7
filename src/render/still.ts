/** A still picture at any size and number of samples, traced tile by tile beside the living one, on the same card. */
import type { Rgb } from "../core/optics/spectrum.ts";
import { Accumulator } from "./accumulator.ts";
import { measureGpu } from "./gpu-clock.ts";
import { type Leading, mapPaths } from "./light-map.ts";
import type { PackedScene } from "./packed-scene.ts";
import { TileScheduler } from "./tile-scheduler.ts";
import type { LoadedScene, TraceEngine } from "./trace-engine.ts";
import type { View } from "./view.ts";

export interface StillOptions {
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Per pixel, >= 1. */
  readonly samples: number;
  /** Stops. */
  readonly exposure: number;
  /** Linear colour of a page that is seen through the piece, in a picture that isn't transparent. */
  readonly page?: Rgb;
  readonly signal: AbortSignal;
  /** Share done, 0 .. 1. */
  readonly onProgress?: (share: number) => void;
}

/** Longest side of a tile: its sums and its picture take 59 MB. */
const TILE = 1024;

/**
 * Paths to 64 surfaces take so many times as long as the living picture's to 16: as measured on a card, with 61 facets on paper; in
 * software the middle of what four saved pictures took (`npm run bench -- saved`).
 */
const LONGER: Readonly<Record<Leading, number>> = { card: 1.69, software: 1.2 };

/** What a still picture is made of, in paths of a living one: all samples and the sketch before them, and the light map of a table. */
export const stillPaths = (pixels: number, samples: number, hasTable: boolean, by: Leading): number =>
  LONGER[by] * ((samples + 1) * pixels + (hasTable ? mapPaths(pixels, samples + 1, 1, by) : 0));

interface Tile {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Tiles of at most TILE x TILE that cover the picture, from its lower left corner. */
export function tilesOf(width: number, height: number): Tile[] {
  const tiles: Tile[] = [];
  for (let y = 0; y < height; y += TILE)
    for (let x = 0; x < width; x += TILE)
      tiles.push({ x, y, width: Math.min(TILE, width - x), height: Math.min(TILE, height - y) });
  return tiles;
}

/** Pixels around a tile that its own pixels are smoothed by; as `REACH` in `resolve.frag`. */
const MARGIN = 2;

/** The tile with its margin, as far as the picture goes. */
export function withMargin({ x, y, width, height }: Tile, across: number, down: number): Tile {
  const [left, low] = [Math.max(0, x - MARGIN), Math.max(0, y - MARGIN)];
  return {
    x: left,
    y: low,
    width: Math.min(across, x + width + MARGIN) - left,
    height: Math.min(down, y + height + MARGIN) - low,
  };
}

/**
 * Traces a picture; alpha says where the piece is (or 1 everywhere when the scene shows the light behind it).
 * @throws the signal's reason when cancelled; Error when the context is lost meanwhile; ShaderCompileError
 */
export async function traceStill(
  engine: TraceEngine,
  packed: PackedScene,
  view: View,
  options: StillOptions,
): Promise<ImageData> {
  await engine.prepare(packed, options.signal);
  const picture = new ImageData(options.width, options.height);
  const scene = engine.load(packed, options.width * options.height);
  const tiles = tilesOf(options.width, options.height);
  const scheduler = new TileScheduler();
  try {
    for (const [k, tile] of tiles.entries()) {
      const onShare = (share: number) => options.onProgress?.((k + share) / tiles.length);
      await traceTile(engine, scene, view, tile, options, scheduler, picture, onShare);
    }
  } finally {
    engine.unload(scene);
  }
  return picture;
}

async function traceTile(
  engine: TraceEngine,
  scene: LoadedScene,
  view: View,
  tile: Tile,
  options: StillOptions,
  scheduler: TileScheduler,
  picture: ImageData,
  onShare: (share: number) => void,
): Promise<void> {
  const { gl } = engine;
  const traced = withMargin(tile, options.width, options.height);
  const { width, height } = traced;
  const target = new Accumulator(gl, width, height);
  const frame = { x: traced.x, y: traced.y, width: options.width, height: options.height };
  target.restart(scene.sketches);
  scheduler.restart(width, height);
  // A sketch is no sample: where there is one, the sum begins a pass later.
  const passes = options.samples + scene.sketches;
  try {
    while (target.passes < passes) {
      const bands = scheduler.frame();
      let paths = 0;
      for (const band of bands) paths += engine.trace(scene, target, view, band, frame);
      const ms = await measureGpu(gl);
      options.signal.throwIfAborted();
      if (gl.isContextLost()) throw new Error("the graphics card was taken away");
      scheduler.measured(paths, ms);
      onShare(Math.min(1, target.passes / passes));
    }
    copyTile(engine, target, options, scene.packed.gain, tile, traced, picture);
  } finally {
    target.dispose();
  }
}

/** Tones a finished tile and puts it, unpremultiplied, top row first and without its margin, into the picture. */
function copyTile(
  engine: TraceEngine,
  target: Accumulator,
  { exposure, page }: StillOptions,
  gain: Rgb,
  tile: Tile,
  traced: Tile,
  picture: ImageData,
): void {
  const bytes = engine.readShown(
    { left: target, right: null, exposure, gain, page, divider: 1, sideBySide: false },
    traced.width,
    traced.height,
  );
  const [left, low] = [tile.x - traced.x, tile.y - traced.y];
  for (let y = 0; y < tile.height; y++)
    for (let x = 0; x < tile.width; x++) {
      const from = 4 * ((low + y) * traced.width + left + x);
      const to = 4 * ((picture.height - 1 - tile.y - y) * picture.width + tile.x + x);
      const alpha = bytes[from + 3];
      for (let c = 0; c < 3; c++)
        picture.data[to + c] = alpha === 0 ? 0 : Math.min(255, (bytes[from + c] * 255) / alpha);
      picture.data[to + 3] = alpha;
    }
}
