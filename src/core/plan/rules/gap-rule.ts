/** `gap` and `touch`: the depth at which the widest pair's circles stand a given distance apart, in closed form. */
import { type Answer, neighbourPairs, type TierContext, widestPairs } from "./tier-context.ts";

/** @param gap asked between next neighbours, radians along the surface; 0 = touch */
export function depthForGap(context: TierContext, gap: number): Answer {
  const pairs = neighbourPairs(context.normals);
  if (pairs.length === 0) return { depth: 0, unmet: { why: "single" } };
  const { delta } = widestPairs(pairs)[0];
  // delta - 2 rho = gap; at depth 0 the facets are points and the gap is delta.
  const rho = (delta - gap) / 2;
  if (rho < 0) return { depth: 0, unmet: { why: "already-closer", asked: gap, got: delta } };
  if (delta <= context.tolerance * 1e-6)
    return { depth: 0, unmet: { why: "same-place", asked: gap, got: delta } };
  // 1 - cos rho without losing digits for small circles
  return { depth: 2 * Math.sin(rho / 2) ** 2 };
}
