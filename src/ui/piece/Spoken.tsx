/** The piece told to who can't see it: right after what the page opens on. */
import { useMemo } from "react";
import { findingInWords } from "../../words/findings.ts";
import { findingWords } from "../messages/findings.ts";
import { planWords } from "../messages/plan.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useSettledPlan } from "../settled.ts";
import { useFormat } from "../use-format.ts";
import { useGlassName } from "../use-glass-name.ts";
import { useSay } from "../use-say.ts";
import { useReport } from "../use-studio.ts";
import { spokenSummary } from "./spoken.ts";

export default function Spoken({ id }: { id: string }) {
  const words = useWords(planWords);
  const inWords = findingWords[useLanguage()];
  const say = useSay();
  const format = useFormat();
  const plan = useSettledPlan();
  const report = useReport();
  const glass = useGlassName();
  const summary = useMemo(
    () =>
      spokenSummary(plan, report, glass, words, format, (finding) => findingInWords(finding, inWords, say)),
    [plan, report, glass, words, format, inWords, say],
  );
  return (
    <p className="unseen" id={id}>
      {summary} {words.pictureKeys}
    </p>
  );
}
