/** The whole answer about a plan, in millimetres, grams and degrees: what the command line prints and screens show. */
import { cutBall } from "../geometry/solid.ts";
import { SKIN, type Solid, type SolidFacet } from "../geometry/solid-types.ts";
import { add, scale, type Vec3 } from "../geometry/vec.ts";
import { densityOf } from "../optics/glasses.ts";
import type { Plan } from "../plan/document.ts";
import type { PlanFinding } from "../plan/finding.ts";
import { solvePlan, toleranceOf } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { meetCorners } from "./corners.ts";
import { type Checked, findingsOf, withLosses } from "./findings.ts";
import { wheelCostFindings } from "./findings-wheel-cost.ts";
import { type MeetState, meetingPairs } from "./pairs.ts";
import { restingFacets, sizeOf } from "./size.ts";
import { widthOfPatch } from "./widest-skin.ts";

interface ReportOutlinePiece {
  readonly kind: "line" | "arc";
  readonly from: Vec3;
  readonly to: Vec3;
  readonly with: string | null;
  readonly lengthMm: number;
}

export interface ReportFacet {
  readonly id: string;
  readonly tier: string;
  readonly armAngleDeg: number;
  readonly azimuthDeg: number;
  readonly wheelStop: number | null;
  readonly depthMm: number;
  readonly planeMm: number;
  readonly areaMm2: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly perimeterMm: number;
  readonly outline: readonly ReportOutlinePiece[];
  readonly swallowed: boolean;
}

interface ReportPair {
  readonly a: string;
  readonly b: string;
  readonly state: MeetState;
  readonly gapMm: number;
  readonly edgeMm: number;
}

interface ReportCorner {
  readonly at: Vec3;
  readonly facets: readonly string[];
  readonly missMm: number;
}

interface Totals {
  readonly volumeMm3: number;
  readonly removedMm3: number;
  readonly roundSkinMm2: number;
  readonly facetAreaMm2: number;
  readonly massG: number;
  readonly removedG: number;
}

export interface Report {
  readonly facets: readonly ReportFacet[];
  readonly pairs: readonly ReportPair[];
  readonly corners: readonly ReportCorner[];
  readonly totals: Totals;
  readonly findings: readonly PlanFinding[];
}

const MM3_PER_CM3 = 1000;

function facetEntry(solved: SolvedPlan, facet: SolidFacet, i: number): ReportFacet {
  const { radiusMm: R, plan } = solved;
  const placed = solved.facets[i];
  const outline = facet.outline.map(
    (piece): ReportOutlinePiece => ({
      kind: piece.kind,
      from: scale(piece.from, R),
      to: scale(piece.to, R),
      with: piece.with === SKIN ? null : solved.facets[piece.with].id,
      lengthMm: piece.length * R,
    }),
  );
  return {
    id: placed.id,
    tier: plan.tiers[placed.tierIndex].id,
    armAngleDeg: placed.armAngleDeg,
    azimuthDeg: placed.azimuthDeg,
    wheelStop: placed.wheelStop,
    depthMm: solved.tiers[placed.tierIndex].depthMm,
    planeMm: facet.plane.h * R,
    areaMm2: facet.area * R * R,
    widthMm: facet.width * R,
    heightMm: facet.height * R,
    perimeterMm: facet.perimeter * R,
    outline,
    swallowed: facet.swallowed,
  };
}

function totalsOf(plan: Plan, solid: Solid, R: number): Totals {
  const volumeMm3 = solid.volume * R ** 3;
  const removedMm3 = Math.max(0, ((4 / 3) * Math.PI - solid.volume) * R ** 3);
  const gramsPerMm3 = densityOf(plan.piece.glass) / MM3_PER_CM3;
  return {
    volumeMm3,
    removedMm3,
    roundSkinMm2: solid.skinArea * R * R,
    facetAreaMm2: solid.facetArea * R * R,
    massG: volumeMm3 * gramsPerMm3,
    removedG: removedMm3 * gramsPerMm3,
  };
}

/** @param solved, solid given when they are already known; they must belong to the plan */
export function checkedOf(
  plan: Plan,
  solved: SolvedPlan = solvePlan(plan),
  solid: Solid = cutBall(solved.planes),
): Checked {
  const toleranceMm = toleranceOf(plan);
  const tolerance = toleranceMm / solved.radiusMm;
  const pairs = meetingPairs(solved, solid, tolerance);
  const corners = meetCorners(solid.vertices, solved.planes, tolerance);
  return { solved, solid, pairs, corners, toleranceMm };
}

function reportOf(checked: Checked): Report {
  const { solved, solid, pairs, corners } = checked;
  const { radiusMm: R, plan } = solved;
  const id = (i: number) => solved.facets[i].id;
  return {
    facets: solid.facets.map((facet, i) => facetEntry(solved, facet, i)),
    pairs: pairs.map((p) => ({
      a: id(p.a),
      b: id(p.b),
      state: p.state,
      gapMm: p.gap * R,
      edgeMm: p.edge * R,
    })),
    corners: corners.map((c) => ({ at: scale(c.at, R), facets: c.facets.map(id), missMm: c.miss * R })),
    totals: totalsOf(plan, solid, R),
    findings: findingsOf(checked),
  };
}

/**
 * The report but for what the wheel costs, which takes the plan solved and cut again: for what is asked at every turn of a
 * hand, or of many plans in a row. @param solved, solid given when they are already known; they must belong to the plan
 */
export const reportAtOnce = (plan: Plan, solved?: SolvedPlan, solid?: Solid): Report =>
  reportOf(checkedOf(plan, solved, solid));

/** All of the report. @param solved, solid given when they are already known; they must belong to the plan */
export function reportPlan(plan: Plan, solved?: SolvedPlan, solid?: Solid): Report {
  const checked = checkedOf(plan, solved, solid);
  const report = reportOf(checked);
  return { ...report, findings: withLosses(report.findings, wheelCostFindings(checked)) };
}

/** The finished piece as calipers, a table and the eye find it. */
export interface Finished {
  readonly alongMm: number;
  readonly widestMm: number;
  readonly narrowestMm: number;
  /** Facets on which it stands by itself. */
  readonly restsOn: readonly string[];
  readonly centreOfMassMm: Vec3;
  /**
   * Patches of round skin, widest first, with the facets that border each. `widthMm`: the largest circle that fits,
   * measured along the surface; null where fewer than three facets border it.
   */
  readonly skin: readonly {
    readonly areaMm2: number;
    readonly widthMm: number | null;
    readonly facets: readonly string[];
  }[];
}

/** Slower than the report (calipers are tried all round), so asked for apart. */
export function finishedOf(solved: SolvedPlan, solid: Solid): Finished {
  const R = solved.radiusMm;
  const size = sizeOf(solid);
  const skin = solid.patches
    .map((p) => {
      const width = widthOfPatch(p, solved.planes);
      return {
        areaMm2: p.area * R * R,
        widthMm: width === null ? null : width * R,
        facets: p.facets.map((i) => solved.facets[i].id),
      };
    })
    .sort((a, b) => (b.widthMm ?? 0) - (a.widthMm ?? 0) || b.areaMm2 - a.areaMm2);
  return {
    alongMm: size.along * R,
    widestMm: size.widest * R,
    narrowestMm: size.narrowest * R,
    restsOn: restingFacets(solid).map((i) => solved.facets[i].id),
    centreOfMassMm: add(scale(solid.centroid, R), [0, 0, 0]),
    skin,
  };
}
