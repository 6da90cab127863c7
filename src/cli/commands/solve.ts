/** `solve PLAN.json`: the depth of every tier, and what stands in the way of a rule. */
import { solvePlan } from "../../core/plan/solve.ts";
import { printJson } from "../print-json.ts";
import { readPlan } from "../read-plan.ts";

export async function run(planPath: string): Promise<void> {
  const { tiers, findings } = solvePlan((await readPlan(planPath)).plan);
  printJson({
    tiers: tiers.map(({ tierId, depthMm, met }) => ({ tier: tierId, depthMm, met })),
    findings,
  });
}
