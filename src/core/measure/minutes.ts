/**
 * How long the whole work takes at the lap, the faster of the two orders: the bench's own reckoning. Strokes go with the volume
 * taken, so a pass needs only what its tier loses together, and where rings are even that comes from one facet of each kind.
 */

import { type Pass, passesOf, type Way } from "../bench/order/diary.ts";
import {
  habitsOf,
  minutesOfPasses,
  type OrderSetting,
  type PassSum,
  workInOrder,
} from "../bench/order/order.ts";
import { rigSetting } from "../bench/rig/rig.ts";
import { stagesOf } from "../bench/stages/default-stages.ts";
import { type Kind, type RingVolume, repeatsOf, ringVolume } from "../bench/stages/ring-volume.ts";
import { calibrate } from "../bench/stages/strokes.ts";
import type { Plane } from "../geometry/plane.ts";
import type { SolvedPlan } from "../plan/solved.ts";

const WAYS = ["finish-each", "rough-all"] as const satisfies readonly Way[];

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

/** The ball with each tier at a depth of its own, mm; 0 = uncut. */
function ballAt(solved: SolvedPlan, repeats: number, depthsMm: readonly number[]) {
  const planes: Plane[] = [];
  const kinds: Kind[] = [];
  const tierOf: number[] = [];
  solved.tiers.forEach(({ first, count }, t) => {
    if (depthsMm[t] <= 0) return;
    const h = 1 - depthsMm[t] / solved.radiusMm;
    // facets k, k + each, k + 2 each .. are alike
    const each = solved.plan.tiers[t].armAngleDeg === 90 ? 1 : count / repeats;
    for (let k = 0; k < count; k++) {
      if (k < each) {
        kinds.push({ at: planes.length, times: count / each });
        tierOf.push(t);
      }
      planes.push({ n: solved.planes[first + k].n, h });
    }
  });
  return { planes, kinds, tierOf };
}

/**
 * The passes of one way with what each takes; null where that needs every facet by itself. Facets that are there when their whole
 * tier stands at a depth are there while it is ground too, as later ones are then shallower; in a ring whose facets are all alike
 * none is there before.
 */
function passSums(solved: SolvedPlan, repeats: number, passes: readonly Pass[]): PassSum[] | null {
  const depthsMm = solved.tiers.map(() => 0);
  let before = (4 / 3) * Math.PI;
  const sums: PassSum[] = [];
  for (const pass of passes) {
    const { tierIndex, moves } = pass;
    depthsMm[tierIndex] = Math.max(depthsMm[tierIndex], moves[0].depthMm);
    if (depthsMm[tierIndex] >= solved.radiusMm) return null;
    const { planes, kinds, tierOf } = ballAt(solved, repeats, depthsMm);
    const { volume, isThere }: RingVolume = ringVolume(planes, kinds);
    const own = isThere.filter((_, i) => tierOf[i] === tierIndex);
    if (own.length > 1 && own.includes(false)) return null;
    if (own.includes(true)) {
      const removeMm3 = Math.max(0, before - volume) * solved.radiusMm ** 3;
      sums.push({ ...pass, facets: solved.tiers[tierIndex].count, removeMm3 });
    }
    before = volume;
  }
  return sums;
}

function minutesInWay(setting: OrderSetting, repeats: number | null, way: Way): number {
  const { solved, stages } = setting;
  const sums = repeats === null ? null : passSums(solved, repeats, passesOf(solved, stages, way));
  return sums ? minutesOfPasses(setting, sums) : workInOrder(setting, way).minutes;
}

/** @returns null where it can't be reckoned: no abrasive to cut with, or strokes without end */
export function minutesOf(solved: SolvedPlan): number | null {
  const setting = settingOf(solved);
  if (setting.stages.length === 0 && solved.facets.length > 0) return null;
  const repeats = repeatsOf(solved);
  const minutes = Math.min(...WAYS.map((way) => minutesInWay(setting, repeats, way)));
  return Number.isFinite(minutes) ? minutes : null;
}
