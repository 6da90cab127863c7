/** Steps done of the work in hand: kept step by step in this browser, and as far as the facet in the plan, which goes with link and file. */
import { useMemo, useState } from "react";
import type { Plan } from "../../core/plan/document.ts";
import { useStudio } from "../use-studio.ts";
import { type LapStep, nextStep } from "./lap-steps.ts";
import { type Done, loadDone, saveDone, workName } from "./progress.ts";
import { browserShelf } from "./shelf.ts";
import { isSameWork, stepOfWork, workAt } from "./work-place.ts";

export interface Progress {
  /** The step to do now; the number of steps when all are done. */
  readonly at: number;
  /** False when the browser would not keep the last step. */
  readonly isKept: boolean;
  readonly goTo: (at: number) => void;
}

const doneBefore = (steps: readonly LapStep[], at: number): Done => steps.slice(0, at).map(({ key }) => key);

/** This browser's own steps as long as they agree with the plan, which may have come from elsewhere since. */
export function doneOf(steps: readonly LapStep[], kept: Done, work: Plan["work"]): Done {
  if (!work || isSameWork(workAt(steps, nextStep(steps, kept)), work)) return kept;
  const at = stepOfWork(steps, work);
  return at === null ? kept : doneBefore(steps, at);
}

export function useProgress(
  plan: Plan,
  way: Parameters<typeof workName>[1],
  steps: readonly LapStep[],
): Progress {
  const standAt = useStudio((state) => state.standAt);
  const work = workName(plan, way);
  const [own, setOwn] = useState(() => ({ work, done: loadDone(browserShelf(), work), isKept: true }));
  if (own.work !== work) setOwn({ work, done: loadDone(browserShelf(), work), isKept: true });
  const done = useMemo(() => doneOf(steps, own.done, plan.work), [steps, own.done, plan.work]);
  return {
    at: nextStep(steps, done),
    isKept: own.isKept,
    goTo: (at) => {
      const next = doneBefore(steps, at);
      setOwn({ work, done: next, isKept: saveDone(browserShelf(), work, next) });
      standAt(workAt(steps, at));
    },
  };
}
