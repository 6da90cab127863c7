/** The bench's workers, started with the first question. */
import type { BenchJobs } from "../../worker/bench-worker.ts";
import { createPool, type JobWorker } from "../../worker/pool.ts";

const spawn = (): JobWorker =>
  new Worker(new URL("../../worker/bench-worker.ts", import.meta.url), { type: "module" });

/** Two: a long simulation never keeps the settings waiting. */
export const benchPool = createPool<BenchJobs>(spawn, { size: 2 });
