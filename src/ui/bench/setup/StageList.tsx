/** The abrasives, coarse to fine: each with its grain, the damage that it leaves and how thick its disc stands. */
import { leftBy } from "../../../core/bench/stages/stages.ts";
import type { Stage } from "../../../core/plan/document.ts";
import { COUNTS } from "../../../core/plan/limits.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { usePlan, useStudio } from "../../use-studio.ts";
import { useStages } from "../use-stages.ts";
import { StageItem } from "./StageItem.tsx";

/** The first of s1, s2, ... that no stage has. */
function freshStageId(stages: readonly Stage[]): string {
  const taken = new Set(stages.map((stage) => stage.id));
  let n = stages.length + 1;
  while (taken.has(`s${n}`)) n++;
  return `s${n}`;
}

const moved = (stages: readonly Stage[], from: number, to: number): readonly Stage[] => {
  const rest = stages.filter((_, i) => i !== from);
  return [...rest.slice(0, to), stages[from], ...rest.slice(to)];
};

/** Finest grain that a new stage is offered with: half of the last one. */
const offered = (stages: readonly Stage[], name: string): Stage => ({
  id: freshStageId(stages),
  name,
  grainUm: (stages.at(-1)?.grainUm ?? 180) / 2,
});

export function StageList() {
  const words = useWords(benchWords);
  const { rig } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const stages = useStages(rig);
  const set = (next: readonly Stage[]) => dispatch({ type: "set-rig", change: { stages: next } });
  return (
    <section className="bench-part" aria-labelledby="bench-stages">
      <h2 id="bench-stages">{words.stages.title}</h2>
      <p className="soft">{rig.stages ? words.stages.own : words.stages.usual}</p>
      <ol className="bench-stages">
        {stages.map((stage, i) => (
          <StageItem
            key={stage.id}
            stage={stage}
            place={i}
            isLast={i === stages.length - 1}
            leaves={leftBy(stages, i)}
            onChange={(next) => set(stages.with(i, next))}
            onMove={(to) => set(moved(stages, i, to))}
            onRemove={() => set(stages.filter((_, k) => k !== i))}
          />
        ))}
      </ol>
      <Button
        look="outlined"
        isDisabled={stages.length >= COUNTS.stages}
        onPress={() => set([...stages, offered(stages, words.stages.newName)])}
      >
        {words.stages.add}
      </Button>
      {rig.stages ? (
        <Button onPress={() => dispatch({ type: "set-rig", change: { stages: undefined } })}>
          {words.stages.back}
        </Button>
      ) : null}
      <p className="small soft">{words.stages.rule}</p>
    </section>
  );
}
