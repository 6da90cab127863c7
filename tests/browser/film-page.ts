/** A film made as the app makes it, without screens, and read back by the browser's own player. */

import { parsePlan } from "../../src/core/plan/file.ts";
import type { Loop } from "../../src/core/show/loops.ts";
import { filmKind } from "../../src/ui/film/encode.ts";
import { makeFilm, RATE } from "../../src/ui/film/make-film.ts";
import { FIRST_EXAMPLE } from "../../src/ui/first-example.ts";
import { setLook, type TableChoice } from "../../src/ui/look/look-settings.ts";
import { createStudio } from "../../src/ui/studio.ts";

/** Pictures across for comparing: coarse enough that a codec's own noise is small beside a step of the turn. */
const COARSE = 24;
/** Of that, what is no more than ground. */
const CORNER = 3;

async function base64(blob: Blob): Promise<string> {
  let text = "";
  for (const byte of new Uint8Array(await blob.arrayBuffer())) text += String.fromCharCode(byte);
  return btoa(text);
}

/** Whose card traces, and whose Look says on what. */
const studio = createStudio({ plan: FIRST_EXAMPLE });

const bench = {
  make: async (
    plan: string,
    loop: Loop,
    pictures: number,
    [width, height]: readonly [number, number],
    table: TableChoice,
    partsLight: boolean,
  ) => {
    setLook(studio, { table });
    const told: number[] = [];
    const wish = { loop, width, height, seconds: pictures / RATE, samples: 4, partsLight };
    const { signal } = new AbortController();
    const film = await makeFilm(studio, parsePlan(plan).plan, wish, signal, (done) => told.push(done));
    return { kind: film.kind, type: film.file.type, told, bytes: await base64(film.file) };
  },
  /** How many pictures were made after it was stopped at the first; the reason that it ended with. */
  stopped: async (plan: string) => {
    const control = new AbortController();
    let made = 0;
    const wish = { loop: "turn" as const, width: 32, height: 32, seconds: 1, samples: 1 };
    const end = await makeFilm(studio, parsePlan(plan).plan, wish, control.signal, () => {
      made++;
      control.abort();
    }).then(
      () => "made",
      (error) => (error as Error).name,
    );
    return { made, end };
  },
  kind: () => filmKind({ width: 64, height: 64, rate: RATE }),
  /**
   * Mean difference of each picture to the next, the last to the first, by the browser's player; and the colour of each one's lower
   * corners, 0 .. 255.
   */
  steps: async (bytes: string, type: string, pictures: number) => {
    const video = document.createElement("video");
    const data = Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0));
    video.src = URL.createObjectURL(new Blob([data], { type }));
    video.muted = true;
    /** Once picture `k` is handed over to be painted: a player that has sought it still shows the one before for a while. */
    const shown = (k: number) =>
      new Promise<void>((resolve) => {
        const look: VideoFrameRequestCallback = (_, { mediaTime }) =>
          Math.round(mediaTime * RATE) === k ? resolve() : void video.requestVideoFrameCallback(look);
        video.requestVideoFrameCallback(look);
      });
    const at = async (k: number) => {
      const isShown = shown(k);
      video.currentTime = (k + 0.5) / RATE;
      await isShown;
      const canvas = new OffscreenCanvas(COARSE, COARSE);
      const context = canvas.getContext("2d", { willReadFrequently: true });
      context?.drawImage(video, 0, 0, COARSE, COARSE);
      return context?.getImageData(0, 0, COARSE, COARSE).data ?? new Uint8ClampedArray();
    };
    await new Promise((resolve) => video.addEventListener("loadeddata", resolve, { once: true }));
    const seen: Uint8ClampedArray[] = [];
    for (let k = 0; k < pictures; k++) seen.push(await at(k));
    const off = (a: Uint8ClampedArray, b: Uint8ClampedArray) =>
      a.reduce((sum, value, i) => sum + Math.abs(value - b[i]), 0) / a.length;
    const cornersOf = (data: Uint8ClampedArray) => {
      const sums = [0, 0, 0];
      for (let y = COARSE - CORNER; y < COARSE; y++)
        for (let x = 0; x < CORNER; x++)
          for (const at of [x, COARSE - 1 - x])
            for (let c = 0; c < 3; c++) sums[c] += data[4 * (y * COARSE + at) + c];
      return sums.map((sum) => sum / (2 * CORNER * CORNER));
    };
    const steps = seen.map((one, k) => off(one, seen[(k + 1) % pictures]));
    return { seconds: video.duration, steps, corners: seen.map(cornersOf) };
  },
};
export type FilmBench = typeof bench;
declare global {
  interface Window {
    filmBench: FilmBench;
  }
}
window.filmBench = bench;
