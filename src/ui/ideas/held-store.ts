/** What is held and what was thrown away: kept on this device, and the same in all its windows. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { featuresOf } from "../../core/ideas/taste.ts";
import type { Plan } from "../../core/plan/document.ts";
import { perStudio, type Studio, useStudioStore } from "../studio.ts";
import { measureIdea } from "./find-ideas.ts";
import { pictureKey } from "./picture-key.ts";
import { learn } from "./taste-store.ts";
import { keepLine, onElsewhere, packPlans, readLine, unkept, unpackPlans } from "./wall-shelf.ts";

export interface Holding {
  readonly held: readonly Plan[];
  /** Keys of what was thrown away, the latest last: it doesn't come up again. */
  readonly thrown: readonly string[];
}
/** The oldest come up again. */
const MOST_THROWN = 200;

const has = (plans: readonly Plan[], plan: Plan): boolean =>
  plans.some((one) => pictureKey(one) === pictureKey(plan));
export const isHeld = ({ held }: Holding, plan: Plan): boolean => has(held, plan);

/** What a line holds, as far as it can be read. */
function holdingFrom(data: unknown): Holding {
  const { thrown } = (data ?? {}) as { readonly thrown?: unknown };
  return {
    held: unpackPlans(data).filter((plan) => plan !== null),
    thrown: Array.isArray(thrown) ? thrown.filter((key) => typeof key === "string") : [],
  };
}

function createHolding() {
  const store = createStore<Holding>(() => ({ held: [], thrown: [] }));
  /** What is done before the line was read, which may wait for pictures, comes on top of it. */
  let isRead = true;
  const change = (next: Partial<Holding>): void => {
    store.setState(next);
    if (!isRead) return;
    const { held, thrown } = store.getState();
    keepLine("held", { ...packPlans(held), thrown }, store);
  };
  const read = (): void => {
    isRead = false;
    const before = store.getState();
    readLine("held", (data) => {
      isRead = true;
      const kept = holdingFrom(data);
      const now = store.getState();
      if (now === before) store.setState(kept);
      else
        change({
          held: [...kept.held, ...now.held.filter((plan) => !has(kept.held, plan))],
          thrown: [...new Set([...kept.thrown, ...now.thrown])],
        });
    });
  };
  read();
  onElsewhere("held", store, read);
  // where the browser keeps nothing, leaving asks before what is held is gone
  globalThis.window?.addEventListener("beforeunload", (event) => {
    if (unkept.getState().lines.has("held") && store.getState().held.length > 0) event.preventDefault();
  });
  return { store, change };
}

const ownOf = perStudio(createHolding);
/** What a studio holds: the same in all that this device's windows show. */
export const holdingOf = (studio: Studio) => ownOf(studio).store;
export const useHolding = (): Holding => useStore(holdingOf(useStudioStore()));

/** What is learned takes rays; should they break off, nothing is learned, and nothing else depends on it. */
function learnFrom(studio: Studio, plan: Plan, isLiked: boolean): void {
  measureIdea(plan, new AbortController().signal).then(
    (measures) => learn(studio, { features: featuresOf(measures, plan.piece.diameterMm / 2), isLiked }),
    () => undefined,
  );
}

/** Pins an idea (a favourite). */
export function hold(studio: Studio, plan: Plan): void {
  const { store, change } = ownOf(studio);
  const { held } = store.getState();
  if (has(held, plan)) return;
  change({ held: [...held, plan] });
  learnFrom(studio, plan, true);
}

/** Unpins it. */
export function letGo(studio: Studio, plan: Plan): void {
  const { store, change } = ownOf(studio);
  const { held } = store.getState();
  change({ held: held.filter((one) => pictureKey(one) !== pictureKey(plan)) });
}

export function throwAway(studio: Studio, plan: Plan): void {
  const { store, change } = ownOf(studio);
  const { held, thrown } = store.getState();
  const key = pictureKey(plan);
  change({
    held: held.filter((one) => pictureKey(one) !== key),
    thrown: [...thrown.filter((one) => one !== key), key].slice(-MOST_THROWN),
  });
  learnFrom(studio, plan, false);
}

export const bringBack = (studio: Studio): void => ownOf(studio).change({ thrown: [] });
