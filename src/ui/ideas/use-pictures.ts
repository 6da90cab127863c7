/** Small traced pictures of ideas, one after the other on the card of the Look; drawings in lines until each is there. */
import { useEffect, useState } from "react";
import type { Plan } from "../../core/plan/document.ts";
import { DEFAULT_OPTIONS, packScene } from "../../render/pack-scene.ts";
import { thumbnailOf } from "../library/thumbnail.ts";
import { sceneOf } from "../look/look-scene.ts";
import { lookSettings } from "../look/look-settings.ts";
import { stillPicture, tracedPicture, useTracing, viewOf } from "../look/traced.ts";
import { urlOf } from "../look/WalkStrip.tsx";
import { LOOKS, type View } from "../piece/camera.ts";

/** From the front, leant a little so that the light plays. */
const LEANT: View = { ...LOOKS.front, elevationDeg: 74 };
const SIZE = 144;
/** Coarse first: all ideas get so many samples a pixel before any gets the next number. */
const PASSES = [4, 24] as const;
/** Pictures remembered: more than two walls. */
const MOST_KEPT = 60;

/** What an idea looks like as far as it is known: by its tiers, so that a picture serves as long as they stay. */
interface Picture {
  readonly url: string;
  readonly samples: number;
}

export const pictureKey = ({ piece, tiers }: Plan): string => JSON.stringify([piece, tiers]);

const kept = new Map<string, Picture>();

function keep(key: string, picture: Picture): void {
  kept.delete(key);
  kept.set(key, picture);
  for (const oldest of kept.keys()) {
    if (kept.size <= MOST_KEPT) return;
    kept.delete(oldest);
  }
}

async function traced(plan: Plan, samples: number, signal: AbortSignal): Promise<string> {
  const settings = lookSettings.getState();
  const packed = packScene(sceneOf(plan, settings), {
    ...DEFAULT_OPTIONS,
    hasDispersion: settings.hasDispersion,
  });
  const options = { width: SIZE, height: SIZE, samples, exposure: settings.exposure, signal };
  return urlOf(await stillPicture(packed, viewOf(LEANT, 1), options));
}

/** The pictures of these plans, in their order; better ones follow, unless tracing broke off. */
export function usePictures(plans: readonly Plan[]): { urls: readonly string[]; isBroken: boolean } {
  const [, setCount] = useState(0);
  const [isBroken, setBroken] = useState(false);
  const canTrace = useTracing()?.check.pass ?? false;
  useEffect(() => {
    tracedPicture();
  }, []);
  useEffect(() => {
    if (!canTrace) return;
    const stop = new AbortController();
    const work = async () => {
      for (const samples of PASSES) {
        for (const plan of plans) {
          const key = pictureKey(plan);
          if ((kept.get(key)?.samples ?? 0) >= samples) continue;
          keep(key, { url: await traced(plan, samples, stop.signal), samples });
          setCount((count) => count + 1);
        }
      }
    };
    // where the card is lost the drawings stay, and it is said
    work().then(
      () => setBroken(false),
      () => setBroken(!stop.signal.aborted),
    );
    return () => stop.abort();
  }, [plans, canTrace]);
  const urls = plans.map((plan) => {
    const key = pictureKey(plan);
    const found = kept.get(key);
    if (found) return found.url;
    const drawn = { url: thumbnailOf(plan), samples: 0 };
    keep(key, drawn);
    return drawn.url;
  });
  return { urls, isBroken };
}
