/**
 * Where the way round stands: offered on the first visit, taken step by step, left at any time, begun again from the help. It is
 * played on a plan of its own, on which each step turns out well; what lay on the bench comes back when it is over.
 */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { browserShelf } from "../../state/preferences.ts";
import { exampleIn } from "../messages/first-example.ts";
import type { Viewport } from "../piece/viewport.ts";
import { openSheet, showLarge } from "../shared/screen.ts";
import { languageNow, perStudio, type Studio, useStudioStore } from "../studio.ts";
import { layOnBench, visitOf } from "../visit.ts";

export type StepName = "turn" | "read" | "change" | "undo" | "look" | "bench";
export const STEPS: readonly StepName[] = ["turn", "read", "change", "undo", "look", "bench"];

const SEEN_KEY = "glintwright-guide-seen";

interface GuideState {
  /** `offered`: not yet answered; a number: the step one is at; null: not shown. */
  readonly at: "offered" | number | null;
  /** How what lay on the bench before is brought back; null where there is nothing to bring back. */
  readonly bringBack: (() => Promise<unknown>) | null;
}

function isSeen(): boolean {
  try {
    return browserShelf()?.getItem(SEEN_KEY) === "yes";
  } catch {
    return false; // a browser that refuses to remember offers it again
  }
}

const guideOf = perStudio(() =>
  createStore<GuideState>(() => ({ at: isSeen() ? null : "offered", bringBack: null })),
);
export const useGuide = <T>(pick: (state: GuideState) => T): T => useStore(guideOf(useStudioStore()), pick);

function remember(): void {
  try {
    browserShelf()?.setItem(SEEN_KEY, "yes");
  } catch {
    return; // then it is offered again next time, which costs one press
  }
}

export function leaveGuide(studio: Studio): void {
  remember();
  const { bringBack } = guideOf(studio).getState();
  guideOf(studio).setState({ at: null, bringBack: null });
  void bringBack?.();
}

/** Begins at the first step, on the plan it is played on; where the bench can't be cleared, on what lies there. */
export async function beginGuide({ studio, eye }: Viewport): Promise<void> {
  remember();
  openSheet(studio, null);
  showLarge(studio, "piece");
  studio.getState().go("plan");
  // what was changed a moment ago has its place on the shelf by then, and comes back from there with its steps
  await visitOf(studio).getState().session?.autosave.flush();
  const { planId, plan } = studio.getState();
  const [{ GUIDE_EXAMPLE }, { exampleWords }] = await Promise.all([
    import("../examples.ts"),
    import("../messages/examples.ts"),
  ]);
  if ((await layOnBench(studio, exampleIn(GUIDE_EXAMPLE, exampleWords[languageNow(studio)]))) === null) {
    const { laid } = studio.getState();
    const bringBack = async () => {
      // who has opened another plan meanwhile stays with it
      if (studio.getState().laid !== laid) return;
      const { session } = visitOf(studio).getState();
      await (planId === null ? layOnBench(studio, plan) : session?.openPlan(planId));
      // another plan, seen where one began, and not all at once on the bench of the one before
      studio.getState().go("plan");
    };
    guideOf(studio).setState({ bringBack });
  }
  eye.holdStill();
  guideOf(studio).setState({ at: 0 });
}

/** Whether a step has something to do: nothing can be taken back where nothing was changed. */
const hasDeed = (studio: Studio, step: number): boolean =>
  STEPS[step] !== "undo" || studio.getState().history.undo.length > 0;

/** Goes to a step, or past it where there is nothing to do. */
export function goToStep(studio: Studio, step: number): void {
  const guide = guideOf(studio);
  const from = guide.getState().at;
  const by = typeof from === "number" && step < from ? -1 : 1;
  const next = hasDeed(studio, step) ? step : step + by;
  if (next >= STEPS.length) {
    leaveGuide(studio);
    return;
  }
  if (next < STEPS.indexOf("look")) studio.getState().go("plan");
  guide.setState({ at: Math.max(0, next) });
}
