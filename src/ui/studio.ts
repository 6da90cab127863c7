/** The one store of the running app. Tests of components make their own with `createPlanStore`. */
import { depthOf, solid } from "../state/derived.ts";
import { loadPreferences, savePreferences } from "../state/preferences.ts";
import { createPlanStore, type Place } from "../state/store.ts";
import { type Language, languageOf } from "../words/language.ts";
import { FIRST_EXAMPLE } from "./first-example.ts";
import { exampleIn, firstExampleWords } from "./messages/first-example.ts";
import { spoken } from "./messages/german.ts";
import { hasMany } from "./settling.ts";

/** Null where the browser refuses storage altogether (some private modes throw on access). */
function shelfOf(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null; // preferences then last as long as the page
  }
}

const shelf = shelfOf();

const preferences = loadPreferences(shelf);

/** A page loaded anew comes back to the place it was left at. */
const placeBefore = (): Place | undefined =>
  (globalThis.history?.state as { spot?: { place: Place } } | null)?.spot?.place;

export const studio = createPlanStore({
  place: placeBefore(),
  plan: exampleIn(
    FIRST_EXAMPLE,
    firstExampleWords[preferences.language ?? languageOf(globalThis.navigator?.languages ?? [])],
  ),
  depthOf,
  // an edit of many facets is reckoned in a worker (`settled.ts`)
  reckon: (plan, isEdit) => (isEdit && hasMany(plan) ? null : solid(plan)),
  preferences,
});

/** The language of the screen, for what is said outside of React. */
export const languageNow = (): Language =>
  spoken(studio.getState().preferences.language ?? languageOf(navigator.languages));

studio.subscribe((now, before) => {
  if (now.preferences !== before.preferences) savePreferences(shelf, now.preferences);
});
