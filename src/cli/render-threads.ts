/** Spreads a picture's rows over threads. Every pixel has its own chance, so the number of threads changes nothing. */
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { Camera } from "../core/optics/camera.ts";
import { numbersOf, type PictureSettings, renderRows } from "../core/optics/picture.ts";
import type { Scene } from "../core/optics/scene.ts";

export interface RenderJob {
  readonly scene: Scene;
  readonly camera: Camera;
  readonly settings: PictureSettings;
}

export interface BandDone {
  readonly from: number;
  readonly rows: Float32Array;
  readonly lost: number;
}

export interface Rendered {
  /** Linear sRGB, three floats a pixel, rows from the top; premultiplied and with alpha in a picture without a background. */
  readonly rows: Float32Array;
  /** Weight of the paths that were cut off, summed over all paths. */
  readonly lost: number;
}

const ROWS_PER_BAND = 4;
/** Below this many camera rays starting threads takes longer than tracing. */
const WORTH_THREADS = 50_000;

/** Collects bands as they come and tells how far the picture is. */
class Collector {
  readonly rows: Float32Array;
  #lost: number[] = [];
  #done = 0;
  constructor(
    readonly settings: PictureSettings,
    readonly onProgress: (share: number) => void,
  ) {
    this.rows = new Float32Array(numbersOf(settings) * settings.size ** 2);
  }
  add(band: BandDone): void {
    this.rows.set(band.rows, numbersOf(this.settings) * this.settings.size * band.from);
    this.#lost[band.from] = band.lost;
    this.#done += band.rows.length;
    this.onProgress(this.#done / this.rows.length);
  }
  get complete(): boolean {
    return this.#done === this.rows.length;
  }
  /** Added up in the order of rows, so that it too is the same for any number of threads. */
  get lost(): number {
    return this.#lost.reduce((sum, v) => sum + v, 0);
  }
}

function bandsOf(size: number): { from: number; to: number }[] {
  return Array.from({ length: Math.ceil(size / ROWS_PER_BAND) }, (_, i) => ({
    from: i * ROWS_PER_BAND,
    to: Math.min(size, (i + 1) * ROWS_PER_BAND),
  }));
}

function renderHere(job: RenderJob, collector: Collector): void {
  for (const { from, to } of bandsOf(job.settings.size)) {
    const tally = { lost: 0, meetings: 0 };
    const rows = renderRows(job.scene, job.camera, job.settings, from, to, tally);
    collector.add({ from, rows, lost: tally.lost });
  }
}

/** What a thread runs: bundled, its own bundle beside this one; from the sources, a module that registers the loader first. */
const THREAD = new URL(
  import.meta.url.endsWith(".ts") ? "./render-thread.mjs" : "./render-worker.js",
  import.meta.url,
);

function renderThere(job: RenderJob, threads: number, collector: Collector): Promise<void> {
  const bands = bandsOf(job.settings.size);
  const workers: Worker[] = [];
  return new Promise<void>((resolve, reject) => {
    const giveNext = (worker: Worker) => {
      const band = bands.shift();
      if (band) worker.postMessage(band);
    };
    for (let i = 0; i < threads; i++) {
      const worker = new Worker(THREAD, { workerData: job });
      workers.push(worker);
      worker.on("error", reject);
      // one that is gone without a word is told too; once all is traced this comes too late to matter
      worker.on("exit", () => reject(new Error("a thread ended while it was at work")));
      worker.on("message", (done: BandDone) => {
        collector.add(done);
        if (collector.complete) resolve();
        else giveNext(worker);
      });
      giveNext(worker);
    }
  }).finally(() => Promise.all(workers.map((worker) => worker.terminate())));
}

/**
 * Traces the whole picture.
 * @param onProgress gets the share done, 0 .. 1, now and then
 * @param threads default: one for each processor
 */
export async function renderPicture(
  job: RenderJob,
  onProgress: (share: number) => void,
  threads = availableParallelism(),
): Promise<Rendered> {
  const { size, samples } = job.settings;
  const collector = new Collector(job.settings, onProgress);
  const wanted = Math.min(threads, bandsOf(size).length);
  if (wanted < 2 || size * size * samples < WORTH_THREADS) renderHere(job, collector);
  else await renderThere(job, wanted, collector);
  return { rows: collector.rows, lost: collector.lost };
}
