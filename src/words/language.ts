/** Which languages there are, and how the words of one are held against those of the other. */

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
export const dictionary = <T>(en: T, de: Translated<T>): Dictionary<T> => ({
  en: en as Translated<T>,
  de,
});

/** The language a browser asks for, English when it asks for none of ours. */
export function languageOf(preferred: readonly string[]): Language {
  for (const tag of preferred) {
    const found = LANGUAGES.find((language) => tag.toLowerCase().startsWith(language));
    if (found) return found;
  }
  return "en";
}

/** Forms of a word or a sentence by number; English and German know one and other. */
interface Forms {
  readonly one: string;
  readonly other: string;
}
const rules: Readonly<Record<Language, Intl.PluralRules>> = {
  en: new Intl.PluralRules("en"),
  de: new Intl.PluralRules("de"),
};

/** The form that goes with a number in a language (Unicode CLDR plural rules). */
export const pluralIn =
  (language: Language) =>
  (count: number, { one, other }: Forms): string =>
    rules[language].select(count) === "one" ? one : other;
