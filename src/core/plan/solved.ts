/** What solving a plan gives: every facet with its real place on the wheel, its depth and its plane. */
import type { FacetFrame, Plane } from "../geometry/plane.ts";
import type { Plan } from "./document.ts";
import type { PlanFinding } from "./finding.ts";

export interface PlacedFacet {
  /** `tierId/k`, k = 1 .. count */
  readonly id: string;
  readonly tierIndex: number;
  readonly armAngleDeg: number;
  /** Where the wheel really puts it, [0, 360). */
  readonly azimuthDeg: number;
  /** Null without a wheel. */
  readonly wheelStop: number | null;
  readonly frame: FacetFrame;
}

export interface SolvedTier {
  readonly tierId: string;
  readonly depthMm: number;
  /** Positions of its facets in `facets`: first .. first + count - 1. */
  readonly first: number;
  readonly count: number;
  /** False when the depth rule could not be met; the finding says why. */
  readonly met: boolean;
}

export interface SolvedPlan {
  readonly plan: Plan;
  readonly radiusMm: number;
  readonly tiers: readonly SolvedTier[];
  readonly facets: readonly PlacedFacet[];
  /** One plane a facet, unit sphere, in the same order. */
  readonly planes: readonly Plane[];
  readonly findings: readonly PlanFinding[];
}
