/**
 * German words of what shows first: a chunk of its own, which the page waits for before it shows anything where German is
 * spoken, and fetches when the language is changed to it. Without a page (tests, tools) they are always there.
 */
import { browserShelf, loadPreferences } from "../../state/preferences.ts";
import { type Dictionary, type Language, languageOf, type Translated } from "../../words/language.ts";

type Opening = typeof import("../../words/de/opening.ts");

const fetched = (): Promise<Opening> => import("../../words/de/opening.ts");

// In a page this must not be waited for here: the German words may share modules with the page's own chunk, which would then
// wait for itself.
let german: Opening | null = typeof window === "undefined" ? await fetched() : null;

/** Fetches the German words if they will be spoken; comes before anything is said. */
export async function fetchSpoken(): Promise<void> {
  const chosen = loadPreferences(browserShelf()).language;
  if ((chosen ?? languageOf(navigator.languages)) === "de") await fetchGerman();
}

/** Loads the translation (a locale's chunk); comes before the language is changed to German. */
export async function fetchGerman(): Promise<void> {
  german ??= await fetched();
}

/** The effective locale, with its fallback: what can be spoken of a language that is wanted: German only once its words are there. */
export const spoken = (wanted: Language): Language => (wanted === "de" && german === null ? "en" : wanted);

/** Pairs the English words of an area that shows first with their translation, wherever that is by now. */
export function openingWords<T>(en: T, deOf: (german: Opening) => Translated<T>): Dictionary<T> {
  return {
    en: en as Translated<T>,
    get de() {
      if (german === null) throw new Error("German is spoken before its words are there");
      return deOf(german);
    },
  };
}
