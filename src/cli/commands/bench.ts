/** `bench PLAN.json`: what the lap needs, as one JSON object. */
import { benchData, benchOf } from "../../core/bench/bench.ts";
import { foundAgain } from "../../core/bench/found-again.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";

export async function run([planPath]: readonly string[]): Promise<void> {
  const { plan } = await readPlan(planPath);
  const solved = solvePlan(plan);
  const data = benchData(benchOf(solved), foundAgain(solved));
  await printJson(data);
}
