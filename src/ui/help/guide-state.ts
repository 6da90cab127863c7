/** Where the way round stands: offered on the first visit, taken step by step, left at any time, begun again from the help. */
import { create } from "zustand";
import { browserShelf } from "../../state/preferences.ts";
import { FIRST_EXAMPLE } from "../examples.ts";
import { studio } from "../studio.ts";
import { layOnBench } from "../visit.ts";

export type StepName = "turn" | "read" | "change" | "undo" | "look" | "bench";
export const STEPS: readonly StepName[] = ["turn", "read", "change", "undo", "look", "bench"];

const SEEN_KEY = "glintwright-guide-seen";

interface GuideState {
  /** `offered`: not yet answered; a number: the step one is at; null: not shown. */
  readonly at: "offered" | number | null;
}

function isSeen(): boolean {
  try {
    return browserShelf()?.getItem(SEEN_KEY) === "yes";
  } catch {
    return false; // a browser that refuses to remember offers it again
  }
}

export const useGuide = create<GuideState>(() => ({ at: isSeen() ? null : "offered" }));

function remember(): void {
  try {
    browserShelf()?.setItem(SEEN_KEY, "yes");
  } catch {
    return; // then it is offered again next time, which costs one press
  }
}

export const leaveGuide = (): void => {
  remember();
  useGuide.setState({ at: null });
};

/** Begins at the first step, on the example it speaks of when the bench holds no work of the person's own. */
export function beginGuide(): void {
  remember();
  studio.getState().go("plan");
  const { planId, plan } = studio.getState();
  if (planId === null && plan !== FIRST_EXAMPLE) void layOnBench(FIRST_EXAMPLE);
  useGuide.setState({ at: 0 });
}

export function goToStep(step: number): void {
  if (step >= STEPS.length) {
    leaveGuide();
    return;
  }
  const name = STEPS[Math.max(0, step)];
  studio.getState().go(name === "look" || name === "bench" ? name : "plan");
  useGuide.setState({ at: Math.max(0, step) });
}
