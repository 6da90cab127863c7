/**
 * The smallest change that mends a finding, each one tried for real: the plan is solved and reported with it, and it is
 * offered only when the finding is gone and nothing that can't be ground came in its place. Millimetres and degrees.
 */
import type { DepthRule, Dop, Plan, Rig, Tier } from "../plan/document.ts";
import type { PlanFinding, PlanFindingCode } from "../plan/finding.ts";
import { namedTierOf } from "../plan/rules/amounts.ts";
import { solvePlan } from "../plan/solve.ts";
import { mendWays } from "./mend-ways.ts";
import { reportPlan } from "./report.ts";

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
}

export interface Mend extends Way {
  /** The finding's code. */
  readonly code: PlanFindingCode;
  /** Codes of findings to look at that come in its place (never ones that can't be ground). */
  readonly brings: readonly PlanFindingCode[];
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

/** What a way would bring; null when it does not mend, or leaves something that can't be ground which was not there. */
export function tryWay(
  plan: Plan,
  finding: PlanFinding,
  way: Way,
  before: readonly PlanFinding[],
): Mend | null {
  const after = reportPlan(planWith(plan, way.steps)).findings;
  if (after.some((f) => isSame(f, finding))) return null;
  const fresh = after.filter((f) => !before.some((old) => isSame(old, f)));
  if (fresh.some((f) => f.severity === "stop")) return null;
  const brings = [...new Set(fresh.filter((f) => f.severity === "warn").map((f) => f.code))];
  return { ...way, code: finding.code, brings };
}

/**
 * Mends of one finding as they are found, the smallest changes first; each one solved and verified.
 * Null is a step that found none, so that a caller may stop in between. Empty for findings that nothing simple mends.
 */
export function* mendsOf(plan: Plan, finding: PlanFinding): Generator<Mend | null> {
  const before = reportPlan(plan).findings;
  const seen = new Set<string>();
  let found = 0;
  for (const way of mendWays(plan, finding)) {
    const key = JSON.stringify(way?.steps);
    const mend = way && !seen.has(key) ? tryWay(plan, finding, way, before) : null;
    seen.add(key);
    yield mend;
    if (mend && ++found === MOST_MENDS) return;
  }
}
