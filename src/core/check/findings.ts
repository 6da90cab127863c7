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
import type { MeetingPair } from "./pairs.ts";

export interface Checked {
  readonly solved: SolvedPlan;
  readonly solid: Solid;
  readonly pairs: readonly MeetingPair[];
  readonly corners: readonly MeetCorner[];
  readonly toleranceMm: number;
}

const RANK = { stop: 0, warn: 1, info: 2 } as const;
/** First what can't be ground, then what to look at, then what is good to know; in the given order within each. */
const inOrder = (findings: readonly PlanFinding[]): PlanFinding[] =>
  [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity]);

/** All that the plan's own cut shows: first what can't be ground; in plan order within each severity. */
export const findingsOf = (checked: Checked): PlanFinding[] =>
  inOrder([
    ...checked.solved.findings,
    ...wheelFindings(checked.solved),
    ...facetFindings(checked),
    ...meetFindings(checked),
    ...clearanceFindings(checked),
  ]);

/** Findings together with meets that are lost, found by holding the plan against another one. */
export function withLosses(
  findings: readonly PlanFinding[],
  losses: readonly PlanFinding[],
): readonly PlanFinding[] {
  if (losses.length === 0) return findings;
  // One cause is told once: a start that costs meets by what it costs, a corner that was split by what split it.
  const costly = new Set(losses.flatMap(({ code, tier }) => (code === "wheel-splits" ? [tier] : [])));
  const split = losses.map(({ facets }) => new Set(facets));
  const isTold = ({ code, tier, facets }: PlanFinding): boolean =>
    (code === "start-moved" && costly.has(tier)) ||
    (code === "near-miss" && split.some((own) => facets?.every((id) => own.has(id)) ?? false));
  return inOrder([...losses, ...findings.filter((f) => !isTold(f))]);
}
