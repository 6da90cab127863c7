/** A picture to be saved: what it shows, on what it lies, and how it is traced. */
import type { Plan } from "../../core/plan/document.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../render/pack-scene.ts";
import type { Orbit } from "../piece/camera.ts";
import type { Studio } from "../studio.ts";
import { type Crop, onPaper, onTableOf, placed, sizeOf } from "./crops.ts";
import { behindOf, besideLook, sceneOf } from "./look-scene.ts";
import { type LookSettings, lookedAt, lookOf } from "./look-settings.ts";
import { downOf } from "./lying.ts";
import { stillPicture, throughLens, viewOf } from "./traced.ts";

export const SAMPLES = { draft: 64, good: 256, best: 1024 } as const;
export type Quality = keyof typeof SAMPLES;

/** Which of two that are compared. */
export type Side = "left" | "right";

/** What a picture is to show: the one that is looked at, or the one beside it, which lies as that one does. */
function pictured(plan: Plan, look: LookSettings, side: Side) {
  const { own, other, against } = look;
  const left = lookedAt(plan, look);
  const down = downOf(left, look.rest);
  if (side === "left" || against !== "other")
    return { plan: left, name: (left !== plan && own?.name) || left.name, settings: look, down };
  const right = other?.plan ?? plan;
  return { plan: right, name: other?.name ?? plan.name, settings: besideLook(look, look.otherLook), down };
}

export interface Asked {
  readonly side: Side;
  readonly crop: Crop;
  /** Pixels, along the longer side. */
  readonly size: number;
  readonly quality: Quality;
  /** On white paper, whatever Look shows. */
  readonly isLaidDown: boolean;
  readonly isTransparent: boolean;
}

/**
 * Traces what is asked for.
 * @param seen from where Look shows it
 * @param page linear red, green and blue behind the piece
 * @returns the picture, with the plan it shows, what that is called and how it is looked at
 * @throws as `stillPicture`
 */
export async function traceAsked(
  studio: Studio,
  plan: Plan,
  { side, crop, size, quality, isLaidDown, isTransparent }: Asked,
  seen: Orbit,
  page: readonly [number, number, number],
  signal: AbortSignal,
  onProgress: (share: number) => void,
) {
  const across = sizeOf(crop, size);
  const { plan: shown, name: called, ...asShown } = pictured(plan, lookOf(studio).getState(), side);
  const settings = isLaidDown ? onPaper(shown, asShown.settings) : asShown.settings;
  const down = settings === asShown.settings ? asShown.down : downOf(shown, settings.rest);
  // Cut out, its shadow on the table stays.
  const packed = packScene(sceneOf(shown, settings, down), {
    ...DEFAULT_OPTIONS,
    hasDispersion: settings.hasDispersion,
    maxMeetings: STILL_MEETINGS,
    behind: isTransparent ? "nothing" : behindOf(settings),
  });
  const options = {
    ...across,
    samples: SAMPLES[quality],
    exposure: settings.exposure,
    ...(!isTransparent && { page }),
    signal,
    onProgress,
  };
  const from = placed(settings === asShown.settings ? seen : onTableOf(shown, settings, seen), crop);
  const focus = { fNumber: settings.fNumber, radiusMm: shown.piece.diameterMm / 2 };
  const view = throughLens(viewOf(from, across.width / across.height), from, focus);
  const picture = await stillPicture(studio, packed, view, options);
  return { picture, shown, called, settings };
}
