/** The settled plan of a studio: see `settling.ts`. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Reckoned } from "../core/check/reckon.ts";
import type { Plan } from "../core/plan/document.ts";
import { report } from "../state/derived.ts";
import { createSettling, hasMany, learn, type Settling } from "./settling.ts";
import { perStudio, type Studio, useStudioStore } from "./studio.ts";

const askWorker = async (plan: Plan): Promise<Reckoned> =>
  (await import("./plan/mends/plan-worker-client.ts")).askReckoned(plan);

export const settlingOf = perStudio((studio) => {
  const settling = createStore<Settling>(() => ({ plan: studio.getState().plan, isLate: false }));
  const follow = createSettling(studio.getState(), {
    ask: askWorker,
    show: (next) => settling.setState(next),
    refuse: (_plan, before) => studio.getState().takeBack(before),
  });
  studio.subscribe((now, before) => {
    if (now.plan !== before.plan || now.laid !== before.laid) follow(now);
  });
  return settling;
});

/** The plan that is solved and cut. For what happens outside of React. */
export const settledPlan = (studio: Studio): Plan => settlingOf(studio).getState().plan;
export const useSettledPlan = (): Plan => useStore(settlingOf(useStudioStore()), ({ plan }) => plan);
/** True while what is shown belongs to an earlier plan than the one on the bench. */
export const useIsLate = (): boolean => useStore(settlingOf(useStudioStore()), ({ isLate }) => isLate);

/**
 * Reckons a plan of many facets before it is laid on the bench, off this thread. Never rejects: one that could not be is reckoned,
 * or refused, when it is laid.
 */
export async function prepare(plan: Plan): Promise<void> {
  if (!hasMany(plan) || report.isKnown(plan)) return;
  try {
    learn(plan, await askWorker(plan));
  } catch {
    // who lays it on the bench is told
  }
}
