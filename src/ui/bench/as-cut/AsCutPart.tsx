/** As cut: what was measured on each finished tier, what it says of angle and depth, and the rest solved again to meet it. */
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { usePlan } from "../../use-studio.ts";
import { useFit } from "../use-bench.ts";
import { ChipPart } from "./ChipPart.tsx";
import { Follow } from "./Follow.tsx";
import { Remaining } from "./Remaining.tsx";
import { TierAsCut } from "./TierAsCut.tsx";

export function AsCutPart() {
  const words = useWords(benchWords);
  const plan = usePlan();
  const fit = useFit();
  const answer = fit.question === plan ? fit.answer : null;
  if (plan.tiers.length === 0) return <p className="bench-empty">{words.noTiers}</p>;
  return (
    <div className="bench-flow">
      <p className="bench-sentence">{words.asCut.what}</p>
      <ol className="bench-tiers">
        {plan.tiers.map((tier, i) => (
          <TierAsCut
            key={tier.id}
            tier={tier}
            index={i}
            resolved={answer?.resolved ?? null}
            fit={answer?.tiers.find((one) => one.tier === tier.id) ?? null}
            findings={answer?.findings.filter((finding) => finding.tier === tier.id) ?? []}
          />
        ))}
      </ol>
      {fit.error && fit.question === plan ? <p role="alert">{words.asCut.failed}</p> : null}
      {answer ? <Follow answer={answer} /> : null}
      {answer ? <Remaining answer={answer} /> : null}
      <ChipPart />
    </div>
  );
}
