/** `solve PLAN.json ...`: the depth of every tier, and what stands in the way of a rule. */
import type { PlanFile } from "../../core/plan/file.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { printEach } from "../each-plan.ts";

function depthsOf({ plan }: PlanFile) {
  const { tiers, findings } = solvePlan(plan);
  return { tiers: tiers.map(({ tierId, depthMm, met }) => ({ tier: tierId, depthMm, met })), findings };
}

export const run = (planPaths: readonly string[]): Promise<void> => printEach(planPaths, depthsOf);
