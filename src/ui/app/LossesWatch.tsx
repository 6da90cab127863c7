/** Asks what the wheel and the last edit cost, once a plan has stood for a moment. Shows nothing. */
import { useEffect } from "react";
import { planBeforeEdit } from "../../state/before-edit.ts";
import { samePiece } from "../../state/derived.ts";
import { lossesOf } from "../losses.ts";
import { askLosses } from "../plan/mends/plan-worker-client.ts";
import { useStudioStore } from "../studio.ts";
import { usePlan, useStudio } from "../use-studio.ts";

/** While a plan is being changed, answers would be out of date. */
const REST_MS = 250;

export default function LossesWatch() {
  const studio = useStudioStore();
  const plan = samePiece(usePlan());
  const isDragging = useStudio((state) => state.drag !== null);
  useEffect(() => {
    if (isDragging) return;
    let stop = () => {};
    const timer = setTimeout(() => {
      const before = planBeforeEdit(studio.getState());
      const asked = askLosses(plan, before, (findings) =>
        lossesOf(studio).setState({ of: plan, before, findings }),
      );
      stop = asked.stop;
      // where the worker broke off nothing is said to be lost: the report at once stands by itself
      asked.done.catch(() => undefined);
    }, REST_MS);
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [studio, plan, isDragging]);
  return null;
}
