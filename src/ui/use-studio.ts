/** How a component reads the plan, what follows from it, and acts on it. */
import { useStore } from "zustand";
import type { Report } from "../core/check/report.ts";
import { report, solid, solved } from "../state/derived.ts";
import type { PlanActions, PlanState } from "../state/store.ts";
import { foundIn, lossesOf, reportWith } from "./losses.ts";
import { useSettledPlan } from "./settled.ts";
import { useStudioStore } from "./studio.ts";

/** `pick` must give the same object for the same state (a field, not a fresh list). */
export const useStudio = <T>(pick: (state: PlanState & PlanActions) => T): T =>
  useStore(useStudioStore(), pick);

export const usePlan = () => useStudio((state) => state.plan);
/**
 * Each is computed once per plan object and shared by every picture. Of the settled plan, which may be an earlier one than `usePlan`
 * gives: beside them stands `useSolved().plan`, and a tier of the plan on the bench may not be among them yet.
 */
export const useSolved = () => solved(useSettledPlan());
export const useSolid = () => solid(useSettledPlan());
/** Of the last plan that was reported on: the one on the bench, unless that is late. */
export function useReport(): Report {
  const plan = useSettledPlan();
  return reportWith(report(plan), useStore(lossesOf(useStudioStore()), foundIn(plan)));
}
