/** Meets that the wheel or the last edit costs: found off the main thread once the plan stands, and kept until it changes. */
import { createStore } from "zustand/vanilla";
import { withLosses } from "../core/check/findings.ts";
import type { Report } from "../core/check/report.ts";
import type { Plan } from "../core/plan/document.ts";
import type { PlanFinding } from "../core/plan/finding.ts";
import { samePiece } from "../state/derived.ts";
import { perStudio } from "./studio.ts";

export interface Losses {
  /** The plan they belong to, as `samePiece` gives it; null before the first are found. */
  readonly of: Plan | null;
  /** The plan before its last edit, against which they were found. */
  readonly before: Plan | null;
  readonly findings: readonly PlanFinding[];
}

export const lossesOf = perStudio(() =>
  createStore<Losses>(() => ({ of: null, before: null, findings: [] })),
);

const NONE: readonly PlanFinding[] = [];
export const foundIn =
  (plan: Plan) =>
  ({ of, findings }: Losses): readonly PlanFinding[] =>
    of === samePiece(plan) && findings.length > 0 ? findings : NONE;

const merged = new WeakMap<readonly PlanFinding[], Report>();

/** The report with what was found lost, the same object for the same two. */
export function reportWith(report: Report, found: readonly PlanFinding[]): Report {
  if (found.length === 0) return report;
  const known = merged.get(found);
  if (known) return known;
  const whole = { ...report, findings: withLosses(report.findings, found) };
  merged.set(found, whole);
  return whole;
}
