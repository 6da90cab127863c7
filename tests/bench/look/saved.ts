/** How long a saved picture takes, beside how long Look says that it will, in the app's own renderer. */
import { LookRenderer, type LookState } from "../../../src/render/look-renderer.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../../src/render/pack-scene.ts";
import { traceStill } from "../../../src/render/still.ts";
import { exampleInHand, exampleOnTable } from "./scenes.ts";

export interface SavedWish {
  readonly name: string;
  readonly isOnPaper: boolean;
  /** Pixels each way of the picture that Look shows, and samples that it has when it is asked. */
  readonly shown: number;
  readonly before: number;
  /** Pixels each way and samples of the pictures to be saved. */
  readonly sizes: readonly number[];
  readonly samples: number;
}

export interface Saved {
  readonly size: number;
  readonly toldMs: number;
  readonly realMs: number;
}

export async function savedPictures(wish: SavedWish): Promise<Saved[]> {
  const { scene, view } = wish.isOnPaper ? exampleOnTable(wish.name, "paper") : exampleInHand(wish.name);
  const canvas = document.createElement("canvas");
  document.body.append(canvas);
  const renderer = await new Promise<LookRenderer>((resolve, reject) => {
    const heard = (state: LookState) => {
      if (state.phase === "unable") reject(new Error(state.error ?? state.check.code));
      if (!state.isCoarse && state.samples >= wish.before) resolve(made);
    };
    const made = new LookRenderer(canvas, heard);
    made.resize(wish.shown, wish.shown);
    made.setDisplay({ exposure: 0, divider: 1, sideBySide: false, page: [1, 1, 1] });
    made.setScenes([packScene(scene, { ...DEFAULT_OPTIONS, behind: "light" })]);
    made.setView(view, false);
  });
  renderer.setResting(true);
  const engine = renderer.tracer;
  if (!engine) throw new Error("the renderer has lost its context");
  const packed = packScene(scene, { ...DEFAULT_OPTIONS, maxMeetings: STILL_MEETINGS, behind: "light" });
  const saved: Saved[] = [];
  for (const size of wish.sizes) {
    const toldMs = renderer.stillMs(size * size, wish.samples, wish.isOnPaper);
    if (toldMs === null) throw new Error("nothing was traced");
    const started = performance.now();
    const { signal } = new AbortController();
    await traceStill(engine, packed, view, {
      width: size,
      height: size,
      samples: wish.samples,
      exposure: 0,
      signal,
    });
    saved.push({ size, toldMs, realMs: performance.now() - started });
  }
  renderer.dispose();
  canvas.remove();
  return saved;
}
