/**
 * "How deep would this tier be if its rule, or its arm angle, were another?", asked many times over while the tiers
 * before it stand still. Millimetres and degrees.
 */
import type { Vec3 } from "../geometry/vec.ts";
import { dot } from "../geometry/vec.ts";
import type { DepthRule, Plan, Tier } from "./document.ts";
import { placeFacets } from "./place.ts";
import { cornersOf } from "./rules/corners-rule.ts";
import type { TierContext } from "./rules/tier-context.ts";
import { solvePlan, toleranceOf } from "./solve.ts";

/** Depth in mm of the tier by a rule at an arm angle; null where the rule can't be met or leaves nothing to cut. */
export type TierProbe = (depth: DepthRule, armAngleDeg: number) => number | null;

/** What a depth rule of tier `tierIndex` sees: earlier tiers final. @throws when there is no such tier */
export function contextOf(plan: Plan, tierIndex: number): TierContext {
  const earlierTiers = plan.tiers.slice(0, tierIndex);
  const before = solvePlan({ ...plan, tiers: earlierTiers });
  const facets = placeFacets(plan).filter((f) => f.tierIndex === tierIndex);
  return {
    tier: plan.tiers[tierIndex],
    normals: facets.map((f) => f.frame.n),
    earlier: before.planes,
    earlierTiers: before.tiers.map(({ first, count }, i) => ({ tier: earlierTiers[i], first, count })),
    radiusMm: before.radiusMm,
    tolerance: toleranceOf(plan) / before.radiusMm,
  };
}

/** Corners of every earlier tier by its id, unit sphere; empty lists where facets stand apart. */
export function cornersBefore(context: TierContext): Map<string, readonly Vec3[]> {
  return new Map(context.earlierTiers.map((range) => [range.tier.id, cornersOf(context, range)]));
}

/** @param tierIndex position of the tier asked about; @throws when there is no such tier */
export function tierProbe(plan: Plan, tierIndex: number): TierProbe {
  const context = contextOf(plan, tierIndex);
  const earlier = plan.tiers.slice(0, tierIndex);
  const held = Object.fromEntries(
    solvePlan({ ...plan, tiers: earlier }).tiers.map((t) => [t.tierId, t.depthMm]),
  );
  const corners = cornersBefore(context);
  const own = plan.tiers[tierIndex];

  return (depth, armAngleDeg) => {
    if (depth.rule === "depth") return depth.mm;
    const tier: Tier = { ...own, depth, armAngleDeg };
    if (depth.rule === "corners") return toCorners(tier, corners.get(depth.of) ?? []);
    const last = solvePlan({ ...plan, tiers: [...earlier, tier] }, held).tiers[tierIndex];
    return last.met && last.depthMm > 0 ? last.depthMm : null;
  };

  /** The corners stand still, so this needs no cut: the deepest of the facets, each at its outermost corner. */
  function toCorners(tier: Tier, at: readonly Vec3[]): number | null {
    if (at.length === 0) return null;
    const { radiusMm } = context;
    const planes = placeFacets({ ...plan, tiers: [tier] });
    const depth = Math.max(...planes.map(({ frame }) => 1 - Math.max(...at.map((c) => dot(frame.n, c)))));
    return depth > 0 ? depth * radiusMm : null;
  }
}
