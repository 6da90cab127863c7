/**
 * Where a dragged tier wants to rest: wheel stops for its start, and the depths and arm angles at which its facets just
 * touch, close the band to an earlier tier, or come to an earlier tier's corners. Pure; millimetres and degrees.
 *
 * A snap carries the depth rule that it stands for, so that what was met by hand stays met when earlier tiers change.
 */
import type { DepthRule, Plan, Side, Tier } from "./document.ts";
import { nearestStop, stopsOf, wrapDeg, zeroOf } from "./place.ts";
import { solvePlan } from "./solve.ts";

export type SnapName =
  | { readonly kind: "stop"; readonly stop: number }
  | { readonly kind: "touch" }
  | { readonly kind: "close"; readonly to: string }
  | { readonly kind: "corners"; readonly of: string };

export interface Snap {
  readonly name: SnapName;
  /** Degrees or millimetres, by what is dragged. */
  readonly value: number;
  /** The rule that the tier takes on when let go here; missing: it keeps its own. */
  readonly depth?: DepthRule;
}

/** How many earlier tiers are offered to close to or to come to the corners of. */
const TIERS_OFFERED = 3;
/** A tier this near the equator borders both sides. */
const GIRDLE_DEG = 15;
/** Angles are looked at in steps this wide; two snaps of one name within a step may be missed. */
const ANGLE_STEP_DEG = 0.5;
/** Angles are found to this: far below what an arm can be set to. */
const ANGLE_FOUND_DEG = 1e-7;
/** Angles at which the tier takes on the snap's rule are given to a tenth, the rule does the rest. */
const ANGLE_ROUNDED_DEG = 0.1;

const signedAngle = (tier: Tier): number => (tier.side === "front" ? tier.armAngleDeg : -tier.armAngleDeg);

/** Earlier tiers that a tier can come next to, the nearest in angle first. */
export function tiersBeside(plan: Plan, tierIndex: number): Tier[] {
  const own = plan.tiers[tierIndex];
  const away = (t: Tier): number => Math.abs(signedAngle(t) - signedAngle(own));
  return plan.tiers
    .slice(0, tierIndex)
    .filter((t) => t.side === own.side || Math.min(t.armAngleDeg, own.armAngleDeg) <= GIRDLE_DEG)
    .sort((a, b) => away(a) - away(b))
    .slice(0, TIERS_OFFERED);
}

/** The rules a tier can snap to, with their names. One facet alone can't touch. */
export function snapRules(plan: Plan, tierIndex: number): { name: SnapName; depth: DepthRule }[] {
  const rules: { name: SnapName; depth: DepthRule }[] = [];
  if (plan.tiers[tierIndex].count > 1) rules.push({ name: { kind: "touch" }, depth: { rule: "touch" } });
  for (const { id } of tiersBeside(plan, tierIndex)) {
    rules.push({ name: { kind: "close", to: id }, depth: { rule: "close", to: id } });
    rules.push({ name: { kind: "corners", of: id }, depth: { rule: "corners", of: id } });
  }
  return rules;
}

/** What one tier's depth would be by a rule; null where the rule can't be met. */
export type DepthByRule = (depth: DepthRule, armAngleDeg: number) => number | null;

/**
 * Solves one tier again and again while the tiers before it stand still: they are held at the depths they have now.
 */
export function depthProbe(plan: Plan, tierIndex: number): DepthByRule {
  const solved = solvePlan({ ...plan, tiers: plan.tiers.slice(0, tierIndex) });
  const before = plan.tiers
    .slice(0, tierIndex)
    .map((t, i): Tier => ({ ...t, depth: { rule: "depth", mm: solved.tiers[i].depthMm } }));
  const own = plan.tiers[tierIndex];
  return (depth, armAngleDeg) => {
    const tier: Tier = { ...own, depth, armAngleDeg };
    const last = solvePlan({ ...plan, tiers: [...before, tier] }).tiers[tierIndex];
    return last.met && last.depthMm > 0 ? last.depthMm : null;
  };
}

/** Depths at which something comes to meet, ascending; each rule at most once. */
export function depthSnaps(plan: Plan, tierIndex: number, probe = depthProbe(plan, tierIndex)): Snap[] {
  const { armAngleDeg } = plan.tiers[tierIndex];
  return snapRules(plan, tierIndex)
    .flatMap(({ name, depth }): Snap[] => {
      const value = probe(depth, armAngleDeg);
      return value === null ? [] : [{ name, value, depth }];
    })
    .sort((a, b) => a.value - b.value);
}

