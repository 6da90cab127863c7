/**
 * The smallest change that mends a finding, each one tried for real: the plan is solved and reported with it, and it is
 * offered only when the finding is gone and nothing that can't be ground came in its place. Millimetres and degrees.
 */

import { unlessInexact } from "../geometry/inexact-cut.ts";
import type { DepthRule, Dop, Plan, Rig, Tier } from "../plan/document.ts";
import type { PlanFinding, PlanFindingCode } from "../plan/finding.ts";
import { namedTierOf } from "../plan/rules/amounts.ts";
import { solvePlan } from "../plan/solve.ts";
import { withLosses } from "./findings.ts";
import { editCostFindings } from "./findings-edit-cost.ts";
import { costOf, type Doubt, doubtsOf, isSamePiece, type MendCost } from "./mend-cost.ts";
import { mendWays } from "./mend-ways.ts";
import { checkedOf, type Report, reportAtOnce, reportPlan } from "./report.ts";

/** One change to the document. */
export type MendStep =
  | { readonly kind: "tier"; readonly tierId: string; readonly change: Partial<Omit<Tier, "id">> }
  | { readonly kind: "remove-tier"; readonly tierId: string }
  | { readonly kind: "dop"; readonly dop: Dop }
  | { readonly kind: "rig"; readonly rig: Rig };

/** What a mend does, as data: screens put it in words. */
export type MendChange =
  | { readonly to: "angle"; readonly tierId: string; readonly fromDeg: number; readonly deg: number }
  | { readonly to: "depth"; readonly tierId: string; readonly fromMm: number; readonly mm: number }
  | { readonly to: "rule"; readonly tierId: string; readonly depth: DepthRule; readonly deg?: number }
  | { readonly to: "count"; readonly tierId: string; readonly count: number }
  | { readonly to: "start"; readonly tierId: string; readonly deg: number; readonly stop: number | null }
  | { readonly to: "remove"; readonly tierId: string }
  | { readonly to: "dop"; readonly mm: number }
  | { readonly to: "wheel"; readonly stops: number };

/** A way of mending before it is tried. */
export interface Way {
  readonly change: MendChange;
  readonly steps: readonly MendStep[];
  /** Changes the tier that is wrong. */
  readonly isCause?: true;
}

export interface Mend extends Way {
  /** The finding's code. */
  readonly code: PlanFindingCode;
  readonly cost: MendCost;
  /** Findings to look at that come in its place (never ones that can't be ground). */
  readonly brings: readonly PlanFinding[];
  /** What speaks against it; empty for one that a person would take without a second thought. */
  readonly doubts: readonly Doubt[];
}

/** More than this is no help but a riddle. */
const MOST_MENDS = 3;

/** The plan with the steps done. @throws nothing: a tier that is not there is left alone */
export function planWith(plan: Plan, steps: readonly MendStep[]): Plan {
  return steps.reduce(withStep, plan);
}

function withStep(plan: Plan, step: MendStep): Plan {
  switch (step.kind) {
    case "tier":
      return { ...plan, tiers: plan.tiers.map((t) => (t.id === step.tierId ? { ...t, ...step.change } : t)) };
    case "remove-tier":
      return removeTier(plan, step.tierId);
    case "rig":
      return { ...plan, rig: step.rig };
    case "dop":
      return { ...plan, piece: { ...plan.piece, dop: step.dop } };
  }
}

/** Later rules that named the tier are turned into the depth that they gave. */
function removeTier(plan: Plan, tierId: string): Plan {
  const named = ({ depth }: Tier) => namedTierOf(depth) === tierId;
  const depths = new Map(solvePlan(plan).tiers.map((t) => [t.tierId, t.depthMm]));
  const tiers = plan.tiers
    .filter((t) => t.id !== tierId)
    .map((t): Tier => (named(t) ? { ...t, depth: { rule: "depth", mm: depths.get(t.id) ?? 0 } } : t));
  return { ...plan, tiers };
}

/** Findings are the same when they say the same of the same tier. */
const isSame = (a: PlanFinding, b: PlanFinding): boolean => a.code === b.code && a.tier === b.tier;

