/**
 * Where the way round stands: offered on the first visit, taken step by step, left at any time, begun again from the help. It is
 * played on a plan of its own, on which each step turns out well; what lay on the bench comes back when it is over.
 */
import { create } from "zustand";
import { browserShelf } from "../../state/preferences.ts";
import { exampleIn } from "../messages/first-example.ts";
import { pageViewport } from "../piece/viewport.ts";
import { openSheet, showLarge } from "../shared/screen.ts";
import { languageNow, studio } from "../studio.ts";
import { layOnBench, visit } from "../visit.ts";

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

/** How what lay on the bench before is brought back; null where there is nothing to bring back. */
let bringBack: (() => Promise<unknown>) | null = null;

export const leaveGuide = (): void => {
  remember();
  useGuide.setState({ at: null });
  void bringBack?.();
  bringBack = null;
};

/** Begins at the first step, on the plan it is played on; where the bench can't be cleared, on what lies there. */
export async function beginGuide(): Promise<void> {
  remember();
  openSheet(null);
  showLarge("piece");
  studio.getState().go("plan");
  const { planId, plan } = studio.getState();
  const [{ GUIDE_EXAMPLE }, { exampleWords }] = await Promise.all([
    import("../examples.ts"),
    import("../messages/examples.ts"),
  ]);
  if ((await layOnBench(exampleIn(GUIDE_EXAMPLE, exampleWords[languageNow()]))) === null) {
    const { laid } = studio.getState();
    bringBack = async () => {
      // who has opened another plan meanwhile stays with it
      if (studio.getState().laid !== laid) return;
      const { session } = visit.getState();
      await (planId === null ? layOnBench(plan) : session?.openPlan(planId));
    };
  }
  pageViewport.eye.holdStill();
  useGuide.setState({ at: 0 });
}

/** Whether a step has something to do: nothing can be taken back where nothing was changed. */
const hasDeed = (step: number): boolean =>
  STEPS[step] !== "undo" || studio.getState().history.undo.length > 0;

/** Goes to a step, or past it where there is nothing to do. */
export function goToStep(step: number): void {
  const from = useGuide.getState().at;
  const by = typeof from === "number" && step < from ? -1 : 1;
  const next = hasDeed(step) ? step : step + by;
  if (next >= STEPS.length) {
    leaveGuide();
    return;
  }
  if (next < STEPS.indexOf("look")) studio.getState().go("plan");
  useGuide.setState({ at: Math.max(0, next) });
}
