/** Findings as the command line prints them: their data as it is, and beside it a `text` that stands by itself. */
import type { Finding } from "../core/bench/bench-finding.ts";
import type { Reason } from "../core/bench/rig/rig.ts";
import type { Plan } from "../core/plan/document.ts";
import { benchFindingInWords, benchFindingWords, isOfBench } from "./bench-findings.ts";
import { findings as planDe } from "./de/findings.ts";
import { unknownField as de } from "./de/unknown-field.ts";
import { findings as planEn } from "./en/findings.ts";
import { unknownField as en } from "./en/unknown-field.ts";
import { type FindingWords, findingInWords } from "./findings.ts";
import { makeFormats } from "./formats.ts";
import type { Language } from "./language.ts";
import { type Say, sayOf } from "./say.ts";

const PLAN_FINDINGS: Readonly<Record<Language, FindingWords>> = { en: planEn, de: planDe };
const UNKNOWN_FIELD: Readonly<Record<Language, (field: string) => string>> = { en, de };

/** Of a field that this version does not know. */
export const unknownFieldText = (field: string, language: Language): string => UNKNOWN_FIELD[language](field);

/** In millimetres and arm angles, whatever the reader's region. */
export const plainSay = (plan: Plan, language: Language): Say =>
  sayOf(plan, makeFormats(language, { unit: "mm", cuttingAngle: false }), language);

/** A finding of the plan or the bench in words, without its tier. */
function anyFindingInWords(finding: Finding, say: Say): string {
  const ofBench = benchFindingWords[say.language];
  return isOfBench(finding, ofBench)
    ? benchFindingInWords(finding, ofBench, say)
    : findingInWords(finding, PLAN_FINDINGS[say.language], say);
}

/** "Shoulder: It can't just touch: ..." */
export function findingText(finding: Finding, say: Say): string {
  const said = anyFindingInWords(finding, say);
  return finding.tier === undefined ? said : `${say.tier(finding.tier)}: ${said}`;
}

export const withTexts = <F extends Finding>(findings: readonly F[], say: Say): (F & { text: string })[] =>
  findings.map((finding) => ({ ...finding, text: findingText(finding, say) }));

/** Why the rig can't reach a tier, as the finding says it. */
export const reachText = ({ code, ...data }: Reason, say: Say): string =>
  benchFindingInWords({ code, severity: "stop", data }, benchFindingWords[say.language], say);
