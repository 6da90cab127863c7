/** Options that several commands take. */
import { LANGUAGES, type Language } from "../words/language.ts";
import { UsageError } from "./usage-error.ts";

export type Options = Readonly<Record<string, string | boolean | undefined>>;

/** One of a few words; the first when the option was not given.  @throws UsageError */
export function choice<T extends string>(options: Options, name: string, words: readonly T[]): T {
  const given = options[name] ?? words[0];
  const found = words.find((word) => word === given);
  if (found === undefined)
    throw new UsageError(`--${name} must be ${words.join(" or ")}, not "${String(given)}"`);
  return found;
}

/** The language of texts. */
export const languageIn = (options: Options): Language => choice(options, "lang", LANGUAGES);
