import type { Plan } from "../../core/plan/document.ts";
import { examples as de } from "../../words/de/examples.ts";
import { examples as en } from "../../words/en/examples.ts";
import { dictionary, type Translated } from "../../words/language.ts";

/** Both at once, unlike other words of the opening: the first plan is on the bench before anything can be waited for. */
export const exampleWords = dictionary(en, de);

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
