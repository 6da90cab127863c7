/**
 * What a person should look at: every way in which a plan may disappoint, as data, with where and by how much. The codes and
 * what goes with each stand in `../plan/finding.ts`, their words in `src/words`.
 */
import type { Solid } from "../geometry/solid-types.ts";
import type { PlanFinding } from "../plan/finding.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import type { MeetCorner } from "./corners.ts";
import { clearanceFindings } from "./findings-clearance.ts";
import { facetFindings } from "./findings-facets.ts";
import { meetFindings } from "./findings-meets.ts";
import { wheelFindings } from "./findings-wheel.ts";
import { wheelCostFindings } from "./findings-wheel-cost.ts";
import type { MeetingPair } from "./pairs.ts";

export interface Checked {
  readonly solved: SolvedPlan;
  readonly solid: Solid;
  readonly pairs: readonly MeetingPair[];
  readonly corners: readonly MeetCorner[];
  readonly toleranceMm: number;
}

/** All findings: first what can't be ground, then what to look at, then what is good to know; in plan order within each. */
export function findingsOf(checked: Checked): PlanFinding[] {
  const rank = { stop: 0, warn: 1, info: 2 };
  const costs = wheelCostFindings(checked);
  // A start that costs meets is told by what it costs.
  const isTold = (f: PlanFinding) => f.code === "start-moved" && costs.some((cost) => cost.tier === f.tier);
  return [
    ...checked.solved.findings,
    ...wheelFindings(checked.solved).filter((f) => !isTold(f)),
    ...costs,
    ...facetFindings(checked),
    ...meetFindings(checked),
    ...clearanceFindings(checked),
  ].sort((a, b) => rank[a.severity] - rank[b.severity]);
}
