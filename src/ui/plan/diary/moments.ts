/**
 * The diary of the work: the piece after each facet, in cutting order. Facets not yet cut are planes that miss the ball,
 * so positions stay what they are in the finished piece.
 */

import { depthsAfter, finalMoves } from "../../../core/bench/order/diary.ts";
import { sizeAt } from "../../../core/bench/stages/half-cut.ts";
import type { SolvedPlan } from "../../../core/plan/solved.ts";

export interface DiaryMoment {
  /** How many facets are cut at this moment, 1 .. all. */
  readonly count: number;
  readonly facetId: string;
  readonly tierIndex: number;
  /** Position in its tier, from 1. */
  readonly place: number;
  /** Width that the facet has right after it is cut. */
  readonly widthMm: number;
  readonly isLastOfTier: boolean;
}

/** One moment a facet. */
export function momentsOf(solved: SolvedPlan): DiaryMoment[] {
  const moves = finalMoves(solved);
  return moves.map(({ k }, i) => {
    const placed = solved.facets[k];
    const { first, count } = solved.tiers[placed.tierIndex];
    return {
      count: i + 1,
      facetId: placed.id,
      tierIndex: placed.tierIndex,
      place: k - first + 1,
      widthMm: sizeAt(solved, depthsAfter(solved, moves, i + 1), k).widthMm,
      isLastOfTier: k === first + count - 1,
    };
  });
}
