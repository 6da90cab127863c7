/**
 * Counts and angles that work: for each count that the wheel divides, the arm angles at which a tier of that count just
 * touches, shares an edge of a given length, or comes to the corners of the tier before, at the depth it has now; and
 * the one angle at which it does both, touching just where the corners are.
 *
 * Angles come from closed forms for evenly placed facets and are then solved for real: what is offered is met.
 * For n facets at arm angle a, neighbours' normals are delta apart with sin(delta / 2) = cos a sin(pi / n).
 */
import { unlessInexact } from "../geometry/inexact-cut.ts";
import { facetFrame } from "../geometry/plane.ts";
import { cutBall } from "../geometry/solid.ts";
import { dot, type Vec3 } from "../geometry/vec.ts";
import type { DepthRule, Plan, Tier } from "./document.ts";
import { evenCounts, stopsOf, wrapDeg } from "./place.ts";
import { rootBetween, startSnap, tiersBeside } from "./snaps.ts";
import { solvePlan } from "./solve.ts";
import type { PlacedFacet, SolvedPlan } from "./solved.ts";
import { contextOf, cornersBefore } from "./tier-probe.ts";

type SuggestionKind = "touch" | "edge" | "corners" | "touch-at-corners";

export interface Suggestion {
  readonly kind: SuggestionKind;
  readonly count: number;
  readonly armAngleDeg: number;
  readonly depthMm: number;
  /** Facets that show now, or are its own, and with it are on the finished piece no more. */
  readonly gone: number;
  /** The tier before, for the kinds that name corners. */
  readonly of?: string;
  /** The tier as it becomes when this is chosen. */
  readonly tier: Tier;
}

export interface Wish {
  /** Length of the edge to share, mm. */
  readonly edgeMm: number;
}

/** Counts offered where no wheel limits them. */
const FREE_COUNTS = Array.from({ length: 22 }, (_, i) => i + 3);
const FEWEST = 3;
const MOST = 48;
/** Steps in which corner angles are sought; a facet comes to a given corner at two angles at most, far apart. */
const SCAN_DEG = 0.5;
const DEG = 180 / Math.PI;

/** Arm angles are told to a hundredth of a degree: the depth rule then makes the rest exact. */
const rounded = (deg: number): number => Math.round(deg * 100) / 100;

/** Counts worth offering for a tier: those the wheel divides, from three facets on. */
export function countsThatFit(plan: Plan, tier: Tier): number[] {
  const stops = stopsOf(plan, tier.side);
  const counts = stops === null ? FREE_COUNTS : evenCounts(stops);
  return counts.filter((n) => n >= FEWEST && n <= MOST);
}

/** Arm angle at which n facets of distance h just touch; null when they can't at any angle. */
export function touchAngle(n: number, h: number): number | null {
  const cosine = Math.sin(Math.acos(h)) / Math.sin(Math.PI / n);
  return cosine > 0 && cosine <= 1 ? Math.acos(cosine) * DEG : null;
}

/** Arm angle at which n facets of distance h share whole edges of length e (unit sphere); null when they can't. */
export function edgeAngle(n: number, h: number, e: number): number | null {
  if (e >= 2) return null;
  // The edge is a chord at distance h / cos(delta / 2) from the centre, so (e / 2)^2 = 1 - h^2 / cos^2(delta / 2).
  const cosHalf = h / Math.sqrt(1 - (e * e) / 4);
  if (cosHalf > 1) return null;
  const cosine = Math.sqrt(1 - cosHalf * cosHalf) / Math.sin(Math.PI / n);
  return cosine > 0 && cosine <= 1 ? Math.acos(cosine) * DEG : null;
}

interface Ground {
  readonly plan: Plan;
  readonly tierIndex: number;
  readonly tier: Tier;
  readonly h: number;
  readonly radiusMm: number;
  readonly before: Tier | undefined;
  readonly corners: readonly Vec3[];
  /** Ids of the facets that show now. */
  readonly shown: ReadonlySet<string>;
}

const shownIn = (solved: SolvedPlan): ReadonlySet<string> => {
  const { facets } = cutBall(solved.planes);
  return new Set(solved.facets.filter((_, i) => !facets[i].swallowed).map(({ id }) => id));
};

/**
 * All that works for one tier, one count after another, its own count first and then the nearest ones, so that a caller
 * may stop or show progress in between. What takes facets away from the finished piece comes last, the fewest first.
 */
export function* suggestFor(plan: Plan, tierIndex: number, wish: Wish): Generator<readonly Suggestion[]> {
  const solved = solvePlan(plan);
  const tier = plan.tiers[tierIndex];
  const before = tiersBeside(plan, tierIndex)[0];
  const ground: Ground = {
    plan,
    tierIndex,
    tier,
    h: 1 - solved.tiers[tierIndex].depthMm / solved.radiusMm,
    radiusMm: solved.radiusMm,
    before,
    corners: before ? (cornersBefore(contextOf(plan, tierIndex)).get(before.id) ?? []) : [],
    shown: shownIn(solved),
  };
  const away = (count: number) => Math.abs(count - tier.count);
  const counts = countsThatFit(plan, tier).sort((a, b) => away(a) - away(b));
  const costly: Suggestion[] = [];
  for (const count of counts) {
    const found = suggestCount(ground, count, wish);
    costly.push(...found.filter(({ gone }) => gone > 0));
    yield found.filter(({ gone }) => gone === 0);
  }
  yield costly.sort((a, b) => a.gone - b.gone);
}

