/** What stands against the work or is good to know, in words. */
import type { Finding } from "../../../core/bench/bench-finding.ts";
import { benchFindingInWords, benchFindingWords, isOfBench } from "../../../words/bench-findings.ts";
import { findingInWords } from "../../../words/findings.ts";
import { findingWords } from "../../messages/findings.ts";
import { planWords } from "../../messages/plan.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { useSay } from "../../use-say.ts";

export function FindingList({ findings }: { findings: readonly Finding[] }) {
  const { toll } = useWords(planWords);
  const language = useLanguage();
  const [ofBench, ofPlan] = [benchFindingWords[language], findingWords[language]];
  const say = useSay();
  if (findings.length === 0) return null;
  const tolls = { stop: toll.stops, warn: toll.looks, info: toll.knows };
  return (
    <ul className="findings">
      {findings.map((finding) => (
        <li
          key={`${finding.code} ${finding.tier ?? ""} ${JSON.stringify(finding.data)}`}
          className="finding"
          data-severity={finding.severity}
        >
          <b className="finding-toll">{tolls[finding.severity]}.</b>{" "}
          {isOfBench(finding, ofBench)
            ? benchFindingInWords(finding, ofBench, say)
            : findingInWords(finding, ofPlan, say)}
        </li>
      ))}
    </ul>
  );
}
