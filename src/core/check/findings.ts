/**
 * What a person should look at: every way in which a plan may disappoint, in plain words, with where, by how much and
 * the smallest change that mends it. Codes and `data` are for programs (lengths mm, angles degrees); `text` is English.
 *
 * Codes: uneven, start-moved, wheel-splits, duplicate, near-duplicate, swallowed, lost, sliver, short-edge, near-miss, skin-between,
 * under-dop, inside-broken, inside-thin, vanished; from solving: rule-unmet, overshoot.
 */
import type { Solid } from "../geometry/solid-types.ts";
import type { Finding, SolvedPlan } from "../plan/solved.ts";
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
export function findingsOf(checked: Checked): Finding[] {
  const rank = { stop: 0, warn: 1, info: 2 };
  const costs = wheelCostFindings(checked);
  // A start that costs meets is told by what it costs.
  const isTold = (f: Finding) => f.code === "start-moved" && costs.some((cost) => cost.tier === f.tier);
  return [
    ...checked.solved.findings,
    ...wheelFindings(checked.solved).filter((f) => !isTold(f)),
    ...costs,
    ...facetFindings(checked),
    ...meetFindings(checked),
    ...clearanceFindings(checked),
  ].sort((a, b) => rank[a.severity] - rank[b.severity]);
}
