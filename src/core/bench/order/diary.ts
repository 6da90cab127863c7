/** The piece at every moment of the work: which facet was ground last, to which depth, and how wide it is then. */
import type { Stage } from "../../plan/document.ts";
import type { SolvedPlan } from "../../plan/solved.ts";
import { type FacetOrder, facetsInOrder } from "../rig/set-up.ts";
import { type Depths, removedBy, sizeAt, UNCUT } from "../stages/half-cut.ts";
import { stageCount, tierStageDepths } from "../stages/stages.ts";

/** Grind facet `k` to a depth; `stage` is a position in the list of stages, null in a diary without stages. */
export interface Move {
  readonly k: number;
  readonly stage: number | null;
  readonly depthMm: number;
}
export interface Moment extends Move {
  readonly facet: string;
  readonly tier: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly removeMm3: number;
}

/** Walks through the moves from the uncut ball; moment i is the piece after move i. */
export function walk(solved: SolvedPlan, moves: readonly Move[]): readonly Moment[] {
  let depths: Depths = solved.facets.map(() => UNCUT);
  return moves.map((move) => {
    const { k, depthMm } = move;
    const removeMm3 = removedBy(solved, depths, k, depthMm);
    depths = depths.with(k, Math.max(depths[k], depthMm));
    const { widthMm, heightMm } = sizeAt(solved, depths, k);
    const facet = solved.facets[k];
    return {
      ...move,
      facet: facet.id,
      tier: solved.tiers[facet.tierIndex].tierId,
      widthMm,
      heightMm,
      removeMm3,
    };
  });
}

/** Depth of every facet after the first `count` moves. */
export function depthsAfter(solved: SolvedPlan, moves: readonly Move[], count: number): Depths {
  const depths = solved.facets.map(() => UNCUT);
  for (const { k, depthMm } of moves.slice(0, count)) depths[k] = Math.max(depths[k], depthMm);
  return depths;
}

/** Every facet straight to its final depth, tier by tier. */
export const finalMoves = (solved: SolvedPlan): readonly Move[] =>
  solved.tiers.flatMap((tier, i) =>
    facetsInOrder(solved, i, "ring").map((k): Move => ({ k, stage: null, depthMm: tier.depthMm })),
  );

/** The passes of one tier at one stage; none when the stage has nothing to grind, or the tier is to stay as coarser ones leave it. */
const pass = (
  solved: SolvedPlan,
  tierIndex: number,
  stages: readonly Stage[],
  stage: number,
  order: FacetOrder,
): Move[] => {
  if (stage >= stageCount(solved.plan.tiers[tierIndex], stages)) return [];
  const depthMm = tierStageDepths(solved, tierIndex, stages)[stage];
  return depthMm > 0 ? facetsInOrder(solved, tierIndex, order).map((k) => ({ k, stage, depthMm })) : [];
};

export type Way = "finish-each" | "rough-all";

/** One tier at one stage: the unit in which work is ordered. */
export interface Pass {
  readonly tierIndex: number;
  readonly stage: number;
  readonly moves: readonly Move[];
}

/** Runs of tiers that follow each other on one side of the piece. */
function setUpRuns(solved: SolvedPlan): readonly (readonly number[])[] {
  const runs: number[][] = [];
  solved.plan.tiers.forEach((tier, i) => {
    const last = runs.at(-1);
    if (last && solved.plan.tiers[last[0]].side === tier.side) last.push(i);
    else runs.push([i]);
  });
  return runs;
}

/**
 * The passes in order. `finish-each`: every stage of a tier before the arm moves. `rough-all`: every tier of a set-up
 * at one stage before the next disc. Both finish a side before the piece is turned over. Empty passes are left out.
 */
export function passesOf(
  solved: SolvedPlan,
  stages: readonly Stage[],
  way: Way,
  order: FacetOrder = "ring",
): readonly Pass[] {
  const of = (tierIndex: number, stage: number): Pass => ({
    tierIndex,
    stage,
    moves: pass(solved, tierIndex, stages, stage, order),
  });
  const all =
    way === "finish-each"
      ? solved.tiers.flatMap((_, tier) => stages.map((_, stage) => of(tier, stage)))
      : setUpRuns(solved).flatMap((run) => stages.flatMap((_, stage) => run.map((tier) => of(tier, stage))));
  return all.filter((p) => p.moves.length > 0);
}
