/** Why a depth rule can't be met, in words: a half-sentence after "it can't ..., because". */
import type { RuleUnmet, UnmetWhy } from "../core/plan/finding.ts";
import type { RuleWords } from "./rules.ts";
import type { Say } from "./say.ts";

export type ReasonWords = { readonly [W in UnmetWhy]: (unmet: RuleUnmet<W>, say: Say) => string };

/** What the rule asks, as it stands after "it can't". */
export const wishInWords = ({ rule, asked, other }: RuleUnmet, words: RuleWords, say: Say): string =>
  words[rule].wish(other !== null ? say.tier(other) : asked === null ? "" : say.length(asked));

export const reasonInWords = <W extends UnmetWhy>(
  unmet: RuleUnmet<W>,
  words: ReasonWords,
  say: Say,
): string => words[unmet.why](unmet, say);
