/**
 * Which tier is wrong when tiers can't meet, and the least change of it that puts things right. A number typed wrong spoils
 * what follows it, so tiers are added in cutting order: the one with which things first go wrong is looked at first, then the
 * others; the one whose change clears most is the wrong one.
 */
import { unlessInexact } from "../geometry/inexact-cut.ts";
import { cutBall } from "../geometry/solid.ts";
import type { DepthRule, Plan, Tier } from "../plan/document.ts";
import type { PlanFinding, PlanFindingCode } from "../plan/finding.ts";
import { solvePlan, toleranceOf } from "../plan/solve.ts";
import { facetFindings } from "./findings-facets.ts";
import { grained } from "./mend-search.ts";

/** Findings that a wrong angle or size causes, here or in what follows it. */
const WRONG: ReadonlySet<PlanFindingCode> = new Set<PlanFindingCode>([
  "rule-unmet",
  "overshoot",
  "swallowed",
  "lost",
  "vanished",
  "duplicate",
  "near-duplicate",
]);

const ANGLE = { stepDeg: 3, reachDeg: 60, grainDeg: 0.1, steepestDeg: 89.5 } as const;
/** Sizes are tried in steps of this part, down to a tenth and up to twice. */
const SIZE = { step: 0.9, least: 0.1, most: 2, grainMm: 0.05 } as const;
const HALVINGS = 6;
/** More tiers than these are not all tried: those nearest to where things went wrong are. */
const MOST_TIERS = 6;

/** One tier with one number changed. */
export interface TierFix {
  readonly tier: Tier;
  readonly change: { readonly armAngleDeg: number } | { readonly depth: DepthRule };
}

/** Findings of rules and of facets alone: what meets need not be known for what is looked for. */
function findingsOf(plan: Plan): readonly PlanFinding[] {
  const solved = solvePlan(plan);
  const cut = { solved, solid: cutBall(solved.planes), toleranceMm: toleranceOf(plan) };
  return [...solved.findings, ...facetFindings(cut)];
}

/** How much is wrong, by severity. A plan that can't be reckoned is worse than any. */
function wrongIn(plan: Plan): number {
  const findings = unlessInexact(() => findingsOf(plan));
  if (!findings) return Number.POSITIVE_INFINITY;
  return findings
    .filter(({ code }) => WRONG.has(code))
    .reduce((sum, { severity }) => sum + (severity === "stop" ? 10 : 1), 0);
}

const withChange = (plan: Plan, i: number, change: Partial<Tier>): Plan => ({
  ...plan,
  tiers: plan.tiers.with(i, { ...plan.tiers[i], ...change }),
});

/** The first tier, in cutting order, with which something is wrong; the last where that can't be told. */
function firstWrong(plan: Plan): number {
  const at = plan.tiers.findIndex((_, i) => wrongIn({ ...plan, tiers: plan.tiers.slice(0, i + 1) }) > 0);
  return at < 0 ? plan.tiers.length - 1 : at;
}

/** One number of a tier, and the values to try from the one it has outward, one way. */
interface Line {
  readonly from: number;
  readonly values: readonly number[];
  readonly grain: number;
  /** What a change is measured by. */
  readonly range: number;
  readonly changed: (x: number) => TierFix["change"];
}

function linesOf(tier: Tier): Line[] {
  const { armAngleDeg: from, depth } = tier;
  const steps = Array.from({ length: ANGLE.reachDeg / ANGLE.stepDeg }, (_, i) => (i + 1) * ANGLE.stepDeg);
  const angles = [1, -1].map((sign): Line => {
    const values = steps.map((by) => from + sign * by).filter((x) => x >= 0 && x <= ANGLE.steepestDeg);
    return { from, values, grain: ANGLE.grainDeg, range: 90, changed: (armAngleDeg) => ({ armAngleDeg }) };
  });
  if (!("mm" in depth) || depth.mm <= 0) return tier.armAngleDeg === 90 ? [] : angles;
  const { rule, mm } = depth;
  const changed = (x: number): TierFix["change"] => ({ depth: { rule, mm: x } });
  const powers = Array.from({ length: 24 }, (_, i) => SIZE.step ** (i + 1));
  const sizes = [
    powers.filter((p) => p >= SIZE.least).map((p) => mm * p),
    powers.filter((p) => 1 / p <= SIZE.most).map((p) => mm / p),
  ].map((values): Line => ({ from: mm, values, grain: SIZE.grainMm, range: mm, changed }));
  return tier.armAngleDeg === 90 ? sizes : [...sizes, ...angles];
}

interface Candidate {
  readonly fix: TierFix;
  readonly wrong: number;
  /** Share of the number's own range that it moves: how unlike what was typed it is. */
  readonly share: number;
}

/** The nearest value of a line at which least is wrong. Yields null for each try. */
function* alongLine(plan: Plan, i: number, line: Line): Generator<null, Candidate | null> {
  const wrongAt = (x: number) => wrongIn(withChange(plan, i, line.changed(x)));
  let [last, best, wrong] = [line.from, Number.NaN, Number.POSITIVE_INFINITY];
  let before = line.from;
  for (const x of line.values) {
    const now = wrongAt(x);
    yield null;
    if (now < wrong) [best, wrong, before] = [x, now, last];
    last = x;
    if (now === 0) break;
  }
  if (Number.isNaN(best)) return null;
  let [no, yes] = [before, best];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (no + yes) / 2;
    if (wrongAt(middle) <= wrong) yes = middle;
    else no = middle;
    yield null;
  }
  const neat = grained(yes, line);
  const x = wrongAt(neat) <= wrong ? neat : yes;
  return {
    fix: { tier: plan.tiers[i], change: line.changed(x) },
    wrong,
    share: Math.abs(x - line.from) / line.range,
  };
}

/**
 * The wrong tier with its least change; null where no change of one number clears anything.
 * @returns through a generator, null for each try, so that a long search can be left
 */
export function* wrongTier(plan: Plan): Generator<null, TierFix | null> {
  const now = wrongIn(plan);
  const first = firstWrong(plan);
  const order = plan.tiers
    .map((_, i) => i)
    .sort((a, b) => Math.abs(a - first) - Math.abs(b - first) || a - b)
    .slice(0, MOST_TIERS);
  let best: Candidate | null = null;
  for (const i of order) {
    const own: Candidate[] = [];
    for (const line of linesOf(plan.tiers[i])) {
      const found = yield* alongLine(plan, i, line);
      if (found) own.push(found);
    }
    const least = own.sort((a, b) => a.wrong - b.wrong || a.share - b.share)[0];
    if (least && least.wrong < (best?.wrong ?? now)) best = least;
    if (best?.wrong === 0) break;
  }
  return best?.fix ?? null;
}
