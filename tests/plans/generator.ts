/**
 * Plans as people make them, from a number: all seven depth rules, rings chained to one another on both sides, poles, neat
 * angles, offsets of none, a half and a quarter step, wheels that divide and that don't. Planes of such plans really meet
 * in a point, which planes drawn at random never do. Shares nothing with the engine but the shape of a plan.
 */
import fc from "fast-check";
import type { DepthRule, Plan, Tier } from "../../src/core/plan/document.ts";

/** Uniform numbers in [0, 1) from a seed (mulberry32, Ettinger 2017, public domain). */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const DIAMETERS = [15, 18, 22, 25, 29, 30, 34, 38, 50, 65, 80, 3, 300] as const;
const WHEELS = [null, 12, 30, 32, 48, 60, 64, 72, 80, 96, 96, 100, 120, 7] as const;
const RING_COUNTS = [3, 4, 5, 6, 8, 8, 9, 10, 12, 12, 16, 20, 24] as const;
const ODD_COUNTS = [1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 16, 18, 24, 32, 48, 60, 120] as const;
/** As shares of the diameter. */
const SIZES: Readonly<Record<"depth" | "width" | "gap" | "edge", readonly number[]>> = {
  depth: [0.005, 0.02, 0.05, 0.1, 0.2],
  width: [0.05, 0.15, 0.25, 0.4],
  gap: [0, 0.005, 0.02, 0.05],
  edge: [0.02, 0.05, 0.1, 0.2, 0.7],
};

/** The plan of a seed. The same seed gives the same plan. */
export function planOf(seed: number): Plan {
  const random = randomFrom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const happens = (share: number): boolean => random() < share;
  const diameterMm = pick(DIAMETERS);
  const base = pick(RING_COUNTS);
  const most = happens(0.05) ? 14 : 6;

  const ruleOf = (before: readonly Tier[]): DepthRule => {
    // most rings follow the one before, some an older one
    const named = happens(0.7) ? before[before.length - 1] : before[Math.floor(random() * before.length)];
    if (named && happens(0.5))
      return happens(0.5) ? { rule: "close", to: named.id } : { rule: "corners", of: named.id };
    const rule = pick(["touch", "touch", "touch", "depth", "width", "gap", "edge"] as const);
    if (rule === "touch") return { rule };
    return { rule, mm: Number((pick(SIZES[rule]) * diameterMm).toFixed(2)) };
  };
  const angle = (): number => {
    if (happens(0.12)) return 90;
    if (happens(0.8)) return 5 * Math.floor(random() * 18);
    return happens(0.5) ? 2.5 * Math.floor(random() * 36) : Math.round(random() * 899) / 10;
  };
  const tiers: Tier[] = [];
  const count = 1 + Math.floor(random() * most);
  while (tiers.length < count) {
    const armAngleDeg = angle();
    const facets = armAngleDeg === 90 ? 1 : happens(0.75) ? base : pick(ODD_COUNTS);
    tiers.push({
      id: `t${tiers.length}`,
      name: `Ring ${tiers.length + 1}`,
      side: happens(0.7) ? "front" : "back",
      armAngleDeg,
      count: facets,
      startDeg: (pick([0, 0, 0.5, 0.25]) * 360) / facets,
      depth: ruleOf(tiers),
    });
    // the same ring written down twice
    if (happens(0.03)) tiers.push({ ...tiers[tiers.length - 1], id: `t${tiers.length}` });
  }
  return {
    format: "glintwright-plan",
    version: 1,
    name: `Plan ${seed}`,
    piece: { diameterMm, glass: happens(0.5) ? "borosilicate" : "soda-lime" },
    rig: { wheelStops: pick(WHEELS) },
    ...(happens(0.15) ? { toleranceMm: pick([0.01, 0.1, 0.3]) } : {}),
    tiers,
  };
}

/** The same as an arbitrary; a failing one is named by its seed and not made smaller. */
export const madePlan: fc.Arbitrary<Plan> = fc.noShrink(fc.integer({ min: 0, max: 2 ** 31 - 1 }).map(planOf));
