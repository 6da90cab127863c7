/** All that pictures and numbers need of a plan, in one go: what a worker does where that takes longer than a frame. */
import { cutBall } from "../geometry/solid.ts";
import type { Solid } from "../geometry/solid-types.ts";
import type { Plan } from "../plan/document.ts";
import { solvePlan } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { type Report, reportAtOnce } from "./report.ts";

export interface Reckoned {
  readonly solved: SolvedPlan;
  /** Facet i is `solved.facets[i]`. */
  readonly solid: Solid;
  readonly report: Report;
}

/** Evaluates a plan: solves, cuts and reports. @throws InexactCut */
export function reckon(plan: Plan): Reckoned {
  const solved = solvePlan(plan);
  const solid = cutBall(solved.planes);
  return { solved, solid, report: reportAtOnce(plan, solved, solid) };
}
