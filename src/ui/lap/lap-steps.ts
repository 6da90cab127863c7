/**
 * The work as single steps for the lap: one facet at a time, and between facets what has to be set or fitted. Each step has a key that
 * stays the same when the plan is solved again, so that progress survives new widths and depths.
 */
import type { Bench, BenchTier } from "../../core/bench/bench.ts";
import type { Way } from "../../core/bench/diary.ts";
import type { Step } from "../../core/bench/order.ts";

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

export const stepsOf = (bench: Bench, way: Way): readonly LapStep[] =>
  lapSteps(bench.order.find((work) => work.way === way)?.steps ?? []);

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
