/** The words of the plan that the page opens on: it is on the bench before anything can be waited for. English ones stand in it. */
import type { Plan } from "../../core/plan/document.ts";
import { firstExample as de } from "../../words/de/first-example.ts";
import type { Language } from "../../words/language.ts";

/** Words by what stands in an example. */
export type ExampleWords = Readonly<Record<string, string>>;

export const firstExampleWords: Readonly<Record<Language, ExampleWords>> = { en: {}, de };

/** An example with its names and notes in the words of one language. */
export function exampleIn(plan: Plan, words: ExampleWords): Plan {
  const say = (text: string): string => (Object.hasOwn(words, text) ? words[text] : text);
  return {
    ...plan,
    name: say(plan.name),
    ...(plan.notes === undefined ? {} : { notes: say(plan.notes) }),
    tiers: plan.tiers.map((tier) => ({ ...tier, name: say(tier.name) })),
  };
}
