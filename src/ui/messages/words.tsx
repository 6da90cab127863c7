/**
 * How the app speaks: which language, and a dictionary for one area of the screens.
 * An area pairs `en/<area>.ts` with `de/<area>.ts`; it travels in the chunk that uses it, so a lazy page brings its own words.
 */
import { createContext, type ReactNode, useContext } from "react";

export type Language = "en" | "de";
export const LANGUAGES: readonly Language[] = ["en", "de"];

/** The same tree with every literal widened, so that a translation must have every word and every parameter. */
export type Translated<T> = {
  readonly [K in keyof T]: T[K] extends string
    ? string
    : T[K] extends (...given: infer A) => string
      ? (...given: A) => string
      : Translated<T[K]>;
};

export type Dictionary<T> = Readonly<Record<Language, Translated<T>>>;

/** Pairs the English words of an area with their translation. */
export const dictionary = <T,>(en: T, de: Translated<T>): Dictionary<T> => ({
  en: en as Translated<T>,
  de,
});

const LanguageContext = createContext<Language>("en");

export function Speaking({ language, children }: { language: Language; children: ReactNode }) {
  return <LanguageContext value={language}>{children}</LanguageContext>;
}

export const useLanguage = (): Language => useContext(LanguageContext);

/** The words of one area in the language of the screen. */
export function useWords<T>(words: Dictionary<T>): Translated<T> {
  return words[useLanguage()];
}

/** The language a browser asks for, English when it asks for none of ours. */
export function languageOf(preferred: readonly string[]): Language {
  for (const tag of preferred) {
    const found = LANGUAGES.find((language) => tag.toLowerCase().startsWith(language));
    if (found) return found;
  }
  return "en";
}
