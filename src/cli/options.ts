/** Options that several commands take. */
import { UsageError } from "./usage-error.ts";

export type Options = Readonly<Record<string, string | boolean | undefined>>;

/** One of a few words; the first when the option was not given.  @throws UsageError */
export function choice<T extends string>(options: Options, name: string, words: readonly T[]): T {
  const given = options[name] ?? words[0];
  const found = words.find((word) => word === given);
  if (found === undefined)
    throw new UsageError(({ refused, parsing }) =>
      refused.choice(name, words.join(` ${parsing.or} `), String(given)),
    );
  return found;
}
