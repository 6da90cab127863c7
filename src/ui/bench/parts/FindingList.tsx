/** What stands against the work or is good to know, in words. */
import type { Finding } from "../../../core/plan/solved.ts";
import { benchWords } from "../../messages/bench.ts";
import { benchFindingInWords, benchFindingWords } from "../../messages/bench-findings.ts";
import { findingWords } from "../../messages/findings.ts";
import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";

export function FindingList({ findings }: { findings: readonly Finding[] }) {
  const { toll } = useWords(planWords);
  const { measures } = useWords(benchWords).asCut;
  const words = { bench: useWords(benchFindingWords), plan: useWords(findingWords), measures };
  const format = useFormat();
  const plan = usePlan();
  if (findings.length === 0) return null;
  const tolls = { stop: toll.stops, warn: toll.looks, info: toll.knows };
  return (
    <ul className="findings">
      {findings.map((finding) => (
        <li
          key={`${finding.code} ${finding.tier ?? ""} ${finding.text}`}
          className="finding"
          data-severity={finding.severity}
        >
          <b className="finding-toll">{tolls[finding.severity]}.</b>{" "}
          {benchFindingInWords(finding, words, format, plan)}
        </li>
      ))}
    </ul>
  );
}
