/** Undo and redo of one plan: a bounded list of steps, each with its name and the patches both ways. Plain data. */
import { apply, type Patches } from "mutative";
import type { Plan } from "../core/plan/document.ts";
import { deepFreeze, planFromData } from "../core/plan/file.ts";
import { hasPlaceOf } from "../core/plan/references.ts";
import { isLabel, type Label } from "./labels.ts";

export interface Step {
  readonly label: Label;
  readonly patches: Patches;
  readonly inverse: Patches;
}
export interface History {
  /** Oldest first; the last one is undone next. */
  readonly undo: readonly Step[];
  /** The last one is redone next. */
  readonly redo: readonly Step[];
}

/** Steps kept; older ones are forgotten. */
export const LONGEST_HISTORY = 1000;
export const NO_HISTORY: History = { undo: [], redo: [] };

/** A new step: what had been undone can't be redone any more. */
export const withStep = (history: History, step: Step): History => ({
  undo: [...history.undo, step].slice(-LONGEST_HISTORY),
  redo: [],
});

/** Undo and redo are about the plan, never about how far the glass has come: that stays, as far as the plan then has the facet. */
function withWorkOf({ work }: Plan, { work: then, ...next }: Plan): Plan {
  const kept = work ?? then;
  return kept && hasPlaceOf(next.tiers, kept) ? { ...next, work: kept } : next;
}

/** @throws when the patches don't fit the plan or give no valid one */
function patched(plan: Plan, patches: Patches): Plan {
  const next = withWorkOf(plan, apply(plan, patches));
  planFromData(next);
  return deepFreeze(next);
}

interface Walked {
  readonly plan: Plan;
  readonly history: History;
  readonly step: Step;
}

/** One step back, or null when there is none. @throws when a step kept from an earlier visit doesn't fit */
export function stepBack(plan: Plan, { undo, redo }: History): Walked | null {
  const step = undo[undo.length - 1];
  if (!step) return null;
  return {
    plan: patched(plan, step.inverse),
    history: { undo: undo.slice(0, -1), redo: [...redo, step] },
    step,
  };
}

/** One step forward, or null when there is none. @throws when a step kept from an earlier visit doesn't fit */
export function stepForward(plan: Plan, { undo, redo }: History): Walked | null {
  const step = redo[redo.length - 1];
  if (!step) return null;
  return {
    plan: patched(plan, step.patches),
    history: { undo: [...undo, step], redo: redo.slice(0, -1) },
    step,
  };
}

/** Names that mean something to the language itself: a step that goes through one is no step of a plan. */
const FORBIDDEN: ReadonlySet<unknown> = new Set(["__proto__", "constructor", "prototype"]);
const OPS: ReadonlySet<unknown> = new Set(["add", "remove", "replace"]);

function isPatch(data: unknown): boolean {
  const { op, path } = (data ?? {}) as Readonly<Record<string, unknown>>;
  const isPart = (part: unknown) =>
    !FORBIDDEN.has(part) && (typeof part === "string" || Number.isSafeInteger(part));
  return OPS.has(op) && Array.isArray(path) && path.every(isPart);
}

function isStep(data: unknown): data is Step {
  const { label, patches, inverse } = (data ?? {}) as Readonly<Record<string, unknown>>;
  return isLabel(label) && [patches, inverse].every((list) => Array.isArray(list) && list.every(isPatch));
}

/** A history read from storage or from a stranger's file; null when it isn't one, to the last field. */
export function historyFromData(data: unknown): History | null {
  const { undo, redo } = (data ?? {}) as Partial<History>;
  if (!Array.isArray(undo) || !Array.isArray(redo)) return null;
  if (undo.length > LONGEST_HISTORY || redo.length > LONGEST_HISTORY) return null;
  return undo.every(isStep) && redo.every(isStep) ? { undo, redo } : null;
}
