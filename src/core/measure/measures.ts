/** A plan as a row of numbers: how it looks, what it takes, whether it meets. What `measure` prints, and what ideas are judged by. */
import { cutBall } from "../geometry/solid.ts";
import type { Solid } from "../geometry/solid-types.ts";
import type { Rasters } from "../optics/raster.ts";
import type { Plan } from "../plan/document.ts";
import { solvePlan } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { type LookMeasures, measureLook, rayBodyOf } from "./look-measures.ts";
import { ringsMeet, tiersMeet } from "./meeting.ts";
import { minutesOf } from "./minutes.ts";

/** What is told by the solid alone. */
export interface ShapeMeasures {
  /** Round skin left, a share of the ball's. */
  readonly skinShare: number;
  /** As planned, swallowed ones included. */
  readonly facets: number;
  readonly tiers: number;
  /** Least width of the facets that are there; null without any. */
  readonly leastFacetMm: number | null;
}

export interface Measures extends LookMeasures, ShapeMeasures {
  /** Of the whole work, the faster order; null where it can't be reckoned. */
  readonly minutes: number | null;
  readonly ringsMeet: boolean;
  readonly meets: boolean;
}

export function shapeMeasures(solved: SolvedPlan, solid: Solid): ShapeMeasures {
  const widths = solid.facets.filter(({ swallowed }) => !swallowed).map(({ width }) => width);
  return {
    skinShare: solid.skinArea / (4 * Math.PI),
    facets: solved.facets.length,
    tiers: solved.tiers.length,
    leastFacetMm: widths.length === 0 ? null : Math.min(...widths) * solved.radiusMm,
  };
}

/** @throws InexactCut for a plan whose cut can't be reckoned */
export function measurePlan(plan: Plan, rasters?: Rasters): Measures {
  const solved = solvePlan(plan);
  const solid = cutBall(solved.planes);
  const rings = ringsMeet(solved, solid);
  return {
    ...measureLook(rayBodyOf(solved, rasters)),
    ...shapeMeasures(solved, solid),
    minutes: minutesOf(solved),
    ringsMeet: rings,
    meets: rings && tiersMeet(solved, solid),
  };
}
