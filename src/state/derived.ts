/**
 * What follows from a plan: computed once per plan object, on first asking, and forgotten with it. A plan is frozen, so
 * the object is the key.
 */
import { reportAtOnce } from "../core/check/report.ts";
import { cutBall } from "../core/geometry/solid.ts";
import type { Plan } from "../core/plan/document.ts";
import { solvePlan } from "../core/plan/solve.ts";

/** The first plan seen of those that share their tiers and differ in nothing but where the work stands. */
const firstOf = new WeakMap<Plan["tiers"], Plan>();

/** What a plan says apart from the piece: where the work stands, what is asked for it, by whom, in what words. */
const APART: ReadonlySet<string> = new Set(["work", "offer", "maker", "showing"]);
/**
 * A plan for all that are the same glass, a cache key: moving on at the lap changes where the work stands and nothing that is reckoned, so
 * nothing is reckoned anew.
 */
export function samePiece(plan: Plan): Plan {
  const first = firstOf.get(plan.tiers);
  const isSame =
    first !== undefined &&
    [...new Set([...Object.keys(first), ...Object.keys(plan)])].every(
      (key) => APART.has(key) || first[key as keyof Plan] === plan[key as keyof Plan],
    );
  if (isSame) return first;
  firstOf.set(plan.tiers, plan);
  return plan;
}

/** A function of a plan that remembers its answer for every plan object still in use (memoized in a `WeakMap`). */
export interface PerPlan<T> {
  (plan: Plan): T;
  readonly isKnown: (plan: Plan) => boolean;
  /** Takes an answer that was computed elsewhere (primes the cache). */
  readonly learn: (plan: Plan, value: T) => void;
}

export function perPlan<T>(compute: (plan: Plan) => T): PerPlan<T> {
  const known = new WeakMap<Plan, { readonly value: T }>();
  const answer = (asked: Plan): T => {
    const plan = samePiece(asked);
    let entry = known.get(plan);
    if (!entry) {
      entry = { value: compute(plan) };
      known.set(plan, entry);
    }
    return entry.value;
  };
  return Object.assign(answer, {
    isKnown: (plan: Plan) => known.has(samePiece(plan)),
    learn: (plan: Plan, value: T) => void known.set(samePiece(plan), { value }),
  });
}

/** Every facet with its place, depth and plane. */
export const solved = perPlan(solvePlan);
/** The exact cut piece on the unit sphere; facet i is `solved(plan).facets[i]`. */
export const solid = perPlan((plan) => cutBall(solved(plan).planes));
/**
 * Everything that a person reads: facets, pairs, corners, totals, findings; but for meets lost on the wheel or by an edit,
 * which take other plans to be reckoned too: `useReport` has them once a worker found them.
 */
export const report = perPlan((plan) => reportAtOnce(plan, solved(plan), solid(plan)));

/** Solved depth of one tier, mm. A tier that is not there: 0. */
export const depthOf = (plan: Plan, tierId: string): number =>
  solved(plan).tiers.find((tier) => tier.tierId === tierId)?.depthMm ?? 0;
