/** What is held and what was thrown away: kept on this device, and the same in all its windows. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { featuresOf } from "../../core/ideas/taste.ts";
import type { Plan } from "../../core/plan/document.ts";
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

export const holding = createStore<Holding>(() => ({ held: [], thrown: [] }));
export const useHolding = (): Holding => useStore(holding);

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

/** What is done before the line was read, which may wait for pictures, comes on top of it. */
let isRead = true;

function change(next: Partial<Holding>): void {
  holding.setState(next);
  if (!isRead) return;
  const { held, thrown } = holding.getState();
  keepLine("held", { ...packPlans(held), thrown });
}

function read(): void {
  isRead = false;
  const before = holding.getState();
  readLine("held", (data) => {
    isRead = true;
    const kept = holdingFrom(data);
    const now = holding.getState();
    if (now === before) holding.setState(kept);
    else
      change({
        held: [...kept.held, ...now.held.filter((plan) => !has(kept.held, plan))],
        thrown: [...new Set([...kept.thrown, ...now.thrown])],
      });
  });
}
read();
onElsewhere("held", read);
// where the browser keeps nothing, leaving asks before what is held is gone
globalThis.window?.addEventListener("beforeunload", (event) => {
  if (unkept.getState().lines.has("held") && holding.getState().held.length > 0) event.preventDefault();
});

/** What is learned takes rays; should they break off, nothing is learned, and nothing else depends on it. */
function learnFrom(plan: Plan, isLiked: boolean): void {
  measureIdea(plan, new AbortController().signal).then(
    (measures) => learn({ features: featuresOf(measures, plan.piece.diameterMm / 2), isLiked }),
    () => undefined,
  );
}

/** Pins an idea (a favourite). */
export function hold(plan: Plan): void {
  const { held } = holding.getState();
  if (has(held, plan)) return;
  change({ held: [...held, plan] });
  learnFrom(plan, true);
}

/** Unpins it. */
export function letGo(plan: Plan): void {
  const { held } = holding.getState();
  change({ held: held.filter((one) => pictureKey(one) !== pictureKey(plan)) });
}

export function throwAway(plan: Plan): void {
  const { held, thrown } = holding.getState();
  const key = pictureKey(plan);
  change({
    held: held.filter((one) => pictureKey(one) !== key),
    thrown: [...thrown.filter((one) => one !== key), key].slice(-MOST_THROWN),
  });
  learnFrom(plan, false);
}

export const bringBack = (): void => change({ thrown: [] });