/** Snaps of the arm angle within `reachDeg` of an angle, the nearest first. */
export type AngleSnapper = (nearDeg: number, reachDeg: number) => Snap[];

/**
 * Finds angles at which the depth by the tier's own rule is also the depth by another. Angles already looked at are
 * remembered, so moving on by a little costs little.
 */
export function angleSnapper(
  plan: Plan,
  tierIndex: number,
  probe = depthProbe(plan, tierIndex),
): AngleSnapper {
  const own = plan.tiers[tierIndex].depth;
  const others = snapRules(plan, tierIndex).filter(({ depth }) => !isSameRule(depth, own));
  const found = new Map<string, Snap | null>();
  const known = new Map<string, number | null>();
  const difference = (rule: DepthRule, deg: number): number | null => {
    const [a, b] = [remembered(own, deg), remembered(rule, deg)];
    return a === null || b === null ? null : b - a;
  };
  function remembered(rule: DepthRule, deg: number): number | null {
    const key = `${JSON.stringify(rule)}@${deg}`;
    let value = known.get(key);
    if (value === undefined) {
      value = probe(rule, deg);
      known.set(key, value);
    }
    return value;
  }

  return (nearDeg, reachDeg) => {
    const first = Math.floor(Math.max(0, nearDeg - reachDeg) / ANGLE_STEP_DEG);
    const last = Math.ceil(Math.min(90, nearDeg + reachDeg) / ANGLE_STEP_DEG);
    const snaps: Snap[] = [];
    for (const { name, depth } of others) {
      for (let k = first; k < last; k++) {
        const key = `${JSON.stringify(depth)}#${k}`;
        let snap = found.get(key);
        if (snap === undefined) {
          const root = rootBetween(
            (deg) => difference(depth, deg),
            k * ANGLE_STEP_DEG,
            (k + 1) * ANGLE_STEP_DEG,
          );
          snap = root === null ? null : angleSnap(name, depth, own, root);
          found.set(key, snap);
        }
        if (snap && Math.abs(snap.value - nearDeg) <= reachDeg) snaps.push(snap);
      }
    }
    return snaps.sort((a, b) => Math.abs(a.value - nearDeg) - Math.abs(b.value - nearDeg));
  };
}

/** A tier with a plain depth takes on the other rule; one that already meets something keeps its rule and gains the other exactly. */
function angleSnap(name: SnapName, depth: DepthRule, own: DepthRule, deg: number): Snap {
  const isPlain = own.rule === "depth" || own.rule === "width" || own.rule === "edge" || own.rule === "gap";
  if (!isPlain) return { name, value: deg };
  return { name, value: Math.round(deg / ANGLE_ROUNDED_DEG) * ANGLE_ROUNDED_DEG, depth };
}

export function isSameRule(a: DepthRule, b: DepthRule): boolean {
  if (a.rule === "close" && b.rule === "close") return a.to === b.to;
  if (a.rule === "corners" && b.rule === "corners") return a.of === b.of;
  return a.rule === b.rule;
}

/** Where f changes sign between two places, by halving; null when it does not or is unknown there. */
export function rootBetween(f: (x: number) => number | null, from: number, to: number): number | null {
  let [low, high] = [from, to];
  const fLow = f(low);
  const fHigh = f(high);
  if (fLow === null || fHigh === null) return null;
  if (fLow === 0) return low;
  if (fLow * fHigh >= 0) return null;
  while (high - low > ANGLE_FOUND_DEG) {
    const middle = (low + high) / 2;
    const value = f(middle);
    if (value === null) return null;
    if (value * fLow > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The wheel stop nearest to an azimuth, as a start in [0, 360); null for a free protractor. */
export function startSnap(plan: Plan, side: Side, nearDeg: number): Snap | null {
  const stops = stopsOf(plan, side);
  if (stops === null) return null;
  const zero = zeroOf(plan, side);
  const stop = nearestStop(nearDeg, stops, zero);
  return { name: { kind: "stop", stop }, value: wrapDeg(zero + (stop * 360) / stops) };
}
