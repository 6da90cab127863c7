/** `bench PLAN.json`: what the lap needs, as one JSON object. */
import { benchData, benchOf } from "../../core/bench/bench.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { readPlan } from "../read-plan.ts";

export async function run(planPath: string): Promise<void> {
  const { plan } = await readPlan(planPath);
  process.stdout.write(`${JSON.stringify(benchData(benchOf(solvePlan(plan))), null, 2)}\n`);
}
