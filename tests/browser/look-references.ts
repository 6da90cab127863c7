/**
 * The twin's own pictures of the shared scenes, kept as linear floats so that a run in a browser need not wait for them.
 * Two of each, from different seeds: their difference tells the noise they still carry.
 */
import { readFileSync } from "node:fs";
import { cameraFrom } from "../../src/core/optics/camera.ts";
import { readPfm } from "../../src/core/optics/pfm.ts";
import { renderRows } from "../../src/core/optics/picture.ts";
import { DEFAULT_DISTANCE, DEFAULT_FIELD_DEG } from "../../src/render/view.ts";
import type { LookScene } from "./look-scenes.ts";

/** Width and height, pixels. */
export const REFERENCE_SIZE = 48;
export const REFERENCE_SAMPLES = 256;
export const REFERENCE_SEEDS = [21, 22] as const;

/** Three floats a pixel, rows from the top. */
export function twinPicture(scene: LookScene, samples: number, seed: number): Float32Array {
  const camera = cameraFrom(scene.from[0], scene.from[1], DEFAULT_DISTANCE, DEFAULT_FIELD_DEG);
  const settings = { size: REFERENCE_SIZE, samples, seed, dispersion: scene.hasDispersion, bounces: null };
  return renderRows(scene.make(), camera, settings, 0, REFERENCE_SIZE, { lost: 0, meetings: 0 });
}

export const referenceFile = (scene: LookScene, seed: number): URL =>
  new URL(`../fixtures/look/${scene.name.replaceAll(" ", "-")}-${seed}.pfm`, import.meta.url);

/** The two kept pictures of a scene, rows from the top. */
export const keptPictures = (scene: LookScene): readonly [Float32Array, Float32Array] => {
  const [a, b] = REFERENCE_SEEDS.map((seed) => readPfm(readFileSync(referenceFile(scene, seed))).rows);
  return [a, b];
};
