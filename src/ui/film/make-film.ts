/** Traces the pictures of a loop one after the other, as Look shows the piece, and hands them to the browser's encoder. */

import type { Plan } from "../../core/plan/document.ts";
import { type Loop, type LoopPicture, loopPictures } from "../../core/show/loops.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../render/pack-scene.ts";
import type { PackedScene } from "../../render/packed-scene.ts";
import { viewOfEye } from "../../show/eye.ts";
import { behindOf, partlyCutSceneOf, sceneOf } from "../look/look-scene.ts";
import { lookSettings } from "../look/look-settings.ts";
import { standOf } from "../look/lying.ts";
import { groundColor } from "../look/png.ts";
import { stillPicture, untilReady } from "../look/traced.ts";
import { type FilmKind, filmMaker } from "./encode.ts";

export interface FilmWish {
  readonly loop: Loop;
  readonly width: number;
  readonly height: number;
  readonly seconds: number;
  /** A pixel. */
  readonly samples: number;
}

/** Pictures a second. */
export const RATE = 24;

export interface Film {
  readonly kind: FilmKind;
  readonly file: Blob;
}

/** One scene for each state of the work, packed when it is first seen. */
function scenesOf(plan: Plan): (picture: LoopPicture) => PackedScene {
  const settings = lookSettings.getState();
  const options = {
    ...DEFAULT_OPTIONS,
    hasDispersion: settings.hasDispersion,
    maxMeetings: STILL_MEETINGS,
    behind: behindOf(settings),
  };
  const known = new Map<number | null, PackedScene>();
  return ({ cut }) => {
    const packed =
      known.get(cut) ??
      packScene(cut === null ? sceneOf(plan, settings) : partlyCutSceneOf(plan, settings, cut), options);
    known.set(cut, packed);
    return packed;
  };
}

/**
 * @param onPicture called after each with how many are done, and what it shows
 * @throws the signal's reason; what tracer or encoder throw
 */
export async function makeFilm(
  plan: Plan,
  { loop, width, height, seconds, samples }: FilmWish,
  signal: AbortSignal,
  onPicture: (done: number, of: number, picture: OffscreenCanvas) => void,
): Promise<Film> {
  await untilReady(signal);
  const pictures = loopPictures(loop, Math.round(seconds * RATE), plan.tiers.length);
  const sceneAt = scenesOf(plan);
  const settings = lookSettings.getState();
  const { exposure } = settings;
  // On a table the eye goes round that.
  const stand = standOf(plan, settings);
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("the browser has no canvas of this size");
  const ground = groundColor();
  const maker = await filmMaker({ width, height, rate: RATE });
  try {
    for (const [k, picture] of pictures.entries()) {
      const view = viewOfEye(picture, width / height, stand);
      const options = { width, height, samples, exposure, signal };
      const traced = await stillPicture(sceneAt(picture), view, options);
      context.fillStyle = ground;
      context.fillRect(0, 0, width, height);
      // putting pixels would replace the ground; drawing lets it through
      context.drawImage(await createImageBitmap(traced), 0, 0);
      await maker.add(canvas);
      signal.throwIfAborted();
      onPicture(k + 1, pictures.length, canvas);
    }
    return { kind: maker.kind, file: await maker.finish() };
  } finally {
    maker.close();
  }
}
