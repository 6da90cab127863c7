/** `fit PLAN.json`: what was really cut, the plan solved again, and its angles adjusted, for what is still to cut. */

import { adjusted, adjustedData } from "../../core/bench/as-cut/adjusted.ts";
import { asCutData, fitAsCut } from "../../core/bench/as-cut/as-cut.ts";
import { plainSay, withTexts } from "../../words/answers.ts";
import type { Language } from "../../words/language.ts";
import type { Options } from "../options.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";

export async function run([planPath]: readonly string[], _: Options, language: Language): Promise<void> {
  const { plan } = await readPlan(planPath);
  const fit = fitAsCut(plan);
  const { findings, ...cut } = asCutData(fit);
  await printJson({
    ...cut,
    findings: withTexts(findings, plainSay(plan, language)),
    adjusted: adjustedData(adjusted(plan, fit.resolved)),
  });
}
