/** The bench's findings in words, in the names, units and digits of whoever reads them. */
import type { BenchFinding, BenchFindingCode } from "../core/bench/bench-finding.ts";
import { benchFindings as de } from "./de/bench-findings.ts";
import { benchFindings as en } from "./en/bench-findings.ts";
import type { Language } from "./language.ts";
import type { Say } from "./say.ts";

export type BenchFindingWords = {
  readonly [C in BenchFindingCode]: (finding: BenchFinding<C>, say: Say) => string;
};

export const benchFindingWords: Readonly<Record<Language, BenchFindingWords>> = { en, de };

export const benchFindingInWords = <C extends BenchFindingCode>(
  finding: BenchFinding<C>,
  words: BenchFindingWords,
  say: Say,
): string => words[finding.code](finding, say);

/** Whether a finding is the bench's own, and not one of the plan itself. */
export const isOfBench = (
  finding: { readonly code: string },
  words: BenchFindingWords,
): finding is BenchFinding => Object.hasOwn(words, finding.code);
