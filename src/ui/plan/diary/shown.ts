/** The piece as it is at one moment of the work; apart from the moments themselves, which reckon what the first view has no need of. */
import { type Report, reportAtOnce } from "../../../core/check/report.ts";
import { cutBall } from "../../../core/geometry/solid.ts";
import type { Solid } from "../../../core/geometry/solid-types.ts";
import type { SolvedPlan } from "../../../core/plan/solved.ts";

/** Everything about the piece at one moment, as the pictures take it. */
export interface Shown {
  readonly solved: SolvedPlan;
  readonly solid: Solid;
  readonly report: Report;
}

/** The piece with the first `count` facets of the plan cut. 0 is the round marble. */
export function shownAt(solved: SolvedPlan, count: number): Shown {
  const planes = solved.planes.map((plane, i) => (i < count ? plane : { n: plane.n, h: 1 }));
  const then: SolvedPlan = { ...solved, planes };
  const solid = cutBall(planes);
  return { solved: then, solid, report: reportAtOnce(solved.plan, then, solid) };
}
