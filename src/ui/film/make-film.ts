/** Traces the pictures of a loop one after the other, as Look shows the piece, and hands them to the browser's encoder. */

import type { Plan } from "../../core/plan/document.ts";
import { type Loop, type LoopPicture, loopPictures } from "../../core/show/loops.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../render/pack-scene.ts";
import type { PackedScene } from "../../render/packed-scene.ts";
import { viewOfEye } from "../../show/eye.ts";
import { behindOf, partlyCutSceneOf, sceneOf } from "../look/look-scene.ts";
import { lookOf } from "../look/look-settings.ts";
import { standOf } from "../look/lying.ts";
import { groundColor } from "../look/png.ts";
import { stillPicture, tracedPicture, untilReady } from "../look/traced.ts";
import type { Studio } from "../studio.ts";
import { type FilmKind, filmMaker } from "./encode.ts";

export interface FilmWish {
  readonly loop: Loop;
  readonly width: number;
  readonly height: number;
  readonly seconds: number;
  /** Pictures a second; RATE without it. */
  readonly rate?: number;
  /** A pixel. */
  readonly samples: number;
  /** Whether light parts into its colours where Look has it so; it does without this. */
  readonly partsLight?: boolean;
}

/** Pictures a second. */
export const RATE = 24;

export interface Film {
  readonly kind: FilmKind;
  readonly file: Blob;
}

/** Pictures that come again are kept up to so many bytes; beyond that they are traced again. */
const MOST_KEPT = 256e6;
const BYTES_PER_PIXEL = 4;

/** One scene for each state of the work, packed when it is first seen. */
function scenesOf(studio: Studio, plan: Plan, partsLight: boolean): (picture: LoopPicture) => PackedScene {
  const settings = lookOf(studio).getState();
  // without a card each surface more is paid for, and a film's pictures are seen for a moment
  const isSoftware = tracedPicture(studio).renderer.current.check.code === "software";
  const options = {
    ...DEFAULT_OPTIONS,
    hasDispersion: partsLight && settings.hasDispersion,
    maxMeetings: isSoftware ? DEFAULT_OPTIONS.maxMeetings : STILL_MEETINGS,
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

/** The pictures of a wish, and how one of them is traced. */
function tracingOf(
  studio: Studio,
  plan: Plan,
  { loop, width, height, seconds, rate = RATE, samples, partsLight = true }: FilmWish,
) {
  const settings = lookOf(studio).getState();
  const pictures = loopPictures(loop, Math.round(seconds * rate), plan.tiers.length);
  const sceneAt = scenesOf(studio, plan, partsLight);
  // On a table the eye goes round that.
  const stand = standOf(plan, settings);
  const trace = (
    picture: LoopPicture,
    signal: AbortSignal,
    onProgress?: (share: number) => void,
    shape = { width, height, samples },
  ) =>
    stillPicture(studio, sceneAt(picture), viewOfEye(picture, width / height, stand), {
      ...shape,
      exposure: settings.exposure,
      signal,
      ...(onProgress && { onProgress }),
    });
  return { pictures, trace };
}

/** Where in a loop a picture is traced to see how long all take: the work's pictures differ most. */
const PROBED: Readonly<Record<Loop, readonly number[]>> = {
  turn: [0],
  walk: [0],
  work: [1 / 6, 1 / 2, 5 / 6],
};
/** Longer than that no picture is looked at. */
const PROBE_MS = 1200;
/** Small, and with all passes: what it takes is to compile. */
const WARMING = { width: 16, height: 16, samples: 8 } as const;

/**
 * How long the pictures of a film take on this device as busy as it is now, milliseconds, by tracing a part of some; what is compiled
 * once is not counted.
 * @throws as `makeFilm`
 */
export async function probeFilm(
  studio: Studio,
  plan: Plan,
  wish: FilmWish,
  signal: AbortSignal,
): Promise<number> {
  await untilReady(studio, signal);
  const { pictures, trace } = tracingOf(studio, plan, wish);
  let sum = 0;
  for (const at of PROBED[wish.loop]) {
    const picture = pictures[Math.floor(at * pictures.length)];
    await trace(picture, signal, undefined, WARMING);
    const enough = new AbortController();
    const end = () => enough.abort(signal.reason);
    signal.addEventListener("abort", end, { once: true });
    const begun = performance.now();
    let ms = 0;
    await trace(picture, enough.signal, (share) => {
      const spent = performance.now() - begun;
      if (share > 0) ms = spent / share;
      if (share > 0 && spent > PROBE_MS) enough.abort();
    }).catch((error: unknown) => {
      // enough was seen of it
      if (signal.aborted || ms === 0) throw error;
    });
    signal.removeEventListener("abort", end);
    sum += ms;
  }
  return (sum / PROBED[wish.loop].length) * new Set(pictures.map(keyOf)).size;
}

/** What a picture shows: the same for those that come again, as walking back shows what walking past did. */
const keyOf = ({ turnDeg, cut }: LoopPicture): string => `${turnDeg.toFixed(6)} ${cut}`;

/** Remembers pictures that come again in a loop. */
function remembering(pictures: readonly LoopPicture[], bytesEach: number) {
  const left = new Map<string, number>();
  for (const picture of pictures) left.set(keyOf(picture), (left.get(keyOf(picture)) ?? 0) + 1);
  const kept = new Map<string, ImageData>();
  return async (picture: LoopPicture, trace: () => Promise<ImageData>): Promise<ImageData> => {
    const key = keyOf(picture);
    const traced = kept.get(key) ?? (await trace());
    const again = (left.get(key) ?? 1) - 1;
    left.set(key, again);
    if (again === 0) kept.delete(key);
    else if ((kept.size + 1) * bytesEach <= MOST_KEPT) kept.set(key, traced);
    return traced;
  };
}

/**
 * @param onPicture called after each with how many are done, and what it shows
 * @param onShare called with the share done, 0 .. 1, within a picture too
 * @throws the signal's reason; what tracer or encoder throw
 */
export async function makeFilm(
  studio: Studio,
  plan: Plan,
  wish: FilmWish,
  signal: AbortSignal,
  onPicture: (done: number, of: number, picture: OffscreenCanvas) => void,
  onShare?: (share: number) => void,
): Promise<Film> {
  await untilReady(studio, signal);
  const { width, height, rate = RATE } = wish;
  const { pictures, trace } = tracingOf(studio, plan, wish);
  const once = remembering(pictures, width * height * BYTES_PER_PIXEL);
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("the browser has no canvas of this size");
  const ground = groundColor();
  const maker = await filmMaker({ width, height, rate });
  try {
    for (const [k, picture] of pictures.entries()) {
      const traced = await once(picture, () =>
        trace(picture, signal, (share) => onShare?.((k + share) / pictures.length)),
      );
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
