/** The photograph's worker, started when first asked. */
import type { PhotoJobs } from "../../../worker/photo-worker.ts";
import { createPool } from "../../../worker/pool.ts";

export const photoPool = createPool<PhotoJobs>(
  () => new Worker(new URL("../../../worker/photo-worker.ts", import.meta.url), { type: "module" }),
  { size: 1 },
);
