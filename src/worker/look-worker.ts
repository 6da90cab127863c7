/** What the look counts off the main thread: what one sees of a leaning piece, and the light that a cap leaves out. */
import type { Vec3 } from "../core/geometry/vec.ts";
import type { Camera } from "../core/optics/camera.ts";
import { lostLight } from "../core/optics/lost-light.ts";
import type { Scene } from "../core/optics/scene.ts";
import { walkPast } from "../core/optics/walk-past.ts";
import { serveJobs } from "./job.ts";

export interface WalkQuestion {
  readonly scene: Scene;
  /** The picture's frame; `back` from the centre to the far viewer. */
  readonly right: Vec3;
  readonly up: Vec3;
  readonly back: Vec3;
}
export interface LostQuestion {
  readonly scene: Scene;
  readonly camera: Camera;
  readonly cap: number;
}

const jobs = {
  walkPast: ({ scene, right, up, back }: WalkQuestion) => walkPast(scene, right, up, back),
  lostLight: ({ scene, camera, cap }: LostQuestion) => lostLight(scene, camera, cap),
};
export type LookJobs = typeof jobs;
serveJobs(jobs, self);
