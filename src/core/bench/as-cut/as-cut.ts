/** From the measurements in a plan to what was really cut, and the plan solved again for the tiers still to cut. */
import type { Plan, Tier } from "../../plan/document.ts";
import { solvePlan } from "../../plan/solve.ts";
import type { SolvedPlan } from "../../plan/solved.ts";
import { dopOf } from "../bench.ts";
import type { BenchFinding, Finding } from "../bench-finding.ts";
import { rigSetting } from "../rig/rig.ts";
import { alikeFacets } from "./alike.ts";
import { caliperOf } from "./caliper.ts";
import type { CutTier } from "./cut-model.ts";
import { type FacetFit, fitFacet, fitTier, type TierFit } from "./fit-tier.ts";
import {
  DEFAULT_READ_SD_DEG,
  DEFAULT_SD_MM,
  type FitSetting,
  type Measurement,
  measurementsIn,
} from "./measurements.ts";

export interface FittedTier extends TierFit {
  readonly tier: string;
  /** Facets measured by themselves. */
  readonly facets: readonly FacetFit[];
}
export interface AsCutAnswer {
  readonly tiers: readonly FittedTier[];
  /** The plan with cut tiers fixed at what was fitted. */
  readonly resolved: Plan;
  /** That plan solved: the depths of the tiers still to cut. */
  readonly solved: SolvedPlan;
  readonly findings: readonly Finding[];
}

const isCut = (tier: Tier): boolean => tier.asCut !== undefined;

/** The tier as it was cut: fitted angle and depth, no rule left to solve. */
const fixed = (tier: Tier, fit: TierFit): Tier => ({
  ...tier,
  armAngleDeg: fit.armAngleDeg,
  depth: { rule: "depth", mm: fit.depthMm },
});

/** Measurements of one tier: of the tier as a whole, and of single facets. */
function readingsOf(
  tier: Tier,
  plannedArmMm: number | null,
): { whole: Measurement[]; single: Measurement[] } {
  const asCut = tier.asCut ?? {};
  const whole = measurementsIn(asCut, null, plannedArmMm);
  const single = Object.entries(asCut.facets ?? {}).flatMap(([id, measured]) => {
    const k = Number(id.slice(id.lastIndexOf("/") + 1)) - 1;
    return k >= 0 && k < tier.count ? measurementsIn(measured, k, plannedArmMm) : [];
  });
  return { whole, single };
}

/** Everything the fit of tier i needs; earlier tiers stand as they were cut, or as solved again when not measured. */
function settingOf(plan: Plan, sofar: Plan, planned: SolvedPlan, i: number): FitSetting {
  const tier = plan.tiers[i];
  const around = solvePlan({ ...sofar, tiers: sofar.tiers.slice(0, i + 1) });
  const { first, count } = around.tiers[i];
  const { arm, lap } = plan.rig;
  const depthMm = planned.tiers[i].depthMm;
  const pose = {
    armAngleDeg: tier.armAngleDeg,
    planeMm: planned.radiusMm - depthMm,
    radiusMm: planned.radiusMm,
  };
  const azimuthsDeg = around.facets.slice(first, first + count).map((facet) => facet.azimuthDeg);
  const earlier = around.planes.slice(0, first);
  const cutTier: CutTier = {
    radiusMm: planned.radiusMm,
    side: tier.side,
    azimuthsDeg,
    earlier,
    alike: alikeFacets(azimuthsDeg, earlier),
  };
  return {
    tier: cutTier,
    plannedDeg: tier.armAngleDeg,
    plannedDepthMm: depthMm,
    sdMm: tier.asCut?.sdMm ?? DEFAULT_SD_MM,
    readSdDeg: tier.asCut?.readSdDeg ?? DEFAULT_READ_SD_DEG,
    isDopInTheWay: caliperOf(around, i, dopOf(plan, tier.side))?.isBlocked ?? false,
    hingeOffsetMm: arm?.hingeOffsetMm ?? 0,
    plannedArmMm: arm && lap ? rigSetting(arm, lap, pose).armLengthMm : null,
  };
}

function undeterminedFinding({ tier, angleFromPlan, depthFromPlan, wouldHelp }: FittedTier): BenchFinding[] {
  if (!angleFromPlan && !depthFromPlan) return [];
  return [
    {
      code: "undetermined",
      severity: "info",
      tier,
      data: { angleFromPlan, depthFromPlan, wouldHelp },
    },
  ];
}

/** A deviation from the fit beyond this many standard deviations is said. */
const ODD_SDS = 3;

function oddFindings(fit: FittedTier, tier: Tier): BenchFinding[] {
  const readings = fit.residuals
    .filter((r) => Math.abs(r.residual) > ODD_SDS * r.sd)
    .map((r): BenchFinding => {
      return {
        code: "measurements-disagree",
        severity: "warn",
        tier: fit.tier,
        data: { measure: r.measure, measured: r.measured, fitted: r.fitted },
      };
    });
  const deep = fit.facets
    .filter((f) => f.depthMm - fit.depthMm > ODD_SDS * Math.hypot(f.depthSdMm, fit.depthSdMm))
    .map((f): BenchFinding => {
      const facet = `${tier.id}/${f.k + 1}`;
      const extraMm = f.depthMm - fit.depthMm;
      return {
        code: "facet-too-deep",
        severity: "warn",
        tier: fit.tier,
        facets: [facet],
        data: { extraMm },
      };
    });
  return [...readings, ...deep];
}

/**
 * Fits every measured tier in cutting order, each on the piece as the earlier ones left it.
 * Means over a tier decide its fit; readings of single facets do only where there is no mean, and otherwise tell how deep that
 * facet is in its tier.
 */
export function fitAsCut(plan: Plan): AsCutAnswer {
  const planned = solvePlan(plan);
  const tiers: FittedTier[] = [];
  let resolved = plan;
  plan.tiers.forEach((tier, i) => {
    if (!isCut(tier)) return;
    const setting = settingOf(plan, resolved, planned, i);
    const { whole, single } = readingsOf(tier, setting.plannedArmMm);
    const fit = fitTier(setting, whole.length ? whole : single);
    const own = [...new Set(single.map((m) => m.k!))].sort((a, b) => a - b);
    tiers.push({ tier: tier.id, ...fit, facets: own.map((k) => fitFacet(setting, fit, k, single)) });
    resolved = { ...resolved, tiers: resolved.tiers.with(i, fixed(tier, fit)) };
  });
  const solved = solvePlan(resolved);
  const findings = tiers.flatMap((fit) => [
    ...undeterminedFinding(fit),
    ...oddFindings(fit, plan.tiers.find((tier) => tier.id === fit.tier)!),
  ]);
  return { tiers, resolved, solved, findings: [...findings, ...solved.findings] };
}

/** The answer as plain data for the command line. */
export function asCutData({ tiers, resolved, solved, findings }: AsCutAnswer) {
  return {
    tiers: tiers.map(({ facets, residuals, tier, ...fit }) => ({
      tier,
      ...fit,
      residuals: residuals.map(({ k, ...r }) => (k === null ? r : { ...r, facet: `${tier}/${k + 1}` })),
      facets: facets.map(({ k, ...f }) => ({ facet: `${tier}/${k + 1}`, ...f })),
    })),
    resolved,
    // No depth of 0 where a tier can't be reached: it keeps its angle and rule, and isn't cut yet.
    depths: solved.tiers.map(({ tierId, depthMm, met }) => ({
      tier: tierId,
      depthMm: met || depthMm > 0 ? depthMm : null,
      met,
    })),
    findings,
  };
}
