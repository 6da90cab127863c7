/** A plan's findings in words, in the names, units and digits of whoever reads them. */
import type { PlanFinding, PlanFindingCode } from "../core/plan/finding.ts";
import type { Say } from "./say.ts";

/** One full sentence or two, under the name of its tier: "It ...". */
export type FindingWords = {
  readonly [C in PlanFindingCode]: (finding: PlanFinding<C>, say: Say) => string;
};

/** In a few words, with the name of its tier: what stands against the piece. */
export type CauseWords = Readonly<Record<PlanFindingCode, (tier: string) => string>>;
/** What is gained when it is mended. */
export type MendedWords = Readonly<Record<PlanFindingCode, string>>;

export const findingInWords = <C extends PlanFindingCode>(
  finding: PlanFinding<C>,
  words: FindingWords,
  say: Say,
): string => words[finding.code](finding, say);
