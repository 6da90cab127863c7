/** How long the whole work takes at the lap, the faster of the two orders: the bench's own reckoning. */
import { stagesOf } from "../bench/default-stages.ts";
import { habitsOf, type OrderSetting, workInOrder } from "../bench/order.ts";
import { rigSetting } from "../bench/rig.ts";
import { calibrate } from "../bench/strokes.ts";
import type { SolvedPlan } from "../plan/solved.ts";

function settingOf(solved: SolvedPlan): OrderSetting {
  const { plan, radiusMm } = solved;
  const { arm, lap } = plan.rig;
  const stages = stagesOf(plan.rig);
  const contactRadiusMm = (tierIndex: number): number | null => {
    if (!arm || !lap) return null;
    const planeMm = radiusMm - solved.tiers[tierIndex].depthMm;
    const { armAngleDeg } = plan.tiers[tierIndex];
    return rigSetting(arm, lap, { armAngleDeg, planeMm, radiusMm }).contactRadiusMm;
  };
  return {
    solved,
    stages,
    removals: stages.map((stage) => calibrate(stage, radiusMm, lap)),
    contactRadiiMm: plan.tiers.map((_, i) => contactRadiusMm(i)),
    habits: habitsOf(plan.rig),
  };
}

/** @returns null where it can't be reckoned: no abrasive to cut with, or strokes without end */
export function minutesOf(solved: SolvedPlan): number | null {
  const setting = settingOf(solved);
  if (setting.stages.length === 0 && solved.facets.length > 0) return null;
  const ways = (["finish-each", "rough-all"] as const).map((way) => workInOrder(setting, way).minutes);
  const minutes = Math.min(...ways);
  return Number.isFinite(minutes) ? minutes : null;
}
