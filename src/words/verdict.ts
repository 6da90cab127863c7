/** The verdict in one line, in both languages: for screen, paper and lap alike. Lengths come in already formatted, with units. */
import type { Verdict } from "../core/check/verdict.ts";
import type { CauseWords } from "./findings.ts";

export interface VerdictWords {
  readonly uncut: string;
  readonly meets: string;
  readonly alone: string;
  /** `tier` is the only one that takes part; null where there are several. */
  readonly apart: (tiers: number, tier: string | null, by: string) => string;
  readonly misses: (tiers: number, tier: string | null, by: string) => string;
  readonly stops: (cause: string) => string;
  readonly look: (cause: string) => string;
  readonly causes: CauseWords;
}

/** @param nameOf the name by which the person knows a tier */
export function verdictInWords(
  verdict: Verdict,
  words: VerdictWords,
  nameOf: (tierId: string) => string,
  length: (mm: number) => string,
): string {
  const { kind, tiers, byMm, tier } = verdict;
  switch (kind) {
    case "uncut":
    case "meets":
    case "alone":
      return words[kind];
    case "apart":
    case "misses":
      return words[kind](tiers.length, tiers.length === 1 ? nameOf(tiers[0]) : null, length(byMm ?? 0));
    case "stops":
    case "look":
      return words[kind](words.causes[verdict.code](tier === null ? "" : nameOf(tier)));
  }
}
