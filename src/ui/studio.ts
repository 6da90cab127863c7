/**
 * A studio (the application's store): the plan on the bench, its history, and what follows from them on the screens. A component takes the one that stands
 * around it (`studio-provider.tsx`), what happens outside of components is given it. The page's own is made at its start.
 */
import { createContext, useContext } from "react";
import { depthOf, solid } from "../state/derived.ts";
import { loadPreferences, savePreferences } from "../state/preferences.ts";
import { createPlanStore, type Place, type PlanStore, type StoreOptions } from "../state/store.ts";
import { type Language, languageOf } from "../words/language.ts";
import { FIRST_EXAMPLE } from "./first-example.ts";
import { exampleIn, firstExampleWords } from "./messages/first-example.ts";
import { spoken } from "./messages/german.ts";
import { hasMany } from "./settling.ts";

export type Studio = PlanStore;

export const createStudio = (options: Omit<StoreOptions, "depthOf" | "reckon">): Studio =>
  createPlanStore({
    ...options,
    depthOf,
    // an edit of many facets is reckoned in a worker (`settled.ts`)
    reckon: (plan, isEdit) => (isEdit && hasMany(plan) ? null : solid(plan)),
  });

export const StudioContext = createContext<Studio | null>(null);

/** The studio around a component, for what it does; what it shows it reads by `useStudio`. */
export function useStudioStore(): Studio {
  const studio = useContext(StudioContext);
  if (!studio) throw new Error("no StudioProvider stands around this component");
  return studio;
}

/**
 * Something that each studio has one of its own of, such as the diary of its work: made on first asking, gone with its studio.
 * A room keeps its state so (dependency injection, a scoped service), and not in a module singleton.
 */
export function perStudio<T>(make: (studio: Studio) => T): (studio: Studio) => T {
  const made = new WeakMap<Studio, { readonly own: T }>();
  return (studio) => {
    const known = made.get(studio) ?? { own: make(studio) };
    made.set(studio, known);
    return known.own;
  };
}

/** Null where the browser refuses storage altogether (some private modes throw on access). */
function shelfOf(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null; // preferences then last as long as the page
  }
}

/** A page loaded anew comes back to the place it was left at. */
const placeBefore = (): Place | undefined =>
  (globalThis.history?.state as { spot?: { place: Place } } | null)?.spot?.place;

/** The studio that a page opens with: an example on the bench, the preferences of this device, kept as they change. */
export function createPageStudio(): Studio {
  const shelf = shelfOf();
  const preferences = loadPreferences(shelf);
  const language = preferences.language ?? languageOf(navigator.languages);
  const studio = createStudio({
    place: placeBefore(),
    plan: exampleIn(FIRST_EXAMPLE, firstExampleWords[language]),
    preferences,
  });
  studio.subscribe((now, before) => {
    if (now.preferences !== before.preferences) savePreferences(shelf, now.preferences);
  });
  return studio;
}

/** The language of the screen, for what is said outside of React. */
export const languageNow = (studio: Studio): Language =>
  spoken(studio.getState().preferences.language ?? languageOf(navigator.languages));
