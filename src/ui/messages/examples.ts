import type { Plan } from "../../core/plan/document.ts";
import { examples as en } from "../../words/en/examples.ts";
import type { Translated } from "../../words/language.ts";
import { openingWords } from "./german.ts";

export const exampleWords = openingWords(en, (german) => german.examples);

/** An example with its names and notes in the words of one language. */
export function exampleIn(plan: Plan, words: Translated<typeof en>): Plan {
  const say = (text: string): string => (Object.hasOwn(words, text) ? words[text as keyof typeof en] : text);
  return {
    ...plan,
    name: say(plan.name),
    ...(plan.notes === undefined ? {} : { notes: say(plan.notes) }),
    tiers: plan.tiers.map((tier) => ({ ...tier, name: say(tier.name) })),
  };
}
