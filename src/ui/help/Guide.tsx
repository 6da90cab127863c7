/** The way round: a quiet card at the foot of the page. It never blocks anything and never moves on by itself. */
import { useEffect, useState } from "react";
import { useView } from "../app/view.ts";
import { Button } from "../controls/Button.tsx";
import { helpWords } from "../messages/help.ts";
import { useWords } from "../messages/words.tsx";
import { studio } from "../studio.ts";
import { goToStep, leaveGuide, STEPS, type StepName, useGuide } from "./guide-state.ts";
import "./help.css";

/** Whether the person has done what a step asks, watched from when the step began. Steps that only tell have nothing to do. */
function useDone(step: StepName): boolean {
  const [done, setDone] = useState(false);
  useEffect(() => {
    setDone(false);
    return studio.subscribe((now, before) => {
      const isUndone = now.history.redo.length > before.history.redo.length;
      if (step === "change" && now.plan !== before.plan && !isUndone) setDone(true);
      if (step === "undo" && isUndone) setDone(true);
    });
  }, [step]);
  return done;
}

function Step({ at }: { at: number }) {
  const words = useWords(helpWords).guide;
  const name = STEPS[at];
  const done = useDone(name);
  const isLast = at === STEPS.length - 1;
  return (
    <>
      <p className="small">{words.place(at + 1, STEPS.length)}</p>
      <h2>{words.steps[name].title}</h2>
      <p>{words.steps[name].text}</p>
      {isLast ? <p className="soft">{words.end}</p> : null}
      <p role="status" className="guide-done">
        {done ? words.done : ""}
      </p>
      <div className="guide-presses">
        <Button onPress={leaveGuide}>{words.leave}</Button>
        <Button isDisabled={at === 0} onPress={() => goToStep(at - 1)}>
          {words.back}
        </Button>
        <Button look="strong" onPress={() => goToStep(at + 1)}>
          {isLast ? words.done : words.next}
        </Button>
      </div>
    </>
  );
}

/** The steps, while one is being taken; out of the way while a sheet lies over the bench. */
export default function Guide() {
  const words = useWords(helpWords).guide;
  const at = useGuide((state) => state.at);
  const isCovered = useView((state) => state.sheet !== null);
  if (typeof at !== "number" || isCovered) return null;
  return (
    <aside className="way-round" aria-label={words.title}>
      <Step at={at} />
    </aside>
  );
}
