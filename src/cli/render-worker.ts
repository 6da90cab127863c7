/** One thread of `render`: gets the scene once, when it is started, then bands of rows to trace. */
import { workerData } from "node:worker_threads";
import { transfer } from "comlink";
import { type Band, type BandDone, type Picture, traceBand } from "./band.ts";
import { serveThread } from "./thread.ts";

const picture = workerData as Picture;

const jobs = {
  trace: (band: Band): BandDone => {
    const done = traceBand(picture, band);
    return transfer(done, [done.rows.buffer as ArrayBuffer]);
  },
};
export type RenderJobs = typeof jobs;
serveThread(jobs);
