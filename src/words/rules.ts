/** Depth rules in words: one record a rule and language. */
import type { DepthRule, RuleName, RuleOf } from "../core/plan/document.ts";
import { amountOf, namedTierOf } from "../core/plan/rules/amounts.ts";
import type { Say } from "./say.ts";

/** `what` is the rule's amount with its unit, or the name of the tier that it names; nothing where it has neither. */
interface AnyRule {
  /** As the end of the recipe's sentence, before what follows in `tail`. */
  readonly name: string;
  /** Slots: {name} the rule, {amount} and {other} fields. */
  readonly tail: string;
  /** After "it can't". */
  readonly wish: (what: string) => string;
  /** As a change of a tier. */
  readonly mend: (tier: string, what: string) => string;
}
interface Measured {
  /** What its number is called. */
  readonly amount: string;
}
interface Plain {
  /** What a dragged tier does where it comes to rest by the rule. */
  readonly snap: (other: string) => string;
}
export type RuleWords = {
  readonly [R in RuleName]: AnyRule & (RuleOf<R> extends { readonly mm: number } ? Measured : Plain);
};

/** What a rule asks for: its amount, or the tier that it names. */
export function askedOf(rule: DepthRule, say: Say): string {
  const [mm, named] = [amountOf(rule), namedTierOf(rule)];
  return mm !== null ? say.fine(mm) : named === null ? "" : say.tier(named);
}
