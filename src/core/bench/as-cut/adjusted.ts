/** The plan with the angles of tiers still to cut turned as little as will do, so that what met before a slip meets again. */

import { type Item, itemsOf, lostOf, meetsOf } from "../../follow/kept.ts";
import { canTurn, leastTurn } from "../../follow/least-turn.ts";
import { unlessInexact } from "../../geometry/inexact-cut.ts";
import type { Plan } from "../../plan/document.ts";
import type { SolvedPlan } from "../../plan/solved.ts";

export interface AngleChange {
  readonly tier: string;
  /** As planned, as adjusted. */
  readonly armAngleDeg: readonly [number, number];
  readonly depthMm: readonly [number, number];
}

export interface Adjusted {
  /** Cut tiers as they were cut, the others with their rules at their angles, some turned. */
  readonly plan: Plan;
  readonly solved: SolvedPlan;
  /** Tiers that turn; empty where depth alone does it, or nothing helps. */
  readonly changes: readonly AngleChange[];
  /** True when all that met meets again and nothing is swallowed that was not. */
  readonly meets: boolean;
  /** Facets of pairs and corners that met and don't any more; a facet by itself where nothing of it is left. */
  readonly lost: readonly (readonly string[])[];
  /** Tiers still to cut whose rule was met as planned and can't be now. */
  readonly cant: readonly string[];
}

const isMeasured = (plan: Plan, i: number): boolean => plan.tiers[i].asCut !== undefined;

/** What of the items can't come back whatever later tiers do: cuts to come only take away. */
function goneAlready(items: readonly Item[], plan: Plan, cutTiers: number, firstUncut: number): Set<Item> {
  const cut = items.filter((item) => item.every((k) => k < firstUncut));
  const now = unlessInexact(() => meetsOf({ ...plan, tiers: plan.tiers.slice(0, cutTiers) }));
  return new Set(now ? lostOf(cut, now) : []);
}

/**
 * Tiers come in cutting order, so those before the last one measured are on the piece too; measured or not, they stay.
 * @param planned the plan before it was cut @param resolved the same with measured tiers as they were cut
 * Each yielded number is the share done.
 */
export function* adjust(planned: Plan, resolved: Plan): Generator<number, Adjusted> {
  const was = meetsOf(planned);
  const all = itemsOf(was);
  const cutTiers = planned.tiers.reduce((last, _, i) => (isMeasured(planned, i) ? i + 1 : last), 0);
  const firstUncut = was.solved.tiers[cutTiers]?.first ?? was.solved.facets.length;
  const gone = goneAlready(all, resolved, cutTiers, firstUncut);
  const free = planned.tiers.flatMap((_, i) => (i >= cutTiers && canTurn(resolved, i) ? [i] : []));
  const items = all.filter((item) => !gone.has(item));
  const found = yield* leastTurn({ was, items, plan: resolved, free });
  // As it stands, where it can't be reckoned: the error of the exact solid says why.
  const { plan, solved } = found ?? { plan: resolved, solved: meetsOf(resolved).solved };
  const lost = [...gone, ...(found?.lost ?? [])];
  const isLost = new Set(lost);
  return {
    plan,
    solved,
    changes: free.flatMap((i): AngleChange[] => {
      const [from, to] = [planned.tiers[i].armAngleDeg, plan.tiers[i].armAngleDeg];
      if (from === to) return [];
      const depthMm = [was.solved.tiers[i].depthMm, solved.tiers[i].depthMm] as const;
      return [{ tier: planned.tiers[i].id, armAngleDeg: [from, to], depthMm }];
    }),
    meets: lost.length === 0,
    lost: all.filter((item) => isLost.has(item)).map((item) => item.map((k) => was.solved.facets[k].id)),
    cant: (found?.broken ?? []).map((i) => planned.tiers[i].id),
  };
}

/** To the end at once. */
export function adjusted(planned: Plan, resolved: Plan): Adjusted {
  const steps = adjust(planned, resolved);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The answer as plain data for the command line. */
export const adjustedData = ({ plan, changes, meets, lost, cant }: Adjusted) => ({
  plan,
  changes,
  meets,
  lost,
  cant,
});
