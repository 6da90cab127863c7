/** Mends in words: what one changes, and what comes of it. */
import type { Doubt, MendCost } from "../core/check/mend-cost.ts";
import type { Mend, MendChange } from "../core/check/mends.ts";
import type { DepthRule, Plan } from "../core/plan/document.ts";
import { causes as causesDe, mended as mendedDe } from "./de/findings.ts";
import { mends as de } from "./de/mends.ts";
import { causes as causesEn, mended as mendedEn } from "./en/findings.ts";
import { mends as en } from "./en/mends.ts";
import type { CauseWords, MendedWords } from "./findings.ts";
import type { Language } from "./language.ts";
import type { Say } from "./say.ts";

type To = MendChange["to"];
type ChangeOf<T extends To> = Extract<MendChange, { readonly to: T }>;

export interface MendWords {
  readonly change: { readonly [T in To]: (change: ChangeOf<T>, say: Say) => string };
  readonly mend: (change: string, effect: string) => string;
  /** What it costs, one thing after another. */
  readonly depth: (depth: NonNullable<MendCost["depth"]>, say: Say) => string;
  readonly noDepth: string;
  readonly glassGoes: (share: string) => string;
  readonly glassStays: (share: string) => string;
  readonly noGlass: string;
  readonly narrowest: (length: string) => string;
  readonly changesToo: (tiers: string) => string;
  /** What speaks against it, a sentence each. */
  readonly doubts: { readonly [D in Doubt]: D extends "brings" ? (causes: string) => string : string };
}

const WORDS: Readonly<Record<Language, MendWords>> = { en, de };
const MENDED: Readonly<Record<Language, MendedWords>> = { en: mendedEn, de: mendedDe };

const CAUSES: Readonly<Record<Language, CauseWords>> = { en: causesEn, de: causesDe };

function changeInWords(change: MendChange, { change: words }: MendWords, say: Say): string {
  switch (change.to) {
    case "angle":
      return words.angle(change, say);
    case "depth":
      return words.depth(change, say);
    case "rule":
      return words.rule(change, say);
    case "count":
      return words.count(change, say);
    case "start":
      return words.start(change, say);
    case "remove":
      return words.remove(change, say);
    case "dop":
      return words.dop(change, say);
    case "wheel":
      return words.wheel(change, say);
  }
}

/** What is gained when a rule that could not be met can be: what such a rule is for. */
const GAINED: Readonly<Partial<Record<DepthRule["rule"], keyof MendedWords>>> = {
  close: "skin-between",
  corners: "near-miss",
};

function effectInWords({ code, change }: Mend, plan: Plan, words: MendedWords): string {
  if (code !== "rule-unmet") return words[code];
  const tier = plan.tiers.find(({ id }) => "tierId" in change && id === change.tierId);
  const rule = change.to === "rule" ? change.depth.rule : tier?.depth.rule;
  return words[(rule && GAINED[rule]) ?? code];
}

/** "Raise Shoulder to 41.5°: the band closes" */
export function mendInWords(mend: Mend, plan: Plan, say: Say): string {
  const words = WORDS[say.language];
  const change = changeInWords(mend.change, words, say);
  return words.mend(change, effectInWords(mend, plan, MENDED[say.language]));
}

/** "Raise Shoulder to 41.5°": the deed alone, as undo calls it. */
export const deedInWords = ({ change }: Mend, say: Say): string =>
  changeInWords(change, WORDS[say.language], say);

/** Less of the glass than this is nothing to a scale, and to a hand. */
const NO_GLASS = 0.0005;
/** Tiers named one by one; beyond, nearly all change. */
const TIERS_NAMED = 4;

function glassInWords(share: number, words: MendWords, say: Say): string {
  if (Math.abs(share) < NO_GLASS) return words.noGlass;
  const percent = 100 * Math.abs(share);
  const said = `${say.number(percent, percent < 10 ? 1 : 0)}\u00a0%`;
  return share > 0 ? words.glassGoes(said) : words.glassStays(said);
}

/** What it costs, one thing after another: "Crown 1.20 mm deeper", "4.1 % of the glass goes", "narrowest facet 1.9 mm". */
export function costInWords({ change, cost }: Mend, say: Say): string[] {
  const words = WORDS[say.language];
  const { depth, massShare, leastFacetMm, tiers } = cost;
  const own = "tierId" in change ? change.tierId : null;
  const others = tiers.filter((id) => id !== own && id !== depth?.tierId).map(say.tier);
  const named = [...others.slice(0, TIERS_NAMED), ...(others.length > TIERS_NAMED ? ["\u2026"] : [])];
  return [
    depth === null ? words.noDepth : words.depth(depth, say),
    glassInWords(massShare, words, say),
    ...(leastFacetMm.to === null ? [] : [words.narrowest(say.length(leastFacetMm.to))]),
    ...(others.length === 0 ? [] : [words.changesToo(named.join(", "))]),
  ];
}

/** What speaks against it, a sentence each; other findings that it starts are named. */
export function doubtsInWords({ doubts, brings }: Mend, plan: Plan, say: Say): string[] {
  const words = WORDS[say.language].doubts;
  const causeOf = CAUSES[say.language];
  const causes = brings.map(({ code, tier }) =>
    causeOf[code](tier === undefined ? plan.name : say.tier(tier)),
  );
  return doubts.map((doubt) =>
    doubt === "brings" ? words.brings([...new Set(causes)].join("; ")) : words[doubt],
  );
}
