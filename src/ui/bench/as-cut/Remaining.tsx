/** The tiers still to cut, solved again so that they meet what was cut: what changes, and the one press that takes it over. */
import type { AsCutAnswer } from "../../../core/bench/as-cut/as-cut.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { useSolved, useStudio } from "../../use-studio.ts";
import { tierName } from "../parts/names.ts";
import { isLocked, lockAll } from "./as-cut-plan.ts";

/** Depths are told to a hundredth; a smaller change is none. */
const SAME_MM = 0.005;

export function Remaining({ answer }: { answer: AsCutAnswer }) {
  const words = useWords(benchWords);
  const { length } = useFormat();
  const planned = useSolved();
  const { plan } = planned;
  const dispatch = useStudio((state) => state.dispatch);
  const cut = new Set(answer.tiers.map((fit) => fit.tier));
  const isDone = answer.tiers.every((fit) => {
    const tier = plan.tiers.find((one) => one.id === fit.tier);
    return tier !== undefined && isLocked(tier, fit);
  });
  /** Those that both know: each may be of a plan a moment older. */
  const toCut = plan.tiers.flatMap((tier, i) => {
    const after = answer.solved.tiers.find(({ tierId }) => tierId === tier.id);
    return cut.has(tier.id) || !after ? [] : [{ tier, i, before: planned.tiers[i].depthMm, after }];
  });
  return (
    <section className="bench-part" aria-labelledby="bench-remaining">
      <h2 id="bench-remaining">{words.asCut.remaining}</h2>
      {toCut.length === 0 ? <p>{words.asCut.allCut}</p> : null}
      <ul className="bench-lines">
        {toCut.map(({ tier, i, before, after: { depthMm: after, met: isMet } }) => {
          const name = tierName(plan, i, words);
          return (
            <li key={tier.id} data-tier={tier.id}>
              {!isMet && after === 0
                ? words.asCut.cant(name)
                : Math.abs(after - before) < SAME_MM
                  ? words.asCut.stays(name, length(before, 2))
                  : words.asCut.goes(name, length(before, 2), length(after, 2))}{" "}
              {isMet || after === 0 ? null : words.asCut.cantMeet}
            </li>
          );
        })}
      </ul>
      {isDone ? (
        <p className="soft">{words.asCut.allLocked}</p>
      ) : (
        <Button look="strong" onPress={() => dispatch(lockAll(answer))}>
          {words.asCut.lock}
        </Button>
      )}
    </section>
  );
}
