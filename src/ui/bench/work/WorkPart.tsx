/** Work: what to do before the first cut, in which order, and then tier by tier what to set and when to stop. */
import type { Bench } from "../../../core/bench/bench.ts";
import { Toggle } from "../../controls/Toggle.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useStudioStore } from "../../studio.ts";
import { usePlan } from "../../use-studio.ts";
import { benchScreenOf, useBenchScreen } from "../bench-screen.ts";
import { FindingList } from "../parts/FindingList.tsx";
import { useFoundAgain } from "../use-bench.ts";
import { BeforeFirst } from "./BeforeFirst.tsx";
import { TierWork } from "./TierWork.tsx";
import { Ways } from "./Ways.tsx";

export function WorkPart({ bench }: { bench: Bench | null }) {
  const studio = useStudioStore();
  const words = useWords(benchWords);
  const plan = usePlan();
  const way = useBenchScreen((state) => state.way);
  const showGuesses = useBenchScreen((state) => state.showGuesses);
  const foundAgain = useFoundAgain(way === "rough-all");
  if (plan.tiers.length === 0) return <p className="bench-empty">{words.noTiers}</p>;
  if (!bench) return <p className="waiting">{words.counting}</p>;
  const work = bench.order.find((one) => one.way === way);
  const isUncalibrated = work?.minutesAreGuess ?? false;
  const costs = foundAgain.question === plan ? foundAgain.answer : null;
  return (
    <div className="bench-flow">
      <div className="bench-two">
        <Ways bench={bench} />
        <BeforeFirst />
      </div>
      <FindingList findings={bench.findings.filter((finding) => finding.tier === undefined)} />
      {isUncalibrated ? (
        <Toggle isOn={showGuesses} onChange={(on) => benchScreenOf(studio).setState({ showGuesses: on })}>
          {words.work.showGuesses}
        </Toggle>
      ) : null}
      <ol className="bench-tiers">
        {bench.tiers.map((tier, i) =>
          plan.tiers[i]?.id === tier.tier ? (
            <TierWork
              key={tier.tier}
              tier={tier}
              index={i}
              findings={bench.findings}
              found={costs?.[i] ?? null}
            />
          ) : null,
        )}
      </ol>
    </div>
  );
}
