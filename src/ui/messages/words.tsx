/**
 * How the screens speak: which language, and the words of one area in it.
 * An area pairs `en/<area>.ts` with `de/<area>.ts`; it travels in the chunk that uses it, so a lazy page brings its own words.
 */
import { createContext, type ReactNode, useContext } from "react";
import type { Dictionary, Language, Translated } from "../../words/language.ts";

const LanguageContext = createContext<Language>("en");

export function Speaking({ language, children }: { language: Language; children: ReactNode }) {
  return <LanguageContext value={language}>{children}</LanguageContext>;
}

export const useLanguage = (): Language => useContext(LanguageContext);

/** The words of one area in the language of the screen. */
export function useWords<T>(words: Dictionary<T>): Translated<T> {
  return words[useLanguage()];
}
