/** Mends in words: what one changes, and what comes of it. */
import type { Mend, MendChange } from "../core/check/mends.ts";
import type { DepthRule, Plan } from "../core/plan/document.ts";
import { mended as mendedDe } from "./de/findings.ts";
import { mends as de } from "./de/mends.ts";
import { mended as mendedEn } from "./en/findings.ts";
import { mends as en } from "./en/mends.ts";
import type { MendedWords } from "./findings.ts";
import type { Language } from "./language.ts";
import type { Say } from "./say.ts";

type To = MendChange["to"];
type ChangeOf<T extends To> = Extract<MendChange, { readonly to: T }>;

export interface MendWords {
  readonly change: { readonly [T in To]: (change: ChangeOf<T>, say: Say) => string };
  readonly mend: (change: string, effect: string) => string;
  /** So many other things then want a look. */
  readonly brings: (mend: string, count: number) => string;
}

const WORDS: Readonly<Record<Language, MendWords>> = { en, de };
const MENDED: Readonly<Record<Language, MendedWords>> = { en: mendedEn, de: mendedDe };

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
  const said = words.mend(change, effectInWords(mend, plan, MENDED[say.language]));
  return mend.brings.length === 0 ? said : words.brings(said, mend.brings.length);
}
