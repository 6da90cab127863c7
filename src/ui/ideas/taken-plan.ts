/** What becomes of the plan on the bench when an idea is opened in its place. */
import type { Plan } from "../../core/plan/document.ts";

/** What a pattern was made for: another marble or glass, wheel or zero, and it may not meet or not look like that. */
const groundOf = ({ piece, rig }: Pick<Plan, "piece" | "rig">): string =>
  JSON.stringify([
    piece.diameterMm,
    piece.glass,
    rig.wheelStops,
    rig.setUps?.front?.zeroDeg ?? 0,
    rig.setUps?.back?.zeroDeg ?? 0,
  ]);

/**
 * The idea's tiers on the bench as it is, or, where it was made for another marble or another wheel and would not meet there, on
 * its own (`isWhole`).
 */
export function takenPlan(
  { work: _, ...bench }: Plan,
  idea: Plan,
): { readonly plan: Plan; readonly isWhole: boolean } {
  const isWhole = groundOf(bench) !== groundOf(idea);
  const own = isWhole
    ? { piece: idea.piece, rig: idea.rig, ...(idea.pictures ? { pictures: idea.pictures } : {}) }
    : {};
  return { plan: { ...bench, ...own, tiers: idea.tiers }, isWhole };
}
