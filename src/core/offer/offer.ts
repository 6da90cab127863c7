/**
 * What a piece costs: hours from the bench, glass, and what else the plan's `offer` names. Amounts in the offer's currency, not
 * rounded but for the price. What can't be reckoned is null, never a number that stands for it.
 */
import { benchOf } from "../bench/bench.ts";
import { DEFAULT_HABITS, habitsOf, type Work } from "../bench/order/order.ts";
import { cutBall } from "../geometry/solid.ts";
import { densityOf } from "../optics/glasses.ts";
import type { Habits, Offer, Piece, Rig } from "../plan/document.ts";
import type { SolvedPlan } from "../plan/solved.ts";

/** What a price rests on that nobody has measured, or why there is none. */
export type Guess =
  /** The minutes count strokes at stages that have no test facet; `stages` are their ids. */
  | { readonly code: "strokes-not-calibrated"; readonly data: { readonly stages: readonly string[] } }
  /** Nothing of the piece would be left, so there is no work to be timed. */
  | { readonly code: "piece-vanishes"; readonly data: Readonly<Record<never, never>> }
  /** A stage that takes no glass where its tier meets the lap would never end. */
  | { readonly code: "work-never-ends"; readonly data: Readonly<Record<never, never>> };

export interface WorkTime {
  /** The whole work in the faster order; null where it can't be reckoned, and `guesses` says why. */
  readonly minutes: number | null;
  readonly guesses: readonly Guess[];
}

/** An amount that stands on the minutes is null with them. */
export interface Priced extends WorkTime {
  readonly labour: number | null;
  readonly glass: number;
  readonly consumables: number;
  readonly blank: number;
  readonly overhead: number | null;
  readonly sum: number | null;
  readonly tax: number | null;
  /** With tax, rounded up to a multiple of the offer's `roundTo`. */
  readonly price: number | null;
}

/** Of two ways to order the work the one that takes less time, the earlier of equal ones. */
const fasterOf = (order: readonly Work[]): Work =>
  order.reduce((best, work) => (work.minutes < best.minutes ? work : best));

/** Ids of the stages whose strokes this way of working guesses, coarse to fine. */
function guessedStages({ steps }: Work): readonly string[] {
  const ids = steps.flatMap((step) => (step.kind === "grind" && step.strokes === null ? [step.stage] : []));
  return [...new Set(ids)];
}

/** @param habits the artist's minutes for the parts of the work, the usual ones where the plan says nothing */
export function workTime(solved: SolvedPlan, habits: Required<Habits> = habitsOf(solved.plan.rig)): WorkTime {
  if (cutBall(solved.planes).vanished)
    return { minutes: null, guesses: [{ code: "piece-vanishes", data: {} }] };
  const work = fasterOf(benchOf(solved, habits).order);
  if (!Number.isFinite(work.minutes))
    return { minutes: null, guesses: [{ code: "work-never-ends", data: {} }] };
  const stages = guessedStages(work);
  const guesses: Guess[] = stages.length > 0 ? [{ code: "strokes-not-calibrated", data: { stages } }] : [];
  return { minutes: work.minutes, guesses };
}

/** Whether some minutes are the usual ones, not the artist's own. */
export const usesUsualHabits = ({ habits }: Rig): boolean =>
  Object.keys(DEFAULT_HABITS).some((task) => habits?.[task as keyof Habits] === undefined);

const MM3_PER_KG_AT_1_GCM3 = 1e6;
/** Mass of the ball before it is cut, kg. */
export const ballKg = ({ diameterMm, glass }: Pick<Piece, "diameterMm" | "glass">): number =>
  ((4 / 3) * Math.PI * (diameterMm / 2) ** 3 * densityOf(glass)) / MM3_PER_KG_AT_1_GCM3;

/** What rounding leaves of a sum of a few doubles: so near to a multiple is the multiple. */
const ROUNDING = 1e-9;
/** Digits of a price: more than any currency's smallest coin, fewer than a double's last. */
const PRICE_DIGITS = 12;

/** The least multiple of `step` that is no less than `amount`. Both at least 0, the step above 0. */
export function roundedUp(amount: number, step: number): number {
  const steps = amount / step;
  const nearest = Math.round(steps);
  const isMultiple = Math.abs(steps - nearest) <= ROUNDING * Math.max(1, nearest);
  return Number(((isMultiple ? nearest : Math.ceil(steps)) * step).toPrecision(PRICE_DIGITS));
}

/** The tax that is in a price: the price is rounded up, so its tax is reckoned back from it. */
export const taxWithin = (price: number, share: number): number => (price * share) / (1 + share);

/** The price from the time that the work takes. */
export function priceOf(offer: Offer, piece: Pick<Piece, "diameterMm" | "glass">, time: WorkTime): Priced {
  const { hourly, glassPerKg = 0, consumables = 0, blank = 0 } = offer;
  const { overheadShare = 0, taxShare = 0, roundTo = 1 } = offer;
  const glass = ballKg(piece) * glassPerKg;
  const { minutes, guesses } = time;
  const bought = { glass, consumables, blank };
  if (minutes === null)
    return { ...time, labour: null, ...bought, overhead: null, sum: null, tax: null, price: null };
  const labour = (minutes / 60) * hourly;
  const direct = labour + glass + consumables + blank;
  const overhead = overheadShare * direct;
  const sum = direct + overhead;
  const tax = taxShare * sum;
  return { minutes, labour, ...bought, overhead, sum, tax, price: roundedUp(sum + tax, roundTo), guesses };
}

/** @returns null for a plan without an offer */
export const offerOf = (solved: SolvedPlan): Priced | null =>
  solved.plan.offer ? priceOf(solved.plan.offer, solved.plan.piece, workTime(solved)) : null;
