/**
 * The plan that everything on the screen belongs to (derived state that may lag behind, as a deferred value does). A plan of few facets is that at once, within the edit; one of many is solved,
 * cut and reported on in a worker while the hand goes on: the last edit wins, and pictures and numbers stay at the plan that they
 * belong to until then. Fields show what was entered all the same.
 */
import type { Reckoned } from "../core/check/reckon.ts";
import { InexactCut } from "../core/geometry/inexact-cut.ts";
import type { Plan } from "../core/plan/document.ts";
import { report, solid, solved } from "../state/derived.ts";

/** So many facets are reckoned within a frame's share on a phone; it grows with the square of their number, and beyond. */
export const FEW_FACETS = 200;

export const facetCount = ({ tiers }: Plan): number => tiers.reduce((sum, { count }) => sum + count, 0);
export const hasMany = (plan: Plan): boolean => facetCount(plan) > FEW_FACETS;

/** Primes the caches: from now on nobody has to reckon this plan. */
export function learn(plan: Plan, reckoned: Reckoned): void {
  // the worker's copy of the plan is not the one whose parts everybody compares
  solved.learn(plan, { ...reckoned.solved, plan });
  solid.learn(plan, reckoned.solid);
  report.learn(plan, reckoned.report);
}

/** An error that came from a worker is known by its name alone. */
const isInexact = (error: unknown): boolean =>
  error instanceof InexactCut || (error instanceof Error && error.name === "InexactCut");

export interface Settling {
  /** The plan to be shown: the one on the bench, or an earlier one while that is reckoned. */
  readonly plan: Plan;
  /** Whether the plan on the bench is still being reckoned. */
  readonly isLate: boolean;
}

export interface Bench {
  readonly plan: Plan;
  readonly laid: number;
}

export interface SettlingOptions {
  /** Reckons a plan off this thread. Rejects with `InexactCut` (or an error of that name) for one that can't be. */
  readonly ask: (plan: Plan) => Promise<Reckoned>;
  /** Told what is to be shown, whenever that changes. */
  readonly show: (settling: Settling) => void;
  /** Told of a plan on the bench that can't be reckoned exactly, and of the one before: it is to leave the bench again. */
  readonly refuse: (plan: Plan, before: Plan) => void;
}

/** Asynchronous recomputation, the latest request wins. @returns to be called with the plan on the bench whenever it changes */
export function createSettling(first: Bench, { ask, show, refuse }: SettlingOptions): (now: Bench) => void {
  let shown = first.plan;
  let laid = first.laid;
  let wanted = first.plan;
  let isAsking = false;
  const settle = (plan: Plan): void => {
    shown = plan;
    show({ plan, isLate: false });
  };

  /** @returns false for a plan that can't be reckoned exactly */
  async function reckoned(plan: Plan): Promise<boolean> {
    try {
      learn(plan, await ask(plan));
    } catch (error) {
      if (isInexact(error)) return false;
      return unlessInexactHere(plan);
    }
    return true;
  }

  /** One question at a time; what came and went while another was under way is never asked. */
  async function askUntilSettled(): Promise<void> {
    isAsking = true;
    try {
      while (wanted !== shown) {
        const asked = wanted;
        const isSound = await reckoned(asked);
        if (wanted !== asked) continue;
        if (isSound) settle(asked);
        else {
          refuse(asked, shown);
          // whoever refused has put another plan on the bench; one that stays all the same is asked no more
          if (wanted === asked) return;
        }
      }
    } finally {
      isAsking = false;
    }
  }

  return (now) => {
    const isOther = now.laid !== laid;
    laid = now.laid;
    wanted = now.plan;
    // another piece is never shown with the pictures of the one before
    if (isOther || !hasMany(wanted) || report.isKnown(wanted)) return settle(wanted);
    show({ plan: shown, isLate: true });
    if (!isAsking) void askUntilSettled();
  };
}

/** Without a worker it is reckoned here. @returns false for a plan that can't be reckoned exactly */
function unlessInexactHere(plan: Plan): boolean {
  try {
    report(plan);
    return true;
  } catch (error) {
    if (isInexact(error)) return false;
    throw error;
  }
}
