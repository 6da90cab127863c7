/** The look's worker, started when first asked. */
import type { Scene } from "../../core/optics/scene.ts";
import type { LookJobs } from "../../worker/look-worker.ts";
import { createPool } from "../../worker/pool.ts";

export const lookPool = createPool<LookJobs>(
  () => new Worker(new URL("../../worker/look-worker.ts", import.meta.url), { type: "module" }),
  { size: 1 },
);

/** Counts need no light: a person's own picture stays here instead of being copied. */
export const unlit = (scene: Scene): Scene => ({ ...scene, light: { kind: "uniform" } });
