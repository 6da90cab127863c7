/**
 * Between which arm angles, and with which counts, one tier may be changed so that everything that meets still does: each angle and count
 * is solved, cut and judged for real, so what is answered is the verdict's own. Degrees.
 *
 * Generators: null after each trial, so that a caller may stop in between; an answer when there is one.
 */
import { itemsOf, lostOf, type Meets, meetsOf } from "../follow/kept.ts";
import { unlessInexact } from "../geometry/inexact-cut.ts";
import type { Plan, Tier } from "../plan/document.ts";
import { RANGES } from "../plan/limits.ts";
import { solvePlan } from "../plan/solve.ts";
import { countsThatFit } from "../plan/suggest.ts";
import { reportAtOnce } from "./report.ts";
import { type VerdictKind, verdictOf } from "./verdict.ts";

export interface AngleRange {
  /** Rounded inward to tenths of a degree, except where a limit is met. */
  readonly fromDeg: number;
  readonly toDeg: number;
}

/** Every so many degrees one angle is tried; ends are then found by halving. */
const STEP_DEG = 1;
const GRAIN_DEG = 0.1;
const HALVINGS = 5;
/** Farther away no angle is looked for where the tier's own does not do. */
const REACH_DEG = 20;

const withTier = (plan: Plan, tierIndex: number, change: Partial<Tier>): Plan => ({
  ...plan,
  tiers: plan.tiers.map((tier, i) => (i === tierIndex ? { ...tier, ...change } : tier)),
});

/** From what is best to what is worst; nothing may get worse. */
const ORDER: readonly VerdictKind[] = ["uncut", "meets", "alone", "apart", "look", "misses", "stops"];
const isNoWorse = (kind: VerdictKind, than: VerdictKind): boolean =>
  ORDER.indexOf(kind) <= ORDER.indexOf(than);

interface Judged {
  readonly verdict: VerdictKind;
  readonly meets: Meets;
}

/** Null for a cut that can't be reckoned exactly. */
const judged = (plan: Plan): Judged | null =>
  unlessInexact(() => {
    const solved = solvePlan(plan);
    return { verdict: verdictOf(solved, reportAtOnce(plan, solved)).kind, meets: meetsOf(plan, solved) };
  });

/**
 * Whether a piece is meant to stay open in part: then its ranges are those in which what meets now still does. Of one that
 * misses, or can't be ground, they are those in which all meets.
 */
export const keepsPart = ({ kind }: { readonly kind: VerdictKind }): boolean =>
  kind === "apart" || kind === "alone" || kind === "look";

/** What each trial must be: as good as now with all that `kept` asks for, or all good where now it isn't. */
function trial(plan: Plan, isKept: (now: Meets, tried: Meets) => boolean) {
  const now = judged(plan);
  const isGoodNow = now !== null && (now.verdict === "meets" || keepsPart({ kind: now.verdict }));
  const works = (tried: Plan): boolean => {
    const then = judged(tried);
    if (then === null) return false;
    if (!isGoodNow) return then.verdict === "meets";
    return isNoWorse(then.verdict, now.verdict) && isKept(now.meets, then.meets);
  };
  return { isGoodNow, works };
}

const keepsEach = (now: Meets, tried: Meets): boolean => lostOf(itemsOf(now), tried).length === 0;

/** Tiers that meet each other, and those whose facets all meet their next ones. */
function tiersThatMeet({ solved, pairs }: Meets): ReadonlySet<string> {
  const counts = new Map<string, number>();
  for (const { a, b } of pairs) {
    const key = `${solved.facets[a].tierIndex} ${solved.facets[b].tierIndex}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const whole = solved.plan.tiers.map(({ count }, i) => ({ key: `${i} ${i}`, all: count < 3 ? 1 : count }));
  const open = new Set(whole.filter(({ key, all }) => (counts.get(key) ?? 0) < all).map(({ key }) => key));
  return new Set([...counts.keys()].filter((key) => !open.has(key)));
}
const keepsTiers = (now: Meets, tried: Meets): boolean => {
  const then = tiersThatMeet(tried);
  return [...tiersThatMeet(now)].every((key) => then.has(key));
};

const { min: LEAST, max: MOST } = RANGES.armAngleDeg;

/** Goes from an angle that works as far as it still does. */
function* endOf(from: number, direction: 1 | -1, works: (deg: number) => boolean): Generator<null, number> {
  const limit = direction > 0 ? MOST : LEAST;
  let good = from;
  while (good !== limit) {
    const next = direction > 0 ? Math.min(limit, good + STEP_DEG) : Math.max(limit, good - STEP_DEG);
    yield null;
    if (works(next)) {
      good = next;
      continue;
    }
    let bad = next;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (good + bad) / 2;
      yield null;
      if (works(middle)) good = middle;
      else bad = middle;
    }
    const inward = direction > 0 ? Math.floor : Math.ceil;
    const grained = Number((inward(Number((good / GRAIN_DEG).toFixed(6))) * GRAIN_DEG).toFixed(6));
    return direction > 0 ? Math.max(from, grained) : Math.min(from, grained);
  }
  return limit;
}

/** The nearest angle that works where the present one does not; null when none does within reach. */
function* nearest(from: number, works: (deg: number) => boolean): Generator<null, number | null> {
  for (let away = STEP_DEG; away <= REACH_DEG; away += STEP_DEG)
    for (const deg of [from + away, from - away]) {
      if (deg < LEAST || deg > MOST) continue;
      yield null;
      if (works(deg)) return deg;
    }
  return null;
}

/**
 * The angles around the tier's own, without a break at the steps tried, at which every pair and corner that meets still does and
 * the verdict is no worse; where the plan misses or stops now, those around the nearest angle at which all meets. Answers nothing where there is none.
 * @throws where there is no such tier
 */
export function* meetingAngles(plan: Plan, tierIndex: number): Generator<AngleRange | null> {
  const { isGoodNow, works: isGood } = trial(plan, keepsEach);
  const works = (armAngleDeg: number) => isGood(withTier(plan, tierIndex, { armAngleDeg }));
  const own = plan.tiers[tierIndex].armAngleDeg;
  const start = isGoodNow ? own : yield* nearest(own, works);
  if (start === null) return;
  const fromDeg = yield* endOf(start, -1, works);
  const toDeg = yield* endOf(start, 1, works);
  yield { fromDeg, toDeg };
}

/** The counts with which tiers that meet still do, or all does where it does not now, one at a time, the nearest to the tier's own first. */
export function* meetingCounts(plan: Plan, tierIndex: number): Generator<number | null> {
  const tier = plan.tiers[tierIndex];
  const away = (count: number) => Math.abs(count - tier.count);
  const counts = [...new Set([tier.count, ...countsThatFit(plan, tier)])].sort((a, b) => away(a) - away(b));
  const { works } = trial(plan, keepsTiers);
  for (const count of counts) yield works(withTier(plan, tierIndex, { count })) ? count : null;
}
