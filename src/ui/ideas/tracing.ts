/**
 * Small traced pictures for the wall, one after the other on the card of the Look, for whoever asks. A list that changes while
 * one is traced breaks nothing off: the next is chosen when one is done.
 */
import type { Plan } from "../../core/plan/document.ts";
import { DEFAULT_OPTIONS, packScene } from "../../render/pack-scene.ts";
import { sceneOf } from "../look/look-scene.ts";
import { lookOf } from "../look/look-settings.ts";
import { stillPicture, viewOf } from "../look/traced.ts";
import { urlOf } from "../look/WalkStrip.tsx";
import { HOME, type Orbit } from "../piece/camera.ts";
import { perStudio, type Studio } from "../studio.ts";

/** The eye that sees the front lean by so much: over the pole and beyond, so that up stays up. */
export const leaning = (deg: number): Orbit => ({ ...HOME, azimuthDeg: -90, elevationDeg: 90 - deg });

export interface Shot {
  readonly view: Orbit;
  /** Pixels each way. */
  readonly size: number;
  readonly samples: number;
}

/** A studio's card traces one after another. */
const queueOf = perStudio(() => ({ last: Promise.resolve() as Promise<unknown> }));

/** @throws the signal's reason; Error when there is no card to trace on just now */
export function traceIdea(
  studio: Studio,
  plan: Plan,
  { view, size, samples }: Shot,
  signal: AbortSignal,
): Promise<string> {
  const queue = queueOf(studio);
  const mine = queue.last.then(async () => {
    signal.throwIfAborted();
    const settings = lookOf(studio).getState();
    const packed = packScene(sceneOf(plan, settings), {
      ...DEFAULT_OPTIONS,
      hasDispersion: settings.hasDispersion,
    });
    const options = { width: size, height: size, samples, exposure: settings.exposure, signal };
    return urlOf(await stillPicture(studio, packed, viewOf(view, 1), options));
  });
  queue.last = mine.catch(() => undefined);
  return mine;
}
