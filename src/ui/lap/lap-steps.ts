/**
 * The work as single steps for the lap: one facet at a time, and between facets what has to be set or fitted. Each step has a key that
 * stays the same when the plan is solved again, so that progress survives new widths and depths.
 */
import type { BenchTier } from "../../core/bench/bench.ts";
import type { Step } from "../../core/bench/order/order.ts";
import { formatNumber } from "../../words/format.ts";

type GrindStep = Extract<Step, { kind: "grind" }>;

export interface LapStep {
  readonly key: string;
  readonly step: Step;
  /** Facets of the pass that this facet belongs to, and its place among them from 1; null for other steps. */
  readonly pass: { readonly place: number; readonly count: number } | null;
}

/** What a step is about, without numbers that a new solution would change. */
function nameOf(step: Step): string {
  switch (step.kind) {
    case "grind":
      return `${step.stage}:${step.facet}`;
    case "fit-disc":
      return step.stage;
    case "clean":
      return `${step.from}>${step.to}`;
    case "turn-over":
      return step.to;
    case "prepare":
      return "all";
    default:
      return step.tier;
  }
}

/** Steps in order. The same setting may come back (a disc fitted again): each return counts up in its key. */
export function lapSteps(steps: readonly Step[]): readonly LapStep[] {
  const seen = new Map<string, number>();
  return steps.map((step, i) => {
    const name = `${step.kind}/${nameOf(step)}`;
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return {
      key: times === 1 ? name : `${name}#${times}`,
      step,
      pass: step.kind === "grind" ? passOf(steps, i, step) : null,
    };
  });
}

/** Place of a grinding step among those of the same tier and stage that follow each other. */
function passOf(steps: readonly Step[], at: number, own: GrindStep): { place: number; count: number } {
  const belongs = (step: Step | undefined): boolean =>
    step?.kind === "grind" && step.tier === own.tier && step.stage === own.stage;
  let [first, last] = [at, at];
  while (belongs(steps[first - 1])) first--;
  while (belongs(steps[last + 1])) last++;
  return { place: at - first + 1, count: last - first + 1 };
}

/** The first step that isn't done; the number of steps when all are. */
export function nextStep(steps: readonly LapStep[], done: readonly string[]): number {
  const known = new Set(done);
  const at = steps.findIndex((step) => !known.has(step.key));
  return at < 0 ? steps.length : at;
}

/** What the wheel shows for a facet as the person counts it. */
export const readingOf = (
  tier: BenchTier | undefined,
  facetId: string,
): { label: string; isStop: boolean } | null => {
  const facet = tier?.facets.find((one) => one.facet === facetId);
  return facet ? { label: facet.read.label, isStop: facet.wheelStop !== null } : null;
};

/** One tier at one stage: where its lead-in (turning over, disc, arm) begins, its facets, and what is done after the last of them. */
export interface LapPass {
  readonly tier: string;
  readonly stage: string;
  readonly from: number;
  readonly facets: readonly { readonly at: number; readonly facet: string }[];
  /** Where the tier is measured after this pass; null where it goes on to another stage. */
  readonly measureAt: number | null;
}

/** The work as passes, for finding one's way in it. */
export function passesIn(steps: readonly LapStep[]): readonly LapPass[] {
  const passes: (LapPass & { facets: { at: number; facet: string }[]; measureAt: number | null })[] = [];
  let from = 0;
  steps.forEach(({ step, pass }, at) => {
    if (step.kind === "grind") {
      if (pass?.place === 1)
        passes.push({ tier: step.tier, stage: step.stage, from, facets: [], measureAt: null });
      passes.at(-1)?.facets.push({ at, facet: step.facet });
      from = at + 1;
      return;
    }
    const last = passes.at(-1);
    if (step.kind === "measure-as-cut" && last) last.measureAt = at;
    if (step.kind === "measure-as-cut" || step.kind === "inspect-polish") from = at + 1;
  });
  return passes;
}

/** The tier that a step is about, or that it makes ready for; null after the last. */
export function tierAt(steps: readonly LapStep[], at: number): string | null {
  for (const { step } of steps.slice(at)) if ("tier" in step) return step.tier;
  return null;
}

interface TimeWords {
  readonly hoursMinutes: (hours: string, minutes: string) => string;
  readonly minutes: (minutes: string) => string;
}

/** Minutes as a person plans by: to five minutes, from two hours on to a quarter, from ten hours on to the hour. */
export function timeInWords(minutes: number, locale: string, words: TimeWords): string {
  const coarse = minutes >= 600 ? 60 : minutes >= 120 ? 15 : 5;
  const rounded = Math.max(5, Math.round(minutes / coarse) * coarse);
  const [hours, rest] = [Math.floor(rounded / 60), rounded % 60];
  const say = (value: number) => formatNumber(value, locale, 0);
  return hours === 0 ? words.minutes(say(rest)) : words.hoursMinutes(say(hours), rest === 0 ? "" : say(rest));
}
