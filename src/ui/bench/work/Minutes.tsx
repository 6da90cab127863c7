/** The minutes that the parts of the work take: the usual ones, until the artist's own are put in. */
import { DEFAULT_HABITS, habitsOf } from "../../../core/bench/order/order.ts";
import type { Habits } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { PlainField } from "../parts/fields.tsx";

const TASKS = Object.keys(DEFAULT_HABITS) as (keyof Habits)[];

export function Minutes() {
  const { habits: words } = useWords(benchWords);
  const { rig } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const { number } = useFormat();
  const habits = habitsOf(rig);
  return (
    <details className="bench-fold">
      <summary>{words.title}</summary>
      <p className="soft">{rig.habits ? words.own : words.usual}</p>
      <div className="bench-fields">
        {TASKS.map((task) => (
          <PlainField
            key={task}
            label={words[task]}
            value={habits[task]}
            range={task === "strokeSeconds" ? RANGES.strokeSeconds : RANGES.taskMin}
            digits={1}
            step={habits[task] < 2 ? 0.1 : 1}
            description={words.usually(number(DEFAULT_HABITS[task], DEFAULT_HABITS[task] % 1 ? 1 : 0))}
            unit={task === "strokeSeconds" ? words.seconds : words.minutes}
            onChange={(value) =>
              dispatch({ type: "set-rig", change: { habits: { ...rig.habits, [task]: value } } })
            }
          />
        ))}
      </div>
      {rig.habits ? (
        <Button onPress={() => dispatch({ type: "set-rig", change: { habits: undefined } })}>
          {words.back}
        </Button>
      ) : null}
    </details>
  );
}
