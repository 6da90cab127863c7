/**
 * How much light a cap on a path's surfaces leaves out: light that facets send to and fro, still inside when the path is cut
 * off. Counted with the tracer itself, on a grid of paths from the eye.
 */
import { enterBody } from "./body.ts";
import { type Camera, cameraRay } from "./camera.ts";
import { streamOf } from "./random.ts";
import type { Scene } from "./scene.ts";
import { tracePath } from "./tracer.ts";
import { colourOfChannels } from "./walker.ts";

/** Paths across and down. */
const GRID = 40;
const SEED = 1;

/**
 * Share, 0 .. 1, of what the paths that meet the piece carry, that is still inside after `cap` surfaces; 0 when none meets it.
 */
export function lostLight(scene: Scene, camera: Camera, cap: number): number {
  const tally = { lost: 0, meetings: 0 };
  const colour = colourOfChannels(scene);
  let paths = 0;
  for (let pixel = 0; pixel < GRID * GRID; pixel++) {
    const [x, y] = [pixel % GRID, Math.floor(pixel / GRID)];
    const d = cameraRay(camera, (2 * x + 1) / GRID - 1, 1 - (2 * y + 1) / GRID);
    const entry = enterBody(scene, camera.at, d);
    if (!entry) continue;
    paths++;
    const random = streamOf(pixel, 0, SEED, pixel);
    tracePath({ scene, colour, cap, random, tally, sum: [0, 0, 0], behind: null }, camera.at, d, entry);
  }
  return paths === 0 ? 0 : tally.lost / paths;
}
