/** What a plan takes and what it gives, for holding two of them side by side. */
import { cutBall } from "../geometry/solid.ts";
import { type Measures, measurePlan } from "../measure/measures.ts";
import { densityOf } from "../optics/glasses.ts";
import type { Rasters } from "../optics/raster.ts";
import type { Plan } from "../plan/document.ts";
import { solvePlan } from "../plan/solve.ts";
import { type WorkTime, workTime } from "./offer.ts";

export interface Weighed {
  readonly time: WorkTime;
  /** Of the finished piece, null where nothing of it is left. */
  readonly grams: number | null;
  /** As for the grams. */
  readonly measures: Measures | null;
}

const MM3_PER_CM3 = 1000;

/**
 * @param rasters pixels of the pictures inside
 * @throws InexactCut for a plan whose cut can't be reckoned
 */
export function weigh(plan: Plan, rasters?: Rasters): Weighed {
  const solved = solvePlan(plan);
  const { vanished, volume } = cutBall(solved.planes);
  const time = workTime(solved);
  if (vanished) return { time, grams: null, measures: null };
  const grams = ((volume * solved.radiusMm ** 3) / MM3_PER_CM3) * densityOf(plan.piece.glass);
  return { time, grams, measures: measurePlan(plan, rasters) };
}
