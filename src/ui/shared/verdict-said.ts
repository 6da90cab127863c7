/** The verdict on the plan on the bench in the person's words, and the way to its first cause. */
import { useMemo } from "react";
import { type Verdict, verdictOf } from "../../core/check/verdict.ts";
import { solved } from "../../state/derived.ts";
import { tierName } from "../../words/names.ts";
import { verdictInWords } from "../../words/verdict.ts";
import { planWords } from "../messages/plan.ts";
import { verdictWords } from "../messages/verdict.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useIsLate, useSettledPlan } from "../settled.ts";
import type { Studio } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { useReport } from "../use-studio.ts";

const isOf = (line: HTMLElement, { code, tier }: Verdict): boolean =>
  line.dataset.code === code && line.dataset.tier === (tier ?? undefined);

/** Picks the tier on Plan and brings its finding into sight. */
export function showCause(studio: Studio, cause: Verdict): void {
  const { go, select } = studio.getState();
  go("plan");
  select({ tierId: cause.tier });
  // Once the place and the picked tier's own parts are laid out.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const lines = [...document.querySelectorAll<HTMLElement>(".finding")];
      lines.find((line) => isOf(line, cause))?.scrollIntoView({ block: "nearest" });
    }),
  );
}

export function useVerdict(): { readonly verdict: Verdict; readonly said: string; readonly isLate: boolean } {
  const language = useLanguage();
  const isLate = useIsLate();
  const { late } = useWords(planWords);
  const format = useFormat();
  const plan = useSettledPlan();
  const report = useReport();
  const now = useMemo(() => verdictOf(solved(plan), report), [plan, report]);
  const nameOf = (id: string): string => tierName(plan, id, language);
  const said = verdictInWords(now, verdictWords[language], nameOf, (mm) => format.length(mm, mm < 1 ? 2 : 1));
  return { verdict: now, said: isLate ? late : said, isLate };
}
