/**
 * Where a dragged tier wants to rest: wheel stops for its start, and the depths and arm angles at which its facets just
 * touch, close the band to an earlier tier, or come to an earlier tier's corners. Pure; millimetres and degrees.
 *
 * A snap carries the depth rule that it stands for, so that what was met by hand stays met when earlier tiers change.
 * Finding snaps takes work, so they come one at a time from generators, the likely ones first: a caller takes as many
 * as it has time for between two frames.
 */
import type { DepthRule, Plan, Side, Tier } from "./document.ts";
import { nearestStop, stopsOf, wrapDeg, zeroOf } from "./place.ts";
import { isMeeting, isSameRule, type MeetRule, namedTierOf } from "./rules/amounts.ts";
import { NOTHING_KNOWN, RULES } from "./rules/records.ts";
import { type TierProbe, tierProbe } from "./tier-probe.ts";

export type SnapName =
  | { readonly kind: "stop"; readonly stop: number }
  | { readonly kind: "rule"; readonly rule: MeetRule };

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
const ANGLE_FOUND_DEG = 1e-9;
/** Angles at which the tier takes on the snap's rule are given in steps of this, the rule does the rest. */
const ANGLE_GIVEN_DEG = 0.1;

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

interface NamedRule {
  readonly name: SnapName;
  readonly depth: DepthRule;
}

/** The rules a tier can snap to, the quickly solved ones first. One facet alone meets none of its own tier. */
export function snapRules(plan: Plan, tierIndex: number): NamedRule[] {
  const beside = tiersBeside(plan, tierIndex);
  const isAlone = plan.tiers[tierIndex].count < 2;
  const kinds = Object.values(RULES).toSorted((a, b) => a.cost - b.cost);
  const rules = kinds.flatMap(({ from }): DepthRule[] => {
    const rule = from(NOTHING_KNOWN);
    if (namedTierOf(rule) === null) return isAlone ? [] : [rule];
    return beside.map(({ id }) => from({ ...NOTHING_KNOWN, other: id }));
  });
  return rules.filter(isMeeting).map((rule) => ({ name: { kind: "rule", rule }, depth: rule }));
}

/** Depths at which something comes to meet, one a step; null is a step that found none. */
export function* depthSnaps(plan: Plan, tierIndex: number): Generator<Snap | null> {
  const probe = tierProbe(plan, tierIndex);
  const { armAngleDeg } = plan.tiers[tierIndex];
  for (const { name, depth } of snapRules(plan, tierIndex)) {
    const value = probe(depth, armAngleDeg);
    yield value === null ? null : { name, value, depth };
  }
}

/**
 * Arm angles at which the depth by the tier's own rule is also the depth by another, from the present angle outward;
 * null is a step that found none.
 */
export function* angleSnaps(plan: Plan, tierIndex: number): Generator<Snap | null> {
  const { armAngleDeg, depth: own } = plan.tiers[tierIndex];
  const probe = remembering(tierProbe(plan, tierIndex));
  const others = snapRules(plan, tierIndex).filter(({ depth }) => !isSameRule(depth, own));
  const cells = Math.round(90 / ANGLE_STEP_DEG);
  const home = Math.min(cells - 1, Math.floor(armAngleDeg / ANGLE_STEP_DEG));
  for (let away = 0; away < cells; away++) {
    for (const cell of away === 0 ? [home] : [home - away, home + away]) {
      if (cell < 0 || cell >= cells) continue;
      for (const { name, depth } of others) {
        const root = rootBetween(
          (deg) => difference(probe, own, depth, deg),
          cell * ANGLE_STEP_DEG,
          (cell + 1) * ANGLE_STEP_DEG,
        );
        yield root === null ? null : angleSnap(name, depth, own, root);
      }
    }
  }
}

function difference(probe: TierProbe, own: DepthRule, other: DepthRule, deg: number): number | null {
  const a = probe(own, deg);
  const b = a === null ? null : probe(other, deg);
  return a === null || b === null ? null : b - a;
}

/** Cells share their borders, and all rules share the tier's own: each is asked once. */
function remembering(probe: TierProbe): TierProbe {
  const known = new Map<string, number | null>();
  return (depth, deg) => {
    const key = `${JSON.stringify(depth)}@${deg}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = probe(depth, deg);
    known.set(key, value);
    return value;
  };
}

/** A tier with a plain depth takes on the other rule; one that already meets something keeps its rule and gains the other exactly. */
function angleSnap(name: SnapName, depth: DepthRule, own: DepthRule, deg: number): Snap {
  if (isMeeting(own)) return { name, value: deg };
  return { name, value: Number((Math.round(deg / ANGLE_GIVEN_DEG) * ANGLE_GIVEN_DEG).toFixed(6)), depth };
}

/**
 * Where f changes sign between two places; null when it does not or is unknown there.
 * Regula falsi (Illinois variant, Dowell and Jarratt 1971), halving every third step.
 */
export function rootBetween(f: (x: number) => number | null, from: number, to: number): number | null {
  let [low, high] = [from, to];
  let fLow = f(low);
  let fHigh = fLow === null ? null : f(high);
  if (fLow === null || fHigh === null) return null;
  if (fLow === 0) return low;
  if (fLow * fHigh >= 0) return null;
  for (let step = 0; high - low > ANGLE_FOUND_DEG && step < 100; step++) {
    const x: number = step % 3 === 2 ? (low + high) / 2 : (low * fHigh - high * fLow) / (fHigh - fLow);
    const fx: number | null = f(x);
    if (fx === null) return null;
    if (fx === 0) return x;
    if (fx * fLow > 0) {
      [low, fLow] = [x, fx];
      fHigh /= 2;
    } else {
      [high, fHigh] = [x, fx];
      fLow /= 2;
    }
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
