/**
 * The one traced picture of a studio: made when Look is first entered, kept when one leaves it, so that coming back neither
 * compiles nor gathers again. Components borrow its canvas.
 */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { lensOf } from "../../core/optics/camera.ts";
import { LookRenderer, type LookState } from "../../render/look-renderer.ts";
import type { PackedScene } from "../../render/packed-scene.ts";
import { type StillOptions, traceStill } from "../../render/still.ts";
import type { View } from "../../render/view.ts";
import { eyeFrame, FIELD_DEG, type Orbit, verticalField } from "../piece/camera.ts";
import { perStudio, type Studio, useStudioStore } from "../studio.ts";

export interface Traced {
  readonly canvas: HTMLCanvasElement;
  readonly renderer: LookRenderer;
}

/** Null until the picture is first asked for. */
const tracingOf = perStudio(() => createStore<{ readonly state: LookState | null }>(() => ({ state: null })));
export const useTracing = (): LookState | null =>
  useStore(tracingOf(useStudioStore()), (store) => store.state);

export const tracedPicture = perStudio((studio): Traced => {
  const canvas = document.createElement("canvas");
  const tracing = tracingOf(studio);
  const renderer = new LookRenderer(canvas, (state) => tracing.setState({ state }));
  tracing.setState({ state: renderer.current });
  return { canvas, renderer };
});

const LOOK_AGAIN_MS = 50;

/** Resolves once the card's programs are there.  @throws the signal's reason, or when this device can't trace */
export async function untilReady(studio: Studio, signal: AbortSignal): Promise<void> {
  const { renderer } = tracedPicture(studio);
  while (!renderer.tracer) {
    if (renderer.current.phase === "unable")
      throw new Error(renderer.current.error ?? renderer.current.check.detail);
    await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
    signal.throwIfAborted();
  }
}

/** A lens in front of the eye, and the ball that it is focused on. */
export interface Focus {
  readonly fNumber: number | null;
  readonly radiusMm: number;
}

/** The same through a lens; it is the shorter side of the picture that the eye's field goes across. */
export function throughLens(view: View, { distance }: Orbit, { fNumber, radiusMm }: Focus): View {
  return fNumber === null ? view : { ...view, lens: lensOf(fNumber, distance, FIELD_DEG, radiusMm) };
}

/** What the tracer sees from where the eye of all pictures stands. `aspect` = width / height. */
export function viewOf(eye: Orbit, aspect: number): View {
  const { out, right, up } = eyeFrame(eye);
  const at = (k: 0 | 1 | 2) => out[k] * eye.distance - right[k] * eye.panX - up[k] * eye.panY;
  return { eye: [at(0), at(1), at(2)], right, up, back: out, fieldDeg: verticalField(aspect) };
}

/**
 * A still picture on the card of the living one, which rests meanwhile.
 * @throws as `traceStill`; Error when there is no card to trace on just now
 */
export async function stillPicture(
  studio: Studio,
  packed: PackedScene,
  view: View,
  options: StillOptions,
): Promise<ImageData> {
  const { renderer } = tracedPicture(studio);
  if (!renderer.tracer) throw new Error("the graphics card is not available just now");
  renderer.setResting(true);
  try {
    return await traceStill(renderer.tracer, packed, view, options);
  } finally {
    renderer.setResting(false);
  }
}
