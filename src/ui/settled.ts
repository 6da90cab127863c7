/** The settled plan of the running app: see `settling.ts`. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Report } from "../core/check/report.ts";
import type { Plan } from "../core/plan/document.ts";
import { createSettling, type Settling } from "./settling.ts";
import { studio } from "./studio.ts";

const askWorker = async (plan: Plan): Promise<Report> =>
  (await import("./plan/mends/plan-worker-client.ts")).askReport(plan);

const settling = createStore<Settling>(() => ({ plan: studio.getState().plan, isLate: false }));
const follow = createSettling(studio.getState(), askWorker, (next) => settling.setState(next));
studio.subscribe((now, before) => {
  if (now.plan !== before.plan || now.laid !== before.laid) follow(now);
});

export const useSettledPlan = (): Plan => useStore(settling, ({ plan }) => plan);
/** True while what is shown belongs to an earlier plan than the one on the bench. */
export const useIsLate = (): boolean => useStore(settling, ({ isLate }) => isLate);
