/** What differs between two plans, in the order in which a person reads a plan: for comparing named versions. */
import type { Plan, Tier } from "../core/plan/document.ts";
import { isSame } from "./plain.ts";

interface FieldChange {
  readonly field: string;
  /** Undefined where the field is missing. */
  readonly from: unknown;
  readonly to: unknown;
}

export type PlanChange =
  | { readonly about: "plan" | "piece" | "rig"; readonly fields: readonly FieldChange[] }
  /** `place` counts from 1, in the plan that has the tier. */
  | { readonly about: "tier-added" | "tier-removed"; readonly tier: Tier; readonly place: number }
  /** A tier that both have: what changed in it, and where it stood and stands. */
  | {
      readonly about: "tier";
      readonly tier: Tier;
      readonly from: number;
      readonly to: number;
      /** Whether it changed its place among the tiers that both plans have. */
      readonly moved: boolean;
      readonly fields: readonly FieldChange[];
    };

/** Fields that differ, those of `a` first, except the ones named. */
function fieldChanges(a: object, b: object, except: readonly string[] = []): FieldChange[] {
  const [from, to] = [a as Record<string, unknown>, b as Record<string, unknown>];
  return [...new Set([...Object.keys(from), ...Object.keys(to)])]
    .filter((field) => !except.includes(field) && !isSame(from[field], to[field]))
    .map((field) => ({ field, from: from[field], to: to[field] }));
}

function tierChanges(a: readonly Tier[], b: readonly Tier[]): PlanChange[] {
  const [inA, inB] = [a, b].map((tiers) => new Map(tiers.map((tier, i) => [tier.id, i])));
  // order is judged among the tiers that both have: one put in front moves nobody
  const sharedA = a.filter((tier) => inB.has(tier.id)).map((tier) => tier.id);
  const sharedB = b.filter((tier) => inA.has(tier.id)).map((tier) => tier.id);
  const removed = a.flatMap((tier, i): PlanChange[] =>
    inB.has(tier.id) ? [] : [{ about: "tier-removed", tier, place: i + 1 }],
  );
  const rest = b.flatMap((tier, i): PlanChange[] => {
    const before = inA.get(tier.id);
    if (before === undefined) return [{ about: "tier-added", tier, place: i + 1 }];
    const moved = sharedA.indexOf(tier.id) !== sharedB.indexOf(tier.id);
    const fields = fieldChanges(a[before], tier);
    if (!moved && fields.length === 0) return [];
    return [{ about: "tier", tier, from: before + 1, to: i + 1, moved, fields }];
  });
  return [...removed, ...rest];
}

/** Changes that lead from `a` to `b`; tiers are the same when their ids are. Empty for equal plans. */
export function comparePlans(a: Plan, b: Plan): readonly PlanChange[] {
  const parts: PlanChange[] = [
    { about: "plan", fields: fieldChanges(a, b, ["piece", "rig", "tiers"]) },
    { about: "piece", fields: fieldChanges(a.piece, b.piece) },
    { about: "rig", fields: fieldChanges(a.rig, b.rig) },
  ];
  const changed = parts.filter((part) => !("fields" in part) || part.fields.length > 0);
  return [...changed, ...tierChanges(a.tiers, b.tiers)];
}
