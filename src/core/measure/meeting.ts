/**
 * Whether a plan meets, asked of thousands: all rings closed in themselves, and all tiers joined to another. Says what the whole
 * report says (a test holds the two together), but looks no farther than it has to.
 */
import { clearanceFindings } from "../check/findings-clearance.ts";
import { meetingPairs } from "../check/pairs.ts";
import { gapBetween, isCovered, meetingPoint } from "../geometry/circles.ts";
import type { Solid } from "../geometry/solid-types.ts";
import { toleranceOf } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";

/** What can't be ground: a rule unmet, nothing left, a facet under the dop or in the design inside. */
function isStopped(solved: SolvedPlan, solid: Solid): boolean {
  const checked = { solved, solid, pairs: [], corners: [], toleranceMm: toleranceOf(solved.plan) };
  const stops = [...solved.findings, ...clearanceFindings(checked)];
  return solid.vanished || stops.some(({ severity }) => severity === "stop");
}

const PAIR_STRIDE = 4096;
const keyOf = (a: number, b: number): number => Math.min(a, b) * PAIR_STRIDE + Math.max(a, b);

/** Nothing is stopped or swallowed, and next neighbours within each tier of two or more touch or share edges. */
export function ringsMeet(solved: SolvedPlan, solid: Solid): boolean {
  if (solid.facets.some(({ swallowed }) => swallowed) || isStopped(solved, solid)) return false;
  const { planes } = solved;
  const tolerance = toleranceOf(solved.plan) / solved.radiusMm;
  const shared = new Set(solid.edges.filter((e) => e.length > tolerance).map(({ a, b }) => keyOf(a, b)));
  const meet = (a: number, b: number): boolean =>
    shared.has(keyOf(a, b)) ||
    (Math.abs(gapBetween(planes[a], planes[b])) <= tolerance &&
      !isCovered(meetingPoint(planes[a], planes[b]), a, b, planes));
  return solved.tiers.every(({ first, count }) => {
    const pairs = count >= 3 ? count : count - 1;
    return Array.from({ length: pairs }, (_, k) => k).every((k) =>
      meet(first + k, first + ((k + 1) % count)),
    );
  });
}

/** Every tier touches or shares an edge with another one, unless it is the only one on its side. */
export function tiersMeet(solved: SolvedPlan, solid: Solid): boolean {
  const { facets, plan } = solved;
  const tolerance = toleranceOf(plan) / solved.radiusMm;
  const joined = new Set<number>();
  const join = (a: number, b: number): void => {
    const [s, t] = [facets[a].tierIndex, facets[b].tierIndex];
    if (s !== t) joined.add(s).add(t);
  };
  for (const { a, b, length } of solid.edges) if (length > tolerance) join(a, b);
  const isAlone = (t: number): boolean => {
    const { side } = plan.tiers[t];
    return !joined.has(t) && plan.tiers.some((other, i) => i !== t && other.side === side);
  };
  if (!plan.tiers.some((_, t) => isAlone(t))) return true;
  // a touch joins too: the pairs that tell are only asked for now
  for (const { a, b, state } of meetingPairs(solved, solid, tolerance)) if (state !== "gap") join(a, b);
  return !plan.tiers.some((_, t) => isAlone(t));
}
