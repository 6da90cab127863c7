/** Spreads a picture's rows over threads. Every pixel has its own chance, so the number of threads changes nothing. */
import { availableParallelism } from "node:os";
import { numbersOf, type PictureSettings } from "../core/optics/picture.ts";
import { createPool } from "../worker/pool.ts";
import { type Band, type BandDone, type Picture, traceBand } from "./band.ts";
import type { RenderJobs } from "./render-worker.ts";
import { startThread, threadFile } from "./thread.ts";

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
  /** Added up in the order of rows, so that it too is the same for any number of threads. */
  get lost(): number {
    return this.#lost.reduce((sum, v) => sum + v, 0);
  }
}

const bandsOf = (size: number): Band[] =>
  Array.from({ length: Math.ceil(size / ROWS_PER_BAND) }, (_, i) => ({
    from: i * ROWS_PER_BAND,
    to: Math.min(size, (i + 1) * ROWS_PER_BAND),
  }));

function renderHere(picture: Picture, collector: Collector): void {
  for (const band of bandsOf(picture.settings.size)) collector.add(traceBand(picture, band));
}

async function renderThere(picture: Picture, threads: number, collector: Collector): Promise<void> {
  const pool = createPool<RenderJobs>(() => startThread(threadFile("render"), picture), { size: threads });
  try {
    await Promise.all(
      bandsOf(picture.settings.size).map(async (band) => collector.add(await pool.run("trace", band))),
    );
  } finally {
    pool.close();
  }
}

/**
 * Traces the whole picture.
 * @param onProgress gets the share done, 0 .. 1, now and then
 * @param threads default: one for each processor
 */
export async function renderPicture(
  picture: Picture,
  onProgress: (share: number) => void,
  threads = availableParallelism(),
): Promise<Rendered> {
  const { size, samples } = picture.settings;
  const collector = new Collector(picture.settings, onProgress);
  const wanted = Math.min(threads, bandsOf(size).length);
  if (wanted < 2 || size * size * samples < WORTH_THREADS) renderHere(picture, collector);
  else await renderThere(picture, wanted, collector);
  return { rows: collector.rows, lost: collector.lost };
}
