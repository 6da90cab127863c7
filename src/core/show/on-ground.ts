/** A traced picture set on a page's ground: where a ray misses the piece the ground shows, not the light behind. */
import { enterBody } from "../optics/body.ts";
import { type Camera, cameraRay } from "../optics/camera.ts";
import type { Scene } from "../optics/scene.ts";
import { toBytes } from "../optics/tone-map.ts";

/** Rays across a pixel and down. */
const RAYS = 3;

/** Share of a pixel's rays that meet the piece. */
function coverage(scene: Scene, camera: Camera, size: number, x: number, y: number): number {
  let met = 0;
  for (let j = 0; j < RAYS; j++)
    for (let i = 0; i < RAYS; i++) {
      const [px, py] = [x + (i + 0.5) / RAYS, y + (j + 0.5) / RAYS];
      const d = cameraRay(camera, (2 * px) / size - 1, 1 - (2 * py) / size);
      if (enterBody(scene, camera.at, d)) met++;
    }
  return met / RAYS ** 2;
}

/**
 * @param rows linear radiance of a square picture, three floats a pixel, rows from the top
 * @param ground sRGB bytes
 * @returns four bytes a pixel, opaque
 */
export function onGround(
  scene: Scene,
  camera: Camera,
  rows: Float32Array,
  ground: readonly [number, number, number],
): Uint8Array {
  const size = Math.round(Math.sqrt(rows.length / 3));
  const bytes = toBytes(rows, 1);
  const set = new Uint8Array(4 * size * size).fill(255);
  for (let pixel = 0; pixel < size * size; pixel++) {
    const share = coverage(scene, camera, size, pixel % size, Math.floor(pixel / size));
    for (let c = 0; c < 3; c++)
      set[4 * pixel + c] = Math.round(share * bytes[3 * pixel + c] + (1 - share) * ground[c]);
  }
  return set;
}
