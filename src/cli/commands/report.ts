/** `report PLAN.json ...`: everything the exact engine says of a plan, as one JSON object each. */
import { finishedOf, reportPlan } from "../../core/check/report.ts";
import { cutBall } from "../../core/geometry/solid.ts";
import type { PlanFile } from "../../core/plan/file.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import type { Finding } from "../../core/plan/solved.ts";
import { printEach } from "../each-plan.ts";

/** A field that this version does not know: kept in the file, without effect. */
const unknownFieldFinding = (field: string): Finding => ({
  code: "unknown-field",
  severity: "info",
  data: { field },
  text: `The field ${field} is not known to this version: it is kept in the file and has no effect.`,
});

function reportOf({ plan, unknown }: PlanFile) {
  const solved = solvePlan(plan);
  const solid = cutBall(solved.planes);
  const report = reportPlan(plan, solved, solid);
  return {
    ...report,
    findings: [...report.findings, ...unknown.map(unknownFieldFinding)],
    finished: finishedOf(solved, solid),
  };
}

export const run = (planPaths: readonly string[]): Promise<void> => printEach(planPaths, reportOf);
