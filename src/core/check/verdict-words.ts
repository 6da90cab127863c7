/** The verdict in one line, in both languages: for screen, paper and lap alike. Lengths come in already formatted, with units. */
import type { Verdict } from "./verdict.ts";

export interface VerdictWords {
  readonly uncut: string;
  readonly meets: string;
  readonly alone: string;
  /** `tier` is the only one that takes part; null where there are several. */
  readonly apart: (tiers: number, tier: string | null, by: string) => string;
  readonly misses: (tiers: number, tier: string | null, by: string) => string;
  readonly stops: (cause: string) => string;
  readonly look: (cause: string) => string;
  /** In a few words, by the finding's code. */
  readonly causes: Readonly<Record<string, (tier: string) => string>>;
  readonly otherCause: (tier: string) => string;
}

const EN_COUNTS = ["", "One", "Two", "Three", "Four", "Five", "Six"];
const DE_COUNTS = ["", "Ein", "Zwei", "Drei", "Vier", "Fünf", "Sechs"];
const counted = (words: readonly string[], count: number): string => words[count] ?? String(count);

const en: VerdictWords = {
  uncut: "Nothing is cut yet",
  meets: "All facets meet",
  alone: "No facet has a neighbour to meet",
  apart: (tiers, tier, by) =>
    tier === null
      ? `${counted(EN_COUNTS, tiers)} tiers stay apart by up to ${by}`
      : `Facets of ${tier} stay apart by up to ${by}`,
  misses: (tiers, tier, by) =>
    tier === null
      ? `${counted(EN_COUNTS, tiers)} tiers miss their meets by up to ${by}`
      : `${tier} misses its meets by up to ${by}`,
  stops: (cause) => `Can't be ground: ${cause}`,
  look: (cause) => `Look at this: ${cause}`,
  causes: {
    "rule-unmet": (tier) => `${tier} can't do what it should`,
    vanished: () => "nothing is left of the piece",
    "under-dop": (tier) => `${tier} runs under the dop`,
    "inside-broken": (tier) => `${tier} breaks into the design inside`,
    "inside-thin": (tier) => `${tier} leaves little glass over the design inside`,
    uneven: (tier) => `${tier} doesn't divide the wheel`,
    duplicate: (tier) => `${tier} cuts the same flats again`,
    "near-duplicate": (tier) => `${tier} cuts the same flats again`,
    swallowed: (tier) => `${tier} doesn't reach the glass everywhere`,
    lost: (tier) => `facets of ${tier} are ground away again`,
    sliver: (tier) => `${tier} has slivers`,
  },
  otherCause: (tier) => `see ${tier}`,
};

const de: VerdictWords = {
  uncut: "Noch ist nichts geschliffen",
  meets: "Alle Facetten treffen sich",
  alone: "Keine Facette hat eine Nachbarin, die sie treffen könnte",
  apart: (tiers, tier, by) =>
    tier === null
      ? `${counted(DE_COUNTS, tiers)} Reihen bleiben bis zu ${by} auseinander`
      : `Facetten von ${tier} bleiben bis zu ${by} auseinander`,
  misses: (tiers, tier, by) =>
    tier === null
      ? `${counted(DE_COUNTS, tiers)} Reihen treffen sich nicht, bis zu ${by} daneben`
      : `${tier} trifft nicht, bis zu ${by} daneben`,
  stops: (cause) => `So nicht zu schleifen: ${cause}`,
  look: (cause) => `Bitte ansehen: ${cause}`,
  causes: {
    "rule-unmet": (tier) => `${tier} kann nicht, was verlangt ist`,
    vanished: () => "vom Stück bleibt nichts übrig",
    "under-dop": (tier) => `${tier} reicht unter den Kittstock`,
    "inside-broken": (tier) => `${tier} bricht in das Innere`,
    "inside-thin": (tier) => `${tier} lässt wenig Glas über dem Inneren`,
    uneven: (tier) => `${tier} geht auf diesem Rad nicht auf`,
    duplicate: (tier) => `${tier} schleift dieselben Flächen noch einmal`,
    "near-duplicate": (tier) => `${tier} schleift dieselben Flächen noch einmal`,
    swallowed: (tier) => `${tier} erreicht nicht überall Glas`,
    lost: (tier) => `Facetten von ${tier} werden wieder weggeschliffen`,
    sliver: (tier) => `${tier} hat Splitterflächen`,
  },
  otherCause: (tier) => `siehe ${tier}`,
};

export const verdictWords: Readonly<Record<"en" | "de", VerdictWords>> = { en, de };

/** @param nameOf the name by which the person knows a tier */
export function verdictInWords(
  { kind, tiers, byMm, code, tier }: Verdict,
  words: VerdictWords,
  nameOf: (tierId: string) => string,
  length: (mm: number) => string,
): string {
  switch (kind) {
    case "uncut":
    case "meets":
    case "alone":
      return words[kind];
    case "apart":
    case "misses":
      return words[kind](tiers.length, tiers.length === 1 ? nameOf(tiers[0]) : null, length(byMm ?? 0));
    case "stops":
    case "look": {
      const cause = (code !== null && words.causes[code]) || words.otherCause;
      return words[kind](cause(tier === null ? "" : nameOf(tier)));
    }
  }
}
