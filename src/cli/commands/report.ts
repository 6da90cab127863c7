/** `report PLAN.json`: everything the exact engine says of a plan, as one JSON object. */
import { finishedOf, reportPlan } from "../../core/check/report.ts";
import { cutBall } from "../../core/geometry/solid.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import type { Finding } from "../../core/plan/solved.ts";
import { printJson } from "../print-json.ts";
import { readPlan } from "../read-plan.ts";

/** A field that this version does not know: kept in the file, without effect. */
const unknownFieldFinding = (field: string): Finding => ({
  code: "unknown-field",
  severity: "info",
  data: { field },
  text: `The field ${field} is not known to this version: it is kept in the file and has no effect.`,
});

export async function run(planPath: string): Promise<void> {
  const { plan, unknown } = await readPlan(planPath);
  const solved = solvePlan(plan);
  const solid = cutBall(solved.planes);
  const report = reportPlan(plan, solved, solid);
  printJson({
    ...report,
    findings: [...report.findings, ...unknown.map(unknownFieldFinding)],
    finished: finishedOf(solved, solid),
  });
}
