/** `report PLAN.json ...`: everything the exact engine says of a plan, as one JSON object each. */
import { finishedOf, reportPlan } from "../../core/check/report.ts";
import { cutBall } from "../../core/geometry/solid.ts";
import type { PlanFile } from "../../core/plan/file.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { plainSay, unknownFieldText, withTexts } from "../../words/answers.ts";
import type { Language } from "../../words/language.ts";
import { printEach } from "../each-plan.ts";
import type { Options } from "../options.ts";

function reportOf({ plan, unknown }: PlanFile, language: Language) {
  const solved = solvePlan(plan);
  const solid = cutBall(solved.planes);
  const report = reportPlan(plan, solved, solid);
  // a field that this version does not know: kept in the file, without effect
  const unknownFields = unknown.map((field) => ({
    code: "unknown-field",
    severity: "info",
    data: { field },
    text: unknownFieldText(field, language),
  }));
  return {
    ...report,
    findings: [...withTexts(report.findings, plainSay(plan, language)), ...unknownFields],
    finished: finishedOf(solved, solid),
  };
}

export const run = (planPaths: readonly string[], _: Options, language: Language): Promise<void> =>
  printEach(planPaths, language, (file) => reportOf(file, language));
