/**
 * What a depth rule may look at: one tier, with all earlier tiers final and later ones uncut.
 * Unit sphere; a depth is 1 - h and the same for every facet of the tier.
 */
import type { Plane } from "../../geometry/plane.ts";
import { angleBetween, type Vec3 } from "../../geometry/vec.ts";
import type { Tier } from "../document.ts";
import type { Unmet } from "../finding.ts";

/** Facets of one tier within the list of earlier planes: first .. first + count - 1. */
export interface TierRange {
  readonly tier: Tier;
  readonly first: number;
  readonly count: number;
}

export interface TierContext {
  readonly tier: Tier;
  readonly normals: readonly Vec3[];
  /** Planes of all earlier tiers, final. */
  readonly earlier: readonly Plane[];
  readonly earlierTiers: readonly TierRange[];
  readonly radiusMm: number;
  /** The person's tolerance as a fraction of the radius. */
  readonly tolerance: number;
}

/** The earlier tier that a rule names; the file format guarantees that there is one. */
export function namedTier(context: TierContext, id: string): TierRange {
  const found = context.earlierTiers.find((t) => t.tier.id === id);
  if (!found) throw new Error(`tier ${context.tier.id} refers to ${id}, which is not an earlier tier`);
  return found;
}

/** A depth, and why it doesn't do what was asked where it doesn't. */
export interface Answer {
  readonly depth: number;
  readonly unmet?: Unmet;
  /** Where a rule brings each facet to a corner of the tier `of`. */
  readonly overshoot?: Overshoot;
}

/** For each facet by how much its plane passes below its own corner, as a fraction of the radius (>= 0). */
export interface Overshoot {
  readonly of: string;
  readonly by: readonly number[];
}

export interface Pair {
  readonly a: number;
  readonly b: number;
  /** Angle between the normals, radians. */
  readonly delta: number;
}

/** Facets next to each other in a tier: n pairs for n >= 3, one for 2, none for 1. Positions within the tier. */
export function neighbourPairs(normals: readonly Vec3[]): Pair[] {
  const n = normals.length;
  const count = n >= 3 ? n : n - 1;
  return Array.from({ length: Math.max(0, count) }, (_, a) => {
    const b = (a + 1) % n;
    return { a, b, delta: angleBetween(normals[a], normals[b]) };
  });
}

/** Pairs whose angle is the widest, to within what uneven rounding of equal steps can cause. */
export function widestPairs(pairs: readonly Pair[]): Pair[] {
  const widest = Math.max(...pairs.map((p) => p.delta));
  return pairs.filter((p) => p.delta >= widest - 1e-9);
}

/** Earlier planes followed by this tier's at distance h. */
export const planesAt = (context: TierContext, h: number): Plane[] => [
  ...context.earlier,
  ...context.normals.map((n) => ({ n, h })),
];
