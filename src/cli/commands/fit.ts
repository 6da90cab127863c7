/** `fit PLAN.json`: what was really cut, the plan solved again, and its angles adjusted, for what is still to cut. */
import { adjusted, adjustedData } from "../../core/bench/adjusted.ts";
import { asCutData, fitAsCut } from "../../core/bench/as-cut.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";

export async function run([planPath]: readonly string[]): Promise<void> {
  const { plan } = await readPlan(planPath);
  const fit = fitAsCut(plan);
  await printJson({ ...asCutData(fit), adjusted: adjustedData(adjusted(plan, fit.resolved)) });
}
