/**
 * Where the work stands, between the steps of the page for the lap and the plan, which carries it in its file and in links.
 * Whoever goes on from there goes on after the last facet that was ground: discs, arm and measuring since then are told once more,
 * for they are another machine's, or another day's.
 */
import type { Work } from "../../core/plan/document.ts";
import type { LapStep } from "./lap-steps.ts";

const placeOf = ({ step }: LapStep): Work | null =>
  step.kind === "grind" ? { tier: step.tier, stage: step.stage, facet: step.facet } : null;

const isAt = (one: LapStep, { tier, stage, facet }: Work): boolean =>
  one.step.kind === "grind" && one.step.tier === tier && one.step.stage === stage && one.step.facet === facet;

/** What the plan keeps while step `at` is to be done (the number of steps when all are); undefined before the first facet. */
export function workAt(steps: readonly LapStep[], at: number): Work | undefined {
  const next = steps[at] && placeOf(steps[at]);
  if (next) return next;
  const last = steps.slice(0, at).findLast(({ step }) => step.kind === "grind");
  const done = last && placeOf(last);
  return done ? { ...done, done: true } : undefined;
}

/** The step to go on with; null where these steps have no such place (the other way of working, a stage that is gone). */
export function stepOfWork(steps: readonly LapStep[], work: Work): number | null {
  const at = steps.findIndex((one) => isAt(one, work));
  if (at >= 0) return work.done ? at + 1 : at;
  const ofTier = steps.findIndex(({ step }) => step.kind === "grind" && step.tier === work.tier);
  return ofTier < 0 ? null : ofTier;
}

export const isSameWork = (a: Work | undefined, b: Work | undefined): boolean =>
  a?.tier === b?.tier &&
  a?.stage === b?.stage &&
  a?.facet === b?.facet &&
  (a?.done ?? false) === (b?.done ?? false);
