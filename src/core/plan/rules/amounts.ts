/** What a depth rule says beside its name: its length, or the earlier tier that it names. Asked here and nowhere else. */
import type { DepthRule } from "../document.ts";

/** Millimetres; null for rules without a length. */
export const amountOf = (rule: DepthRule): number | null => ("mm" in rule ? rule.mm : null);

/** The field in which a rule names a tier, and the tier's id; null for rules that stand alone. */
export function referenceIn(rule: DepthRule): { readonly field: "to" | "of"; readonly id: string } | null {
  if ("to" in rule) return { field: "to", id: rule.to };
  if ("of" in rule) return { field: "of", id: rule.of };
  return null;
}

export const namedTierOf = (rule: DepthRule): string | null => referenceIn(rule)?.id ?? null;

/** Another length, by the same rule; the rule itself where it has none. */
export const withAmount = (rule: DepthRule, mm: number): DepthRule => ("mm" in rule ? { ...rule, mm } : rule);

/** Another tier, by the same rule; the rule itself where it names none. */
export function withNamed(rule: DepthRule, id: string): DepthRule {
  if ("to" in rule) return { ...rule, to: id };
  return "of" in rule ? { ...rule, of: id } : rule;
}

/** A rule that says what a tier meets, not how large its facets are: a dragged tier comes to rest by it. */
export type MeetRule = Exclude<DepthRule, { readonly mm: number }>;
export const isMeeting = (rule: DepthRule): rule is MeetRule => amountOf(rule) === null;

/** Whether two rules meet the same thing, or are measures of one kind. */
export const isSameRule = (a: DepthRule, b: DepthRule): boolean =>
  a.rule === b.rule && namedTierOf(a) === namedTierOf(b);
