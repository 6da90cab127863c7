/**
 * Pictures of the shared scenes that take long to make, kept as linear floats so that a run in a browser need not wait for them:
 * the twin's own, two of each from different seeds, whose difference tells the noise they still carry; and the middle of a larger
 * one from the shader, converged.
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
  const camera = cameraFrom(...scene.from, DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, scene.up);
  const settings = { size: REFERENCE_SIZE, samples, seed, dispersion: scene.hasDispersion, bounces: null };
  return renderRows(scene.make(), camera, settings, 0, REFERENCE_SIZE, { lost: 0, meetings: 0 });
}

/** Of what the shader has gathered of the noisy scenes when their picture is kept. */
export const CONVERGED_SAMPLES = 1024;
/** What is traced of them is the middle of a picture so many times as wide. */
export const CONVERGED_OF = 10 * REFERENCE_SIZE;

export const convergedFile = (scene: LookScene): URL =>
  new URL(`../fixtures/look/${scene.name.replaceAll(" ", "-")}-converged.pfm`, import.meta.url);

/** Rows from the top. */
export const keptConverged = (scene: LookScene): Float32Array =>
  readPfm(readFileSync(convergedFile(scene))).rows;

/** Rows from the top without alpha, as the twin has them, of what the shader hands over: RGBA, rows from the bottom. */
export const rowsFromTop = (rgba: readonly number[]): number[] =>
  Array.from({ length: 3 * REFERENCE_SIZE ** 2 }, (_, i) => {
    const pixel = Math.floor(i / 3);
    const [x, y] = [pixel % REFERENCE_SIZE, Math.floor(pixel / REFERENCE_SIZE)];
    return rgba[4 * ((REFERENCE_SIZE - 1 - y) * REFERENCE_SIZE + x) + (i % 3)];
  });

export const referenceFile = (scene: LookScene, seed: number): URL =>
  new URL(`../fixtures/look/${scene.name.replaceAll(" ", "-")}-${seed}.pfm`, import.meta.url);

/** The two kept pictures of a scene, rows from the top. */
export const keptPictures = (scene: LookScene): readonly [Float32Array, Float32Array] => {
  const [a, b] = REFERENCE_SEEDS.map((seed) => readPfm(readFileSync(referenceFile(scene, seed))).rows);
  return [a, b];
};
