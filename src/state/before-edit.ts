/** The plan as it stood before the last edit that moved a facet: what a loss of meets is held against. */
import type { Plan } from "../core/plan/document.ts";
import { stepBack } from "./history.ts";
import type { PlanState } from "./store.ts";

/** Steps looked through for one that moved a facet: names, notes and finishes do not. */
const STEPS_LOOKED_THROUGH = 12;

/** All by which planes are placed, as text. */
const shapeOf = ({ piece, rig, tiers }: Plan): string =>
  JSON.stringify([
    piece.diameterMm,
    rig.wheelStops,
    rig.setUps ?? null,
    tiers.map(({ id, side, armAngleDeg, count, startDeg, depth }) => [
      id,
      side,
      armAngleDeg,
      count,
      startDeg,
      depth,
    ]),
  ]);

/** Null where no such edit is remembered, or steps of an earlier visit don't fit the plan. */
export function planBeforeEdit({ plan, history }: Pick<PlanState, "plan" | "history">): Plan | null {
  const shape = shapeOf(plan);
  let [now, rest] = [plan, history];
  try {
    for (let k = 0; k < STEPS_LOOKED_THROUGH; k++) {
      const walked = stepBack(now, rest);
      if (!walked) return null;
      if (shapeOf(walked.plan) !== shape) return walked.plan;
      [now, rest] = [walked.plan, walked.history];
    }
  } catch {
    // Undo itself says so when it is asked for; there is nothing to hold the plan against.
  }
  return null;
}
