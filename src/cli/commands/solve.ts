/** `solve PLAN.json ...`: the depth of every tier, and what stands in the way of a rule. */
import type { PlanFile } from "../../core/plan/file.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { plainSay, withTexts } from "../../words/answers.ts";
import type { Language } from "../../words/language.ts";
import { printEach } from "../each-plan.ts";
import type { Options } from "../options.ts";

function depthsOf({ plan }: PlanFile, language: Language) {
  const { tiers, findings } = solvePlan(plan);
  return {
    tiers: tiers.map(({ tierId, depthMm, met }) => ({ tier: tierId, depthMm, met })),
    findings: withTexts(findings, plainSay(plan, language)),
  };
}

export const run = (planPaths: readonly string[], _: Options, language: Language): Promise<void> =>
  printEach(planPaths, language, (file) => depthsOf(file, language));
