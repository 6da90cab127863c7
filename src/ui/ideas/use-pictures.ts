/**
 * Pictures of ideas: drawings in lines first, then traced ones, coarse before fine: all ideas have one before any gets the next.
 * One thing is made at a time and the page breathes in between, so that a wall which fills stays in hand.
 */
import { useEffect, useRef, useState } from "react";
import type { Plan } from "../../core/plan/document.ts";
import { thumbnailOf } from "../library/thumbnail.ts";
import { tracedPicture, untilReady, useTracing } from "../look/traced.ts";
import { LOOKS, type Orbit } from "../piece/camera.ts";
import { perStudio, useStudioStore } from "../studio.ts";
import { pictureKey } from "./picture-key.ts";
import { traceIdea } from "./tracing.ts";

/** From the front, leant a little so that the light plays. */
const LEANT: Orbit = { ...LOOKS.front, elevationDeg: 74 };
/** A drawing is no sample. */
const PASSES = [
  { size: 0, samples: 0 },
  { size: 96, samples: 3 },
  { size: 176, samples: 24 },
] as const;
type Pass = (typeof PASSES)[number];
/** Pictures remembered: more than two walls and what is held. */
const MOST_KEPT = 80;

/** The uncut ball, until there is a drawing. */
const BALL = `data:image/svg+xml;base64,${btoa(
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-50 -50 100 100"><circle r="44" fill="none" stroke="#a9b7b1"/></svg>',
)}`;

/** What an idea looks like as far as it is known: by its tiers, so that a picture serves as long as they stay. */
interface Picture {
  readonly url: string;
  readonly samples: number;
}
type Pictures = Map<string, Picture>;
/** Of each studio, whose light they show. */
const picturesOf = perStudio((): Pictures => new Map());

function keep(kept: Pictures, key: string, picture: Picture): void {
  kept.delete(key);
  kept.set(key, picture);
  for (const oldest of kept.keys()) {
    if (kept.size <= MOST_KEPT) return;
    kept.delete(oldest);
  }
}

/** The next plan and how it is to be shown; null while all are as fine as they get. */
function nextOf(kept: Pictures, plans: readonly Plan[], passes: readonly Pass[]) {
  // of what is more than can be remembered the first ones come first
  const shown = plans.slice(0, MOST_KEPT);
  for (const pass of passes)
    for (const plan of shown)
      if ((kept.get(pictureKey(plan))?.samples ?? -1) < pass.samples) return { plan, pass };
  return null;
}

const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/**
 * The pictures of these plans, in their order; better ones follow.
 * @param isSearching a card that is none, but the processor, then only gets what is coarse: the rest of it tries patterns
 */
export function usePictures(
  plans: readonly Plan[],
  isSearching: boolean,
): { urls: readonly string[]; isUntraced: boolean } {
  const studio = useStudioStore();
  const kept = picturesOf(studio);
  const [, setCount] = useState(0);
  const [isBroken, setBroken] = useState(false);
  const check = useTracing()?.check;
  const canTrace = check?.pass ?? false;
  const wanted = useRef({ plans, isSearching });
  const wake = useRef(() => {});
  useEffect(() => {
    tracedPicture(studio);
  }, [studio]);
  useEffect(() => {
    wanted.current = { plans, isSearching };
    wake.current();
  });
  useEffect(() => {
    const stop = new AbortController();
    const { signal } = stop;
    const next = () => {
      const isCoarse = wanted.current.isSearching && check?.code === "software";
      const isReady = canTrace && tracedPicture(studio).renderer.tracer !== null;
      return nextOf(
        kept,
        wanted.current.plans,
        isReady ? PASSES.slice(0, isCoarse ? 2 : 3) : PASSES.slice(0, 1),
      );
    };
    const make = async ({ plan, pass }: { plan: Plan; pass: Pass }) => {
      if (pass.samples === 0) return thumbnailOf(plan);
      try {
        return await traceIdea(studio, plan, { view: LEANT, ...pass }, signal);
      } catch {
        signal.throwIfAborted();
        setBroken(true);
        // a card that was taken away may come back; what it can't trace stays a drawing
        if (tracedPicture(studio).renderer.tracer) return thumbnailOf(plan);
        await untilReady(studio, signal);
        setBroken(false);
        return null;
      }
    };
    const work = async () => {
      for (;;) {
        const todo = next();
        if (todo === null)
          await new Promise<void>((resolve) => {
            wake.current = resolve;
          });
        else {
          const url = await make(todo);
          if (url !== null) keep(kept, pictureKey(todo.plan), { url, samples: todo.pass.samples });
          setCount((count) => count + 1);
          await breathe();
        }
        signal.throwIfAborted();
      }
    };
    setBroken(false);
    const giveUp = () => {
      if (!signal.aborted) setBroken(true);
    };
    work().catch(giveUp);
    if (canTrace) untilReady(studio, signal).then(() => wake.current(), giveUp);
    return () => {
      stop.abort();
      // a listener for each time that nothing was to be done would stay as long as the page
      wake.current();
    };
  }, [canTrace, check?.code, studio, kept]);
  const urls = plans.map((plan) => kept.get(pictureKey(plan))?.url ?? BALL);
  return { urls, isUntraced: isBroken || check?.pass === false };
}
