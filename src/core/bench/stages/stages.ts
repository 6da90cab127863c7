/**
 * From a tier's final depth to what each abrasive leaves: depth, the width to stop at, the width while a facet is ground
 * and the glass that one pass takes. After stage i of m the tier stands at its final depth less the damage still to come,
 * the sum of `damageUm` of stages i .. m-1. A tier that is to stay ground or pre-polished ends with an earlier stage: m is
 * the last of its own stages, and those after it find it finished and take nothing.
 */
import type { Finish, Stage, Tier } from "../../plan/document.ts";
import type { SolvedPlan } from "../../plan/solved.ts";
import type { BenchFinding } from "../bench-finding.ts";
import { damageUm } from "./default-stages.ts";
import { type Depths, depthsBefore, removedBy, sizeAt, tierFacets, UNCUT, widestGap } from "./half-cut.ts";

const MM_PER_UM = 1e-3;

/** The face that a stage leaves: as stated, else the last polishes, of three or more the one before pre-polishes, the others grind. */
export function leftBy(stages: readonly Stage[], i: number): Finish {
  const stated = stages[i].leaves;
  if (stated) return stated;
  if (i === stages.length - 1) return "polished";
  return i === stages.length - 2 && stages.length > 2 ? "prepolished" : "ground";
}

const FINENESS: Readonly<Record<Finish, number>> = { ground: 0, prepolished: 1, polished: 2 };

/**
 * How many of the stages a tier goes through: up to the last that leaves a face no finer than the tier is to have. A list
 * that begins finer than that is used up to its first stage, and a tier without a stated finish goes through all.
 */
export function stageCount(tier: Pick<Tier, "finish">, stages: readonly Stage[]): number {
  const { finish = "polished" } = tier;
  if (finish === "polished") return stages.length;
  const last = stages.findLastIndex((_, i) => FINENESS[leftBy(stages, i)] <= FINENESS[finish]);
  return Math.min(stages.length, Math.max(1, last + 1));
}

/** Whether a stage ends by looking at the polish, not by a count of strokes. */
export const endsByLooking = (stages: readonly Stage[], i: number): boolean =>
  leftBy(stages, i) === "polished";

/**
 * Depth after each stage, mm, never below 0: a stage whose successors' damage exceeds the final depth is at 0.
 * @param count stages that the tier goes through; those after them leave it at its final depth
 */
export function stageDepths(
  finalDepthMm: number,
  stages: readonly Stage[],
  count: number = stages.length,
): readonly number[] {
  const damages = stages.slice(0, count).map((stage) => damageUm(stage) * MM_PER_UM);
  return stages.map((_, i) => {
    const toCome = damages.slice(i, -1).reduce((sum, mm) => sum + mm, 0);
    return Math.max(0, finalDepthMm - toCome);
  });
}

/** Depths after each stage of one tier, as its own finish asks. */
export const tierStageDepths = (
  solved: SolvedPlan,
  tierIndex: number,
  stages: readonly Stage[],
): readonly number[] =>
  stageDepths(solved.tiers[tierIndex].depthMm, stages, stageCount(solved.plan.tiers[tierIndex], stages));

/** First stage with anything to grind; -1 when none has (a tier of depth 0). */
const firstStage = (depths: readonly number[]): number => depths.findIndex((mm) => mm > 0);

export interface TierStage {
  readonly stage: string;
  readonly depthMm: number;
  /** The widest facet of the tier with the whole tier at this depth, earlier tiers final, later tiers uncut. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** The widest between neighbours of the tier; null for a facet alone. */
  readonly gapMm: number | null;
}

/** One entry a stage. */
export function tierStages(
  solved: SolvedPlan,
  tierIndex: number,
  stages: readonly Stage[],
): readonly TierStage[] {
  const tier = solved.tiers[tierIndex];
  const before = depthsBefore(solved, tierIndex);
  const facets = tierFacets(tier);
  return tierStageDepths(solved, tierIndex, stages).map((depthMm, i) => {
    const depths = [...before];
    for (const k of facets) depths[k] = depthMm;
    const sizes = facets.map((k) => sizeAt(solved, depths, k));
    return {
      stage: stages[i].id,
      depthMm,
      widthMm: Math.max(0, ...sizes.map((size) => size.widthMm)),
      heightMm: Math.max(0, ...sizes.map((size) => size.heightMm)),
      gapMm: widestGap(solved, tier, depthMm),
    };
  });
}

export interface FacetStage {
  readonly stage: string;
  /** Width at which to stop this facet, while its tier's later facets still stand at the stage before. */
  readonly widthWhileGroundMm: number;
  readonly removeMm3: number;
}

/**
 * For every facet of a tier, in the order in which they are ground, one entry a stage: earlier tiers final, later uncut.
 * @param facets all of the tier; default plan order
 */
export function facetStages(
  solved: SolvedPlan,
  tierIndex: number,
  stages: readonly Stage[],
  facets: readonly number[] = tierFacets(solved.tiers[tierIndex]),
): readonly (readonly FacetStage[])[] {
  const work: FacetStage[][] = facets.map(() => []);
  let depths: Depths = depthsBefore(solved, tierIndex);
  tierStageDepths(solved, tierIndex, stages).forEach((depthMm, i) => {
    facets.forEach((k, position) => {
      const removeMm3 = removedBy(solved, depths, k, depthMm);
      depths = depths.with(k, depthMm);
      const widthWhileGroundMm = depthMm > UNCUT ? sizeAt(solved, depths, k).widthMm : 0;
      work[position].push({ stage: stages[i].id, widthWhileGroundMm, removeMm3 });
    });
  });
  return work;
}

/** Says with which stage to start when a tier is too shallow for the coarse ones; nothing otherwise. */
export function startFindings(
  tierId: string,
  finalDepthMm: number,
  stages: readonly Stage[],
  count: number = stages.length,
): readonly BenchFinding[] {
  const start = firstStage(stageDepths(finalDepthMm, stages, count));
  if (start === 0 || stages.length === 0) return [];
  if (start < 0)
    return [
      {
        code: "nothing-to-grind",
        severity: "warn",
        tier: tierId,
        data: { depthMm: finalDepthMm },
      },
    ];
  const stage = stages[start];
  return [
    {
      code: "start-at-stage",
      severity: "warn",
      tier: tierId,
      data: { stage: stage.id, stageName: stage.name, depthMm: finalDepthMm },
    },
  ];
}
