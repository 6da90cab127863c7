/** What Look shows in its first seconds, in the app's own renderer: each picture as it comes, and the time until then. */
import { LookRenderer } from "../../../src/render/look-renderer.ts";
import { DEFAULT_OPTIONS, packScene } from "../../../src/render/pack-scene.ts";
import { exampleOnTable } from "./scenes.ts";

/** What stood on the screen after so much processor time of the browser, and by the clock. */
export interface Early {
  readonly samples: number;
  readonly isCoarse: boolean;
  readonly seconds: number;
  readonly clockSeconds: number;
  /** Bytes red, green, blue, rows from the bottom, base64. */
  readonly rgb: string;
}

/** Processor time of the browser so far, seconds: the page is given it. */
declare const processorSeconds: () => Promise<number>;

function base64(rgba: Uint8Array): string {
  let text = "";
  for (let at = 0; at < rgba.length; at += 4)
    text += String.fromCharCode(rgba[at], rgba[at + 1], rgba[at + 2]);
  return btoa(text);
}

interface EarlyWish {
  readonly name: string;
  readonly table: "paper" | "linen";
  readonly size: number;
  /** Samples up to which every picture is taken, and those of the last one. */
  readonly upTo: number;
  readonly until: number;
}

export async function earlyPictures({ name, table, size, upTo, until }: EarlyWish): Promise<Early[]> {
  const canvas = document.createElement("canvas");
  document.body.append(canvas);
  type Taken = Omit<Early, "rgb" | "seconds"> & {
    readonly rgba: Uint8Array;
    readonly seconds: Promise<number>;
  };
  const taken: Taken[] = [];
  const before = await processorSeconds();
  const begun = performance.now();
  let newest = "";
  await new Promise<void>((resolve, reject) => {
    const renderer = new LookRenderer(canvas, (state) => {
      if (state.phase === "unable") reject(new Error(state.error ?? state.check.code));
      const { samples, isCoarse } = state;
      const gl = renderer.tracer?.gl;
      const isNew = newest !== `${samples} ${isCoarse}` && state.firstPictureMs !== null && samples > 0;
      if (!gl || !isNew || (!isCoarse && samples > upTo && samples < until)) return;
      newest = `${samples} ${isCoarse}`;
      const clockSeconds = (performance.now() - begun) / 1000;
      const rgba = new Uint8Array(4 * size * size);
      gl.bindFramebuffer(gl.FRAMEBUFFER, null);
      gl.readPixels(0, 0, size, size, gl.RGBA, gl.UNSIGNED_BYTE, rgba);
      // empty where what showed went on showing
      if (rgba[3] > 0) taken.push({ samples, isCoarse, clockSeconds, rgba, seconds: processorSeconds() });
      if (isCoarse || samples < until) return;
      renderer.dispose();
      resolve();
    });
    const { scene, view } = exampleOnTable(name, table);
    renderer.resize(size, size);
    renderer.setDisplay({ exposure: 0, divider: 1, sideBySide: false, page: [1, 1, 1] });
    renderer.setScenes([packScene(scene, { ...DEFAULT_OPTIONS, behind: "light" })]);
    renderer.setView(view, false);
  });
  canvas.remove();
  return Promise.all(
    taken.map(async ({ rgba, seconds, ...step }) => ({
      ...step,
      seconds: (await seconds) - before,
      rgb: base64(rgba),
    })),
  );
}
