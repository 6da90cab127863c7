/** What an edit cost: meets that stood in the plan before it and no longer do, told at any size. */
import type { Plan, Tier } from "../plan/document.ts";
import type { PlanFinding } from "../plan/finding.ts";
import { wrapDeg } from "../plan/place.ts";
import { toleranceOf } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import type { Checked } from "./findings.ts";
import { meetsIn } from "./findings-wheel-cost.ts";
import { type LostMeet, lossesByTier, lostMeets, type Meets } from "./lost-meets.ts";

/** The numbers of a tier by which its planes are set. */
const SETTINGS = ["side", "armAngleDeg", "startDeg", "depth"] as const;
export type Setting = (typeof SETTINGS)[number];

/** Which of a tier's settings differ. */
export const settingsChanged = (before: Tier, after: Tier): Setting[] =>
  SETTINGS.filter((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]));

/** Whether a tier that both plans have was set otherwise. */
export const isAnyTierEdited = (before: Plan, after: Plan): boolean =>
  after.tiers.some((tier) => {
    const was = before.tiers.find(({ id }) => id === tier.id);
    return was !== undefined && settingsChanged(was, tier).length > 0;
  });

/** Facets can be held against each other one by one only where the same tiers of as many facets stand in the same order. */
const isComparable = (before: Plan, after: Plan): boolean =>
  before.tiers.length === after.tiers.length &&
  before.tiers.every(({ id, count }, i) => id === after.tiers[i].id && count === after.tiers[i].count);

/** How far a tier's planes were moved, as an angle and a share of the radius added up: only to say which moved most. */
function movedBy(before: SolvedPlan, after: SolvedPlan, tier: number): number {
  const { first } = after.tiers[tier];
  const [a, b] = [before.facets[first], after.facets[first]];
  const turnDeg = Math.abs(wrapDeg(b.azimuthDeg - a.azimuthDeg + 180) - 180);
  const tiltDeg = Math.abs(b.armAngleDeg - a.armAngleDeg);
  const sunk = Math.abs(after.planes[first].h - before.planes[first].h);
  return ((turnDeg + tiltDeg) * Math.PI) / 180 + sunk;
}

/**
 * The tier to name for a loss: one that was edited, if it takes part, else any that was edited, else (the wheel or the piece was
 * changed) the one of those that take part that moved most. The later of several.
 */
function tierToName(before: SolvedPlan, after: SolvedPlan): (lost: LostMeet) => number {
  const edited = after.plan.tiers.flatMap((tier, i) =>
    settingsChanged(before.plan.tiers[i], tier).length > 0 ? [i] : [],
  );
  return ({ facets }) => {
    const own = [...new Set(facets.map((i) => after.facets[i].tierIndex))].sort((a, b) => b - a);
    const cause = own.find((tier) => edited.includes(tier)) ?? edited.at(-1);
    if (cause !== undefined) return cause;
    return own.reduce((best, tier) =>
      movedBy(before, after, tier) > movedBy(before, after, best) ? tier : best,
    );
  };
}

/** What met in the plan before an edit and came apart with it. What another facet has come over is no miss. */
export const lostByEdit = (before: Meets, after: Meets, tolerance: number): LostMeet[] =>
  lostMeets(before, after, tolerance).filter(({ covered }) => !covered);

/**
 * One warning a tier that an edit took away from what it met; none where tiers or counts were changed, since then it is another
 * design. @param before the plan as it was before its last edit
 */
export function editCostFindings(before: Plan, checked: Checked): PlanFinding[] {
  const { solved, solid, pairs, corners, toleranceMm } = checked;
  const { plan, radiusMm } = solved;
  if (!isComparable(before, plan)) return [];
  const then = meetsIn(before, toleranceOf(before) / (before.piece.diameterMm / 2));
  if (!then) return [];
  const lost = lostByEdit(then, { solved, solid, pairs, corners }, toleranceMm / radiusMm);
  const byTier = lossesByTier(lost, solved, tierToName(then.solved, solved));
  return plan.tiers.flatMap((tier, t): PlanFinding[] => {
    const own = byTier.get(t);
    if (!own) return [];
    const { facets, ...data } = own;
    return [
      {
        code: "edit-splits",
        severity: "warn",
        tier: tier.id,
        facets,
        data,
      },
    ];
  });
}
