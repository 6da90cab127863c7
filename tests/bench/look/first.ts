/** How long an edit waits for its first picture: from the new planes to the card having drawn them, in the app's own renderer. */
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { LookRenderer, type LookState } from "../../../src/render/look-renderer.ts";
import { DEFAULT_OPTIONS, packScene } from "../../../src/render/pack-scene.ts";
import { BENCH_VIEW, marbleScene, spreadPlanes } from "./scenes.ts";

/** Samples a picture gathers before the edit that interrupts it, so that the renderer knows its card. */
const SAMPLES_BEFORE = 2;
/** An edit comes at any moment of a frame: this long after the one before was answered, by turns, milliseconds. */
const PAUSES_MS = [0, 5, 11, 16, 40];

/** Deepens one facet by as much as a stroke or two take. */
const edited = (planes: readonly Plane[], k: number): Plane[] =>
  planes.map((plane, i) =>
    i === k % planes.length ? { ...plane, h: plane.h - 0.002 * (1 + (k % 3)) } : plane,
  );

/** @param width, height of the picture, device pixels  @returns milliseconds from each edit to its first picture */
export async function firstPictures(
  count: number,
  width: number,
  height: number,
  edits: number,
): Promise<number[]> {
  const canvas = document.createElement("canvas");
  document.body.append(canvas);
  let now: LookState | null = null;
  let heard = () => {};
  const renderer = new LookRenderer(canvas, (state) => {
    now = state;
    heard();
  });
  const until = (holds: (state: LookState) => boolean) =>
    new Promise<void>((resolve, reject) => {
      heard = () => {
        if (now?.phase === "unable") reject(new Error(now.error ?? now.check.code));
        if (now && holds(now)) resolve();
      };
      heard();
    });
  const options = { ...DEFAULT_OPTIONS, hasDispersion: true };
  const show = (planes: readonly Plane[]) => renderer.setScenes([packScene(marbleScene(planes), options)]);
  renderer.resize(width, height);
  renderer.setView(BENCH_VIEW, false);
  show(spreadPlanes(count));
  await until((state) => state.samples >= SAMPLES_BEFORE && !state.isCoarse);
  const ms: number[] = [];
  for (let k = 0; k < edits; k++) {
    await new Promise((resume) => setTimeout(resume, PAUSES_MS[k % PAUSES_MS.length]));
    const started = performance.now();
    show(edited(spreadPlanes(count), k));
    // The picture from before is forgotten first.
    await until((state) => state.firstPictureMs === null);
    await until((state) => state.firstPictureMs !== null && !state.isBehind);
    // Waits for the card: what the page has asked for is not yet seen.
    const gl = renderer.tracer?.gl;
    gl?.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
    ms.push(performance.now() - started);
  }
  renderer.dispose();
  canvas.remove();
  return ms;
}
