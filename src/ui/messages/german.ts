/**
 * German words of what shows first: a chunk of its own, waited for before anything shows where German is spoken, and fetched
 * when the language is changed to it. Without a page (tests, tools) they are always there.
 */
import { browserShelf, loadPreferences } from "../../state/preferences.ts";
import { type Dictionary, languageOf, type Translated } from "../../words/language.ts";

type Opening = typeof import("../../words/de/opening.ts");

const isSpoken = (): boolean =>
  typeof window === "undefined" ||
  (loadPreferences(browserShelf()).language ?? languageOf(navigator.languages)) === "de";

let german: Opening | null = isSpoken() ? await import("../../words/de/opening.ts") : null;

/** Comes before the language is changed to German. */
export async function fetchGerman(): Promise<void> {
  german ??= await import("../../words/de/opening.ts");
}

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
