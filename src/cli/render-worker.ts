/** One thread of `render`: gets the scene once, then bands of rows to trace. */
import { parentPort, workerData } from "node:worker_threads";
import { renderRows } from "../core/optics/picture.ts";
import type { BandDone, RenderJob } from "./render-threads.ts";

const port = parentPort;
if (!port) throw new Error("the render worker was started without a parent thread");
const job = workerData as RenderJob;

port.on("message", (band: { readonly from: number; readonly to: number }) => {
  const tally = { lost: 0, meetings: 0 };
  const rows = renderRows(job.scene, job.camera, job.settings, band.from, band.to, tally);
  const done: BandDone = { from: band.from, rows, lost: tally.lost };
  port.postMessage(done, [rows.buffer as ArrayBuffer]);
});
