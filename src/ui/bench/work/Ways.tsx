/** The two orders of work, told by what each costs. */

import { againDegOf, FINDING_STEPS } from "../../../core/bench/as-cut/found-again.ts";
import type { Bench } from "../../../core/bench/bench.ts";
import type { Way } from "../../../core/bench/order/diary.ts";
import type { Range } from "../../../core/plan/limits.ts";
import { Pick } from "../../controls/Pick.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useStudioStore } from "../../studio.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { benchScreenOf, useBenchScreen } from "../bench-screen.ts";
import { DegreeField } from "../parts/fields.tsx";
import { timeInWords } from "../parts/time.ts";
import { Minutes } from "./Minutes.tsx";

/** Beyond this an angle was not found again but set anew. */
const AGAIN_RANGE: Range = { min: 0, max: 10 };

/** How far off an angle comes back when it is found again: kept with the artist's own spread. */
function AgainOff() {
  const { ways: words } = useWords(benchWords);
  const { rig } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  return (
    <DegreeField
      label={words.againOff}
      value={againDegOf(rig)}
      range={AGAIN_RANGE}
      step={0.1}
      description={words.againOffHow}
      onChange={(againDeg) => dispatch({ type: "set-rig", change: { spread: { ...rig.spread, againDeg } } })}
    />
  );
}

export function Ways({ bench }: { bench: Bench }) {
  const studio = useStudioStore();
  const words = useWords(benchWords);
  const way = useBenchScreen((state) => state.way);
  const work = bench.order.find((one) => one.way === way);
  const other = bench.order.find((one) => one.way !== way);
  if (!work) return null;
  return (
    <section className="bench-part" aria-labelledby="bench-ways">
      <h2 id="bench-ways">{words.ways.title}</h2>
      <Pick<Way>
        label={words.ways.title}
        labelUnseen
        value={way}
        options={[
          { id: "finish-each", words: words.ways["finish-each"] },
          { id: "rough-all", words: words.ways["rough-all"] },
        ]}
        onChange={(chosen) => benchScreenOf(studio).setState({ way: chosen })}
      />
      <p className="bench-sentence">
        {words.ways.costs(work.discChanges, work.armSettings, timeInWords(work.minutes, words.time))}
        {work.turnOvers > 0 ? ` ${words.ways.turns(work.turnOvers)}` : ""}
      </p>
      <p className="soft">{way === "finish-each" ? words.ways.finishWhy : words.ways.roughWhy}</p>
      {work.minutesAreGuess ? <p className="soft">{words.ways.timeIsGuess}</p> : null}
      {other ? (
        <p className="soft">
          {words.ways.both(words.ways[other.way], other.discChanges, timeInWords(other.minutes, words.time))}
        </p>
      ) : null}
      {way === "rough-all" ? (
        <>
          <h3>{words.ways.again}</h3>
          <AgainOff />
          <ol className="bench-numbered">
            {FINDING_STEPS.map((step) => (
              <li key={step}>{words.findAgain[step]}</li>
            ))}
          </ol>
        </>
      ) : null}
      <Minutes />
    </section>
  );
}
