/** A photograph of the maker's own marble, off the main thread: where the ball is, and how the piece looks with it inside. */

import { cameraFrom } from "../core/optics/camera.ts";
import { rastersOf } from "../core/optics/decode-picture.ts";
import { type FoundOutline, findOutline } from "../core/optics/find-outline.ts";
import { LIGHT_SETTINGS } from "../core/optics/light-settings.ts";
import { patchHighlights } from "../core/optics/patch-highlights.ts";
import type { Outline } from "../core/optics/photo.ts";
import { renderRows } from "../core/optics/picture.ts";
import type { Raster } from "../core/optics/raster.ts";
import { makeScene } from "../core/optics/scene.ts";
import { toBytes } from "../core/optics/tone-map.ts";
import { type PhotoWish, withPhoto } from "../core/optics/with-photo.ts";
import type { Plan } from "../core/plan/document.ts";
import { serveJobs, type Ticket } from "./job.ts";

export interface PatchQuestion {
  readonly photo: Raster;
  readonly outline: Outline;
}
export interface PhotoQuestion {
  readonly plan: Plan;
  readonly photo: Raster;
  readonly wish: PhotoWish;
}

/** Of the picture that is traced beside the photograph: pixels, paths a pixel, distance and field of the photograph's camera. */
const PREVIEW = { size: 200, samples: 6 } as const;

/** The uncut ball with the photograph in it, from where it was taken, filling the frame as its outline does. */
async function preview({ plan, photo, wish }: PhotoQuestion, { report }: Ticket): Promise<Raster> {
  const bare: Plan = { ...plan, tiers: [], piece: { ...plan.piece, inside: [] }, pictures: {} };
  const made = withPhoto(bare, photo, wish);
  const { piece } = made;
  const scene = makeScene({
    piece,
    planes: [],
    light: { kind: "setting", setting: LIGHT_SETTINGS.overcast, turnRad: 0 },
    rasters: rastersOf(made),
  });
  const distance = wish.distanceMm / (piece.diameterMm / 2);
  const field = (2.1 * 180 * Math.asin(1 / distance)) / Math.PI;
  const camera = cameraFrom(0, wish.side === "front" ? 90 : -90, distance, Math.min(170, field));
  const { size, samples } = PREVIEW;
  const settings = { size, samples, seed: 1, dispersion: false, bounces: null };
  const rgba = new Uint8Array(4 * size * size).fill(255);
  for (let row = 0; row < size; row++) {
    const rgb = toBytes(renderRows(scene, camera, settings, row, row + 1, { lost: 0, meetings: 0 }), 1);
    for (let x = 0; x < size; x++) rgba.set(rgb.subarray(3 * x, 3 * x + 3), 4 * (row * size + x));
    await report((row + 1) / size);
  }
  return { width: size, height: size, rgba };
}

const jobs = {
  findOutline: (photo: Raster): FoundOutline => findOutline(photo),
  patch: ({ photo, outline }: PatchQuestion) => patchHighlights(photo, outline),
  preview,
  /** The plan with it: its pictures without those that nothing names any more. */
  put: ({ plan, photo, wish }: PhotoQuestion): Plan => withPhoto(plan, photo, wish),
};
export type PhotoJobs = typeof jobs;
serveJobs(jobs, self);
