/** `fit PLAN.json`: what was really cut, and the plan solved again for what is still to cut. */
import { asCutData, fitAsCut } from "../../core/bench/as-cut.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";

export async function run([planPath]: readonly string[]): Promise<void> {
  const { plan } = await readPlan(planPath);
  await printJson(asCutData(fitAsCut(plan)));
}