function suggestCount(ground: Ground, count: number, wish: Wish): Suggestion[] {
  const { h, radiusMm, before, corners } = ground;
  const offers: (Suggestion | null)[] = [
    offer(ground, "touch", count, touchAngle(count, h), { rule: "touch" }),
    offer(ground, "edge", count, edgeAngle(count, h, wish.edgeMm / radiusMm), {
      rule: "edge",
      mm: wish.edgeMm,
    }),
  ];
  if (before && corners.length > 0) {
    const toCorners = cornerReach(ground, count);
    const depth: DepthRule = { rule: "corners", of: before.id };
    for (const deg of rootsOf((a) => toCorners(a) - h))
      offers.push(offer(ground, "corners", count, deg, depth));
    const touchH = (a: number): number => Math.sqrt(1 - (Math.cos(a / DEG) * Math.sin(Math.PI / count)) ** 2);
    for (const deg of rootsOf((a) => toCorners(a) - touchH(a))) {
      offers.push(offer(ground, "touch-at-corners", count, deg, depth));
    }
  }
  return offers.filter((s) => s !== null);
}

/** Start that turns a facet toward a corner, the nearest one to the tier's present start, on the wheel's stops. */
function startAtCorner(ground: Ground): number {
  const { plan, tier, corners } = ground;
  let best = tier.startDeg;
  let least = Number.POSITIVE_INFINITY;
  for (const c of corners) {
    const azimuth = Math.atan2(c[1], c[0]) * DEG;
    const away = Math.abs(wrapDeg(azimuth - tier.startDeg + 180) - 180);
    if (away < least - 1e-6) [best, least] = [wrapDeg(azimuth), away];
  }
  return startSnap(plan, tier.side, best)?.value ?? best;
}

/** Least distance h over the tier's facets, as a function of the arm angle, at which each stops at its outermost corner. */
function cornerReach(ground: Ground, count: number): (armAngleDeg: number) => number {
  const start = startAtCorner(ground);
  const { tier, corners } = ground;
  return (armAngleDeg) => {
    let least = 1;
    for (let k = 0; k < count; k++) {
      const { n } = facetFrame(armAngleDeg, start + (360 * k) / count, tier.side);
      least = Math.min(least, Math.max(...corners.map((c) => dot(n, c))));
    }
    return least;
  };
}

function rootsOf(f: (deg: number) => number): number[] {
  const roots: number[] = [];
  for (let deg = 0; deg < 90; deg += SCAN_DEG) {
    const root = rootBetween(f, deg, deg + SCAN_DEG);
    if (root !== null) roots.push(root);
  }
  return roots;
}

/** How many facets of the plan with the tier changed are not on the piece: those that show now, and the tier's own. */
function goneWith({ plan, tierIndex, shown }: Ground, tier: Tier): number {
  const solved = solvePlan({ ...plan, tiers: plan.tiers.with(tierIndex, tier) });
  const then = shownIn(solved);
  const isMissed = ({ id, tierIndex: of }: PlacedFacet) =>
    !then.has(id) && (of === tierIndex || shown.has(id));
  return solved.facets.filter(isMissed).length;
}

/**
 * Solves the plan with the tier as it would become; null when there is no such angle, the rule is not met there after all, or
 * the piece can't be reckoned exactly.
 */
function offer(
  ground: Ground,
  kind: SuggestionKind,
  count: number,
  deg: number | null,
  depth: DepthRule,
): Suggestion | null {
  if (deg === null) return null;
  const namesCorners = depth.rule === "corners";
  const startDeg = namesCorners ? startAtCorner(ground) : ground.tier.startDeg;
  // Where two things are to meet at once the angle is kept as found; else the rule makes up for its rounding.
  const armAngleDeg = kind === "touch-at-corners" ? deg : rounded(deg);
  const tier: Tier = { ...ground.tier, count, armAngleDeg, startDeg, depth };
  const solved = solvePlan({
    ...ground.plan,
    tiers: [...ground.plan.tiers.slice(0, ground.tierIndex), tier],
  });
  const { met, depthMm } = solved.tiers[ground.tierIndex];
  const overshoots = solved.findings.some((f) => f.tier === tier.id && f.code === "overshoot");
  if (!met || depthMm <= 0 || overshoots) return null;
  const gone = unlessInexact(() => goneWith(ground, tier));
  if (gone === null) return null;
  return { kind, count, armAngleDeg, depthMm, gone, tier, ...(namesCorners ? { of: depth.of } : {}) };
}
