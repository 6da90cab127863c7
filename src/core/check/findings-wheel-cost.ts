/** What the wheel costs: meets that stand with exact azimuths and are lost on its stops, told at any size. */
import { unlessInexact } from "../geometry/inexact-cut.ts";
import { cutBall } from "../geometry/solid.ts";
import type { Plan, Tier } from "../plan/document.ts";
import type { PlanFinding } from "../plan/finding.ts";
import { RANGES } from "../plan/limits.ts";
import { askedAzimuth, nearestStop, stopsOf, wrapDeg, zeroOf } from "../plan/place.ts";
import { solvePlan } from "../plan/solve.ts";
import type { Checked } from "./findings.ts";
import { ON_STOP_DEG, wheelErrors } from "./findings-wheel.ts";
import { type LostMeet, lossesByTier, lostMeets, type Meets, meetsOf } from "./lost-meets.ts";

const { min: LEAST_STOPS, max: MOST_STOPS } = RANGES.wheelStops;

/** Other starts tried for one tier, the nearest first: farther ones are another design. */
const STARTS_TRIED = 8;

/** The plan on a wheel of so many stops on both sides; null: every facet exactly where it was asked. */
export function onWheel(plan: Plan, wheelStops: number | null): Plan {
  const { setUps, ...rig } = plan.rig;
  if (!setUps) return { ...plan, rig: { ...rig, wheelStops } };
  const side = (own: NonNullable<typeof setUps>["front"]) => (own ? { ...own, wheelStops } : own);
  const turned = Object.fromEntries(Object.entries(setUps).map(([name, own]) => [name, side(own)]));
  return { ...plan, rig: { ...rig, wheelStops, setUps: turned } };
}

/** What meets in a plan; null for one that can't be reckoned exactly, which nothing is held against. */
export const meetsIn = (plan: Plan, tolerance: number): Meets | null =>
  unlessInexact(() => {
    const solved = solvePlan(plan);
    return meetsOf(solved, cutBall(solved.planes), tolerance);
  });

/** Wheels on whose stops every facet of the plan stands exactly where it is asked: they keep all meets. */
export function wheelsThatKeepAll(plan: Plan): number[] {
  const isOn = (tier: Tier, stops: number): boolean => {
    if (tier.armAngleDeg === 90) return true;
    const zero = zeroOf(plan, tier.side);
    return Array.from({ length: tier.count }, (_, k) => askedAzimuth(tier, k) - zero).every((deg) => {
      const off = deg - (360 * Math.round((deg * stops) / 360)) / stops;
      return Math.abs(off) <= ON_STOP_DEG;
    });
  };
  const wheels: number[] = [];
  for (let stops = LEAST_STOPS; stops <= MOST_STOPS; stops++)
    if (plan.tiers.every((tier) => isOn(tier, stops))) wheels.push(stops);
  return wheels;
}

/** The tier to name for a loss: of those that take part the one that the wheel moves most, the later of equals. */
function tierMoved(lost: LostMeet, { solved }: Checked, movedDeg: readonly number[]): number {
  const own = [...new Set(lost.facets.map((i) => solved.facets[i].tierIndex))].sort((a, b) => b - a);
  const moved = own.filter((t) => movedDeg[t] > ON_STOP_DEG);
  // Tiers that stand on their stops but follow one that does not, by their rules: that one is the cause.
  const candidates = moved.length > 0 ? moved : movedDeg.flatMap((deg, t) => (deg > ON_STOP_DEG ? [t] : []));
  const SAME_DEG = 1e-9;
  return candidates.reduce((best, t) => (movedDeg[t] > movedDeg[best] + SAME_DEG ? t : best));
}

/** The nearest start of one tier, on the wheel's stops, with which all that the exact plan meets is met; null when none is. */
function startThatKeeps(exact: Meets, plan: Plan, index: number, tolerance: number): number | null {
  const tier = plan.tiers[index];
  const stops = stopsOf(plan, tier.side);
  // a count that does not divide the wheel is spread unevenly from every start
  if (stops === null || stops % tier.count !== 0) return null;
  const zero = zeroOf(plan, tier.side);
  const now = nearestStop(tier.startDeg, stops, zero);
  const away = (deg: number) => Math.abs(wrapDeg(deg - tier.startDeg + 180) - 180);
  const within = Math.ceil(Math.min(STARTS_TRIED, stops / tier.count) / 2);
  const starts = Array.from({ length: 2 * within + 1 }, (_, i) =>
    wrapDeg(zero + (360 * (now + i - within)) / stops),
  ).sort((a, b) => away(a) - away(b));
  for (const startDeg of starts) {
    const tiers = plan.tiers.map((t, i) => (i === index ? { ...t, startDeg } : t));
    const meets = meetsIn({ ...plan, tiers }, tolerance);
    if (meets && lostMeets(exact, meets, tolerance).length === 0) return startDeg;
  }
  return null;
}

/** One warning a tier that the wheel moves away from what it met; none where nothing is lost. */
export function wheelCostFindings(checked: Checked): PlanFinding[] {
  const { solved, solid, pairs, corners, toleranceMm } = checked;
  const { plan, radiusMm } = solved;
  const hasWheel = plan.tiers.map((tier) => stopsOf(plan, tier.side) !== null && tier.armAngleDeg < 90);
  const movedDeg = plan.tiers.map((_, i) => (hasWheel[i] ? wheelErrors(solved, i).errorDeg : 0));
  if (!movedDeg.some((deg) => deg > ON_STOP_DEG)) return [];
  const tolerance = toleranceMm / radiusMm;
  const exact = meetsIn(onWheel(plan, null), tolerance);
  if (!exact) return [];
  const lost = lostMeets(exact, { solved, solid, pairs, corners }, tolerance);
  if (lost.length === 0) return [];
  const wheels = wheelsThatKeepAll(plan);
  const byTier = lossesByTier(lost, solved, (l) => tierMoved(l, checked, movedDeg));
  return plan.tiers.flatMap((tier, t): PlanFinding[] => {
    const own = byTier.get(t);
    if (!own) return [];
    const { missMm, facets, corners: splitCorners, pairs: openPairs } = own;
    return [
      {
        code: "wheel-splits",
        severity: "warn",
        tier: tier.id,
        facets,
        data: {
          missMm,
          corners: splitCorners,
          pairs: openPairs,
          stops: stopsOf(plan, tier.side),
          movedDeg: movedDeg[t],
          wheels,
          startDeg: startThatKeeps(exact, plan, t, tolerance),
        },
      },
    ];
  });
}
