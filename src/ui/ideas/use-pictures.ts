/** Pictures of ideas: drawings in lines at once, traced ones coarse first, finer ones when all have a coarse one. */
import { useEffect, useRef, useState } from "react";
import type { Plan } from "../../core/plan/document.ts";
import { thumbnailOf } from "../library/thumbnail.ts";
import { tracedPicture, useTracing } from "../look/traced.ts";
import { LOOKS, type Orbit } from "../piece/camera.ts";
import { traceIdea } from "./tracing.ts";

/** From the front, leant a little so that the light plays. */
const LEANT: Orbit = { ...LOOKS.front, elevationDeg: 74 };
/** Coarse first: all ideas have one before any gets the next. */
const PASSES = [
  { size: 96, samples: 3 },
  { size: 176, samples: 24 },
] as const;
/** Pictures remembered: more than two walls. */
const MOST_KEPT = 60;
/** A wall that has changed is looked at again after this, ms. */
const NEXT_MS = 50;

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

/** The next plan to be traced and how; null while all are as fine as they get. */
function nextOf(plans: readonly Plan[]) {
  for (const pass of PASSES)
    for (const plan of plans)
      if ((kept.get(pictureKey(plan))?.samples ?? 0) < pass.samples) return { plan, pass };
  return null;
}

/** The pictures of these plans, in their order; better ones follow, unless tracing broke off. */
export function usePictures(plans: readonly Plan[]): { urls: readonly string[]; isBroken: boolean } {
  const [, setCount] = useState(0);
  const [isBroken, setBroken] = useState(false);
  const canTrace = useTracing()?.check.pass ?? false;
  const wanted = useRef(plans);
  wanted.current = plans;
  useEffect(() => {
    tracedPicture();
  }, []);
  useEffect(() => {
    if (!canTrace) return;
    const stop = new AbortController();
    const work = async () => {
      for (;;) {
        const next = nextOf(wanted.current);
        if (next === null) await new Promise((resolve) => setTimeout(resolve, NEXT_MS));
        else {
          const url = await traceIdea(next.plan, { view: LEANT, ...next.pass }, stop.signal);
          keep(pictureKey(next.plan), { url, samples: next.pass.samples });
          setCount((count) => count + 1);
        }
        stop.signal.throwIfAborted();
      }
    };
    setBroken(false);
    // where the card is lost the drawings stay, and it is said
    work().catch(() => setBroken(!stop.signal.aborted));
    return () => stop.abort();
  }, [canTrace]);
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
