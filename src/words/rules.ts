/** Depth rules in words: one record a rule and language. */
import type { DepthRule } from "../core/plan/document.ts";
import { rules as de } from "./de/rules.ts";
import { rules as en } from "./en/rules.ts";
import type { Language } from "./language.ts";

type RuleName = DepthRule["rule"];

/** `what` is the rule's amount with its unit, or the name of the tier that it names; nothing where it has neither. */
interface RuleWord {
  /** As the end of the recipe's sentence, before what follows in `tail`. */
  readonly name: string;
  /** What its number is called; null for rules without one. */
  readonly amount: string | null;
  /** Slots: {name} the rule, {amount} and {other} fields. */
  readonly tail: string;
  /** After "it can't". */
  readonly wish: (what: string) => string;
}
export type RuleWords = { readonly [R in RuleName]: RuleWord };

export const ruleWords: Readonly<Record<Language, RuleWords>> = { en, de };