/** A plan as it stands, with the findings that a mend of one code must look at. */
function reportAbout(plan: Plan, code: string, planBefore: Plan | null): Report {
  if (code === "wheel-splits") return reportPlan(plan);
  if (code !== "edit-splits" || !planBefore) return reportAtOnce(plan);
  const report = reportAtOnce(plan);
  return { ...report, findings: withLosses(report.findings, editCostFindings(planBefore, checkedOf(plan))) };
}

interface Tried {
  readonly mend: Mend;
  readonly report: Report;
}

/**
 * Whether a mend changes the one tier for which others go wrong: it comes first, whatever speaks against it. What came of the
 * wrong tier (others that can't be cut, glass that was meant to go) is nothing to hold its mend against.
 */
function isCauseOfSeveral({ isCause, change }: Mend, { findings }: Report): boolean {
  const own = "tierId" in change ? change.tierId : undefined;
  const grave = findings.filter(({ severity, tier }) => severity !== "info" && tier !== own);
  return isCause === true && new Set(grave.map(({ tier }) => tier)).size > 1;
}

/** Sizes closer than this are the same to a hand. */
const SAME_SIZE_MM = 0.05;

/** Whether two mends come to the same piece, or are the same rule with hardly another size. */
function isTwin(a: Tried, b: Tried): boolean {
  const [one, other] = [a.mend.change, b.mend.change];
  const isSameRule =
    one.to === "rule" &&
    other.to === "rule" &&
    one.tierId === other.tierId &&
    one.depth.rule === other.depth.rule &&
    "mm" in one.depth &&
    "mm" in other.depth &&
    Math.abs(one.depth.mm - other.depth.mm) <= SAME_SIZE_MM;
  return isSameRule || isSamePiece(a.report, b.report);
}

/** What a way would bring; null when it does not mend, or leaves something that can't be ground which was not there. */
function tryWay(finding: PlanFinding, way: Way, before: Report, after: Report): Tried | null {
  if (after.findings.some((f) => isSame(f, finding))) return null;
  const fresh = after.findings.filter((f) => !before.findings.some((old) => isSame(old, f)));
  if (fresh.some((f) => f.severity === "stop")) return null;
  const brings = fresh.filter((f) => f.severity === "warn");
  const cost = costOf(before, after);
  const mend: Mend = { ...way, code: finding.code, cost, brings, doubts: doubtsOf(cost, brings) };
  return { mend, report: after };
}

/**
 * Mends of one finding, each one solved and verified: as they are found, the smallest changes first, those that nothing speaks
 * against; then, where these are few, the others, the least doubtful first. Of several that come to the same piece one is kept.
 * Null is a step that found none, so that a caller may stop in between. Empty for findings that nothing simple mends.
 * @param planBefore the plan before its last edit, for what was lost by it
 */
export function* mendsOf(
  plan: Plan,
  finding: PlanFinding,
  planBefore: Plan | null = null,
): Generator<Mend | null> {
  const about = (asked: Plan) => reportAbout(asked, finding.code, planBefore);
  const before = about(plan);
  const seen = new Set<string>();
  const kept: Tried[] = [];
  const isGood = ({ mend }: Tried) => mend.doubts.length === 0 || isCauseOfSeveral(mend, before);
  const good = () => kept.filter(isGood).length;
  for (const way of mendWays(plan, finding, planBefore)) {
    const key = JSON.stringify(way?.steps);
    const tried =
      way && !seen.has(key)
        ? unlessInexact(() => tryWay(finding, way, before, about(planWith(plan, way.steps))))
        : null;
    seen.add(key);
    const isNew = tried !== null && !kept.some((other) => isTwin(other, tried));
    if (isNew) kept.push(tried);
    yield isNew && isGood(tried) ? tried.mend : null;
    if (good() === MOST_MENDS) return;
  }
  const doubtful = kept.filter((one) => !isGood(one)).map(({ mend }) => mend);
  const ordered = doubtful.sort((a, b) => a.doubts.length - b.doubts.length);
  yield* ordered.slice(0, MOST_MENDS - good());
}
