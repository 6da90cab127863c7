/** A band of a picture's rows, which one thread traces at a time. */
import type { Camera } from "../core/optics/camera.ts";
import { type PictureSettings, renderRows } from "../core/optics/picture.ts";
import type { Scene } from "../core/optics/scene.ts";

export interface Picture {
  readonly scene: Scene;
  readonly camera: Camera;
  readonly settings: PictureSettings;
}

/** Rows from `from` on, to before `to`. */
export interface Band {
  readonly from: number;
  readonly to: number;
}

export interface BandDone {
  readonly from: number;
  readonly rows: Float32Array;
  readonly lost: number;
}

export function traceBand({ scene, camera, settings }: Picture, { from, to }: Band): BandDone {
  const tally = { lost: 0, meetings: 0 };
  const rows = renderRows(scene, camera, settings, from, to, tally);
  return { from, rows, lost: tally.lost };
}
