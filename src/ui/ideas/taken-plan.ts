/** What becomes of the plan on the bench when an idea is opened in its place. */
import type { Plan } from "../../core/plan/document.ts";

/**
 * The idea's tiers on the bench as it is, or, where it was made for another marble or another wheel and would not meet there, on
 * its own (`isWhole`).
 */
export function takenPlan(
  { work: _, ...bench }: Plan,
  idea: Plan,
): { readonly plan: Plan; readonly isWhole: boolean } {
  const isWhole =
    bench.piece.diameterMm !== idea.piece.diameterMm || bench.rig.wheelStops !== idea.rig.wheelStops;
  const own = isWhole
    ? { piece: idea.piece, rig: idea.rig, ...(idea.pictures ? { pictures: idea.pictures } : {}) }
    : {};
  return { plan: { ...bench, ...own, tiers: idea.tiers }, isWhole };
}
