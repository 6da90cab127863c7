/**
 * From one set of angles to the nearest at which everything asked for is kept: conditions linearised again and again, each
 * time the least turn that meets them within a step that can be trusted.
 */
import { type Condition, nearestPoint } from "./nearest-point.ts";
import type { Margins, Trial } from "./trial.ts";

/** Turns of the tiers that may turn, degrees, from the plan's angles. */
export type Turns = readonly number[];

/** What a search works on. */
export interface Ground {
  readonly trial: Trial;
  /** The plan's angles, one for each tier. */
  readonly angles: readonly number[];
  /** Tiers that may turn. */
  readonly free: readonly number[];
  /** Least and greatest turn of each of them, degrees. */
  readonly bounds: readonly (readonly [number, number])[];
}

const ROUNDS = 14;
const FIRST_STEP_DEG = 3;
const LEAST_STEP_DEG = 0.002;
const STILL_DEG = 5e-4;
const DIFFERENCE_DEG = 1e-3;
/** Kept by so much, mm, so that rounding never takes it back. */
const CLEAR_MM = 1e-4;

export const costOf = (turns: Turns): number => turns.reduce((sum, t) => sum + t * t, 0);

export const anglesAt = ({ angles, free }: Ground, turns: Turns): number[] => {
  const at = [...angles];
  free.forEach((tier, j) => {
    at[tier] = angles[tier] + turns[j];
  });
  return at;
};

export const marginsAt = (ground: Ground, turns: Turns): Margins => ground.trial.at(anglesAt(ground, turns));

export const isAllKept = ({ kept, broken }: Margins, least = 0): boolean =>
  broken === null && kept.every((m) => m !== null && m >= least);

/** How much is missing: items that can't be told yet count as a millimetre each. */
function missing({ kept, broken }: Margins): number {
  const short = kept.reduce<number>(
    (sum, m) => sum + (m === null ? 1 : Math.min(1, Math.max(0, CLEAR_MM - m))),
    0,
  );
  return short - (broken?.byMm ?? 0);
}

/** Numbers that have to be at least 0: an item's margin, and that of the rule that breaks. */
const values = ({ kept, broken }: Margins): (number | null)[] => [...kept, broken?.byMm ?? null];

function conditionsAt(ground: Ground, turns: Turns, here: Margins, stepDeg: number): Condition[] {
  const now = values(here);
  const columns = turns.map((t, j) => {
    const by = t + DIFFERENCE_DEG > ground.bounds[j][1] ? -DIFFERENCE_DEG : DIFFERENCE_DEG;
    const there = marginsAt(ground, turns.with(j, t + by));
    const isSame = there.broken?.tier === here.broken?.tier;
    return values(there).map((v, i) => {
      const from = now[i];
      return v === null || from === null || (!isSame && i === now.length - 1) ? 0 : (v - from) / by;
    });
  });
  const kept = now.flatMap((m, i): Condition[] => {
    if (m === null) return [];
    const along = columns.map((column) => column[i]);
    const least = CLEAR_MM - m + along.reduce((sum, a, j) => sum + a * turns[j], 0);
    return [{ along, least }];
  });
  const walls = turns.flatMap((t, j): Condition[] => {
    const along = turns.map((_, l) => (l === j ? 1 : 0));
    const [low, high] = ground.bounds[j];
    return [
      { along, least: Math.max(low, t - stepDeg) },
      { along: along.map((a) => -a), least: -Math.min(high, t + stepDeg) },
    ];
  });
  return [...kept, ...walls];
}

const clamp = (x: number, [low, high]: readonly [number, number]): number => Math.min(high, Math.max(low, x));

/** The least turns found on the way at which all is kept, or null; and the place with least missing. */
export interface Descent {
  readonly best: Turns | null;
  readonly nearest: Turns;
}

export function descend(ground: Ground, start: Turns): Descent {
  let turns: Turns = start.map((t, j) => clamp(t, ground.bounds[j]));
  let here = marginsAt(ground, turns);
  let best: Turns | null = null;
  let step = FIRST_STEP_DEG;
  const note = (at: Turns, margins: Margins) => {
    if (isAllKept(margins) && (best === null || costOf(at) < costOf(best))) best = at;
  };
  note(turns, here);
  for (let round = 0; round < ROUNDS && step > LEAST_STEP_DEG; round++) {
    const to = nearestPoint(turns.length, conditionsAt(ground, turns, here, step)).map((t, j) =>
      clamp(t, [
        Math.max(ground.bounds[j][0], turns[j] - step),
        Math.min(ground.bounds[j][1], turns[j] + step),
      ]),
    );
    const there = marginsAt(ground, to);
    note(to, there);
    const [before, after] = [missing(here), missing(there)];
    const isBetter = after < before || (after <= before + 1e-9 && costOf(to) < costOf(turns));
    const moved = Math.max(...to.map((t, j) => Math.abs(t - turns[j])));
    if (!isBetter) {
      step /= 3;
      continue;
    }
    [turns, here] = [to, there];
    if (moved < STILL_DEG) break;
  }
  return { best, nearest: best ?? turns };
}
