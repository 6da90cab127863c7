/**
 * How far the hours stray when the hand is as it is: pieces cut by chance with the artist's own spread, each then ground on, all
 * facets alike, until everything meets that should. Each tier takes the time of the mean depth that its facets end at.
 */

import type { Random } from "../bench/chances/chance.ts";
import { marginNeeded } from "../bench/chances/chances.ts";
import { cutByChance, type Simulation, type Trial } from "../bench/chances/simulate.ts";
import { minutesOf } from "../measure/minutes.ts";
import type { Plan } from "../plan/document.ts";
import { solvePlan } from "../plan/solve.ts";

export interface TimeSpread {
  /** Pieces cut by chance. */
  readonly pieces: number;
  /** Of them those that no grinding on mends, or of which nothing would be left. */
  readonly lost: number;
  /** Minutes between which eight in ten of the others lie; null where all are lost. */
  readonly minutes: readonly [number, number] | null;
}

/** Depth below which a facet isn't there, mm. */
const LEAST_DEPTH_MM = 1e-6;

/** The plan as this piece came out, each tier at its facets' mean depth and `marginMm` deeper. */
function planOfTrial({ solved }: Simulation, { planes, skin }: Trial, marginMm: number): Plan {
  const { plan, radiusMm } = solved;
  const tiers = plan.tiers.map((tier, i) => {
    const { first, count } = solved.tiers[i];
    let sum = 0;
    for (let k = first; k < first + count; k++) sum += 1 - (planes[k].h - skin[k]);
    const mm = (sum / Math.max(1, count)) * radiusMm + marginMm;
    return { ...tier, depth: { rule: "depth", mm: Math.max(LEAST_DEPTH_MM, mm) } as const };
  });
  return { ...plan, tiers };
}

/** Minutes of one piece cut by chance; null where it is lost. */
export function minutesByChance(sim: Simulation, random: Random): number | null {
  const trial = cutByChance(sim, random);
  const margin = sim.pairs.reduce(
    (most, pair) => Math.max(most, marginNeeded(trial, pair, sim.tolerance)),
    0,
  );
  if (!Number.isFinite(margin)) return null;
  return minutesOf(solvePlan(planOfTrial(sim, trial, margin * sim.solved.radiusMm)));
}

/** Shares of the pieces below and above the span. */
const [LOW, HIGH] = [0.1, 0.9];

/** The value below which a share of them lies, between neighbours in proportion. @param sorted at least one */
function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
}

/** @param each minutes of each piece, null for those that are lost */
export function timeSpreadOf(each: readonly (number | null)[]): TimeSpread {
  const sorted = each.filter((minutes) => minutes !== null).sort((a, b) => a - b);
  return {
    pieces: each.length,
    lost: each.length - sorted.length,
    minutes: sorted.length === 0 ? null : [quantile(sorted, LOW), quantile(sorted, HIGH)],
  };
}
