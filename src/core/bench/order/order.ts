/**
 * The work from the bare marble to the finished piece, step by step, in two ways: every stage of a tier before the arm moves
 * (an arm set by eye can't be set the same twice), or everything rough first and then back to each angle.
 */
import type { Habits, Rig, Side, Stage } from "../../plan/document.ts";
import type { SolvedPlan } from "../../plan/solved.ts";
import type { BenchFinding } from "../bench-finding.ts";
import type { FacetOrder } from "../rig/set-up.ts";
import { endsByLooking, stageCount, tierStages } from "../stages/stages.ts";
import { guessRemoval, type Removal, strokesFor } from "../stages/strokes.ts";
import { type Moment, type Pass, passesOf, type Way, walk } from "./diary.ts";

/** Minutes that things take, and seconds a stroke. Common practice, no source; meant to be changed. */
export const DEFAULT_HABITS: Required<Habits> = {
  prepareMin: 30,
  setArmMin: 5,
  findAngleMin: 10,
  discMin: 3,
  cleanMin: 3,
  indexMin: 0.3,
  inspectMin: 0.5,
  measureMin: 3,
  turnOverMin: 45,
  strokeSeconds: 1,
};

/** The artist's own minutes, with the usual ones where the plan says nothing. */
export const habitsOf = (rig: Rig): Required<Habits> => ({ ...DEFAULT_HABITS, ...rig.habits });

/** What to do before the first cut, in order. */
export const PREPARATIONS = [
  "choose-dop",
  "clean-and-cement",
  "centre-and-check-run-out",
  "mark-stop-zero",
  "look-for-stress",
  "warm-slowly",
  "test-facet-on-scrap",
] as const;

export type Step =
  | { readonly kind: "prepare"; readonly what: readonly string[]; readonly minutes: number }
  | { readonly kind: "turn-over"; readonly to: Side; readonly trialTier: string; readonly minutes: number }
  | { readonly kind: "fit-disc"; readonly stage: string; readonly minutes: number }
  | { readonly kind: "clean"; readonly from: string; readonly to: string; readonly minutes: number }
  | { readonly kind: "set-arm"; readonly tier: string; readonly minutes: number }
  | { readonly kind: "find-angle-again"; readonly tier: string; readonly minutes: number }
  | {
      readonly kind: "grind";
      readonly tier: string;
      readonly stage: string;
      readonly facet: string;
      readonly wheelStop: number | null;
      readonly widthMm: number;
      readonly removeMm3: number;
      /** Null where nothing was calibrated. */
      readonly strokes: number | null;
      readonly minutes: number;
    }
  | { readonly kind: "inspect-polish"; readonly tier: string; readonly minutes: number }
  | { readonly kind: "measure-as-cut"; readonly tier: string; readonly minutes: number };

export interface Work {
  readonly way: Way;
  readonly discChanges: number;
  readonly armSettings: number;
  readonly turnOvers: number;
  readonly minutes: number;
  /** True when some stage's strokes are a guess, so the time is too. */
  readonly minutesAreGuess: boolean;
  readonly steps: readonly Step[];
}

export interface OrderSetting {
  readonly solved: SolvedPlan;
  readonly stages: readonly Stage[];
  /** What a stroke takes, one a stage; null where nothing was calibrated. */
  readonly removals: readonly (Removal | null)[];
  /** Where each tier is ground on the lap; null without a rig. */
  readonly contactRadiiMm: readonly (number | null)[];
  readonly habits: Required<Habits>;
  /** Default "ring". */
  readonly facetOrder?: FacetOrder;
}

/** Steps that stand before a pass: turning over, disc, cleaning, arm. */
function leadIn(setting: OrderSetting, pass: Pass, before: Pass | null, armHasStood: boolean): Step[] {
  const { solved, stages, habits } = setting;
  const tier = solved.plan.tiers[pass.tierIndex];
  const sideBefore = before ? solved.plan.tiers[before.tierIndex].side : "front";
  const steps: Step[] = [];
  if (tier.side !== sideBefore)
    steps.push({ kind: "turn-over", to: tier.side, trialTier: tier.id, minutes: habits.turnOverMin });
  if (before?.stage !== pass.stage) {
    const to = stages[pass.stage].id;
    if (before) steps.push({ kind: "clean", from: stages[before.stage].id, to, minutes: habits.cleanMin });
    steps.push({ kind: "fit-disc", stage: to, minutes: habits.discMin });
  }
  if (before?.tierIndex !== pass.tierIndex)
    steps.push(
      armHasStood
        ? { kind: "find-angle-again", tier: tier.id, minutes: habits.findAngleMin }
        : { kind: "set-arm", tier: tier.id, minutes: habits.setArmMin },
    );
  return steps;
}

function grindStep(setting: OrderSetting, moment: Moment): Step {
  const { solved, stages, removals, contactRadiiMm, habits } = setting;
  const facet = solved.facets[moment.k];
  const stage = stages[moment.stage ?? 0];
  const removal = removals[moment.stage ?? 0];
  const radius = contactRadiiMm[facet.tierIndex];
  const count = strokesFor(moment.removeMm3, removal ?? guessRemoval(stage), radius);
  return {
    kind: "grind",
    tier: moment.tier,
    stage: stage.id,
    facet: moment.facet,
    wheelStop: facet.wheelStop,
    widthMm: moment.widthMm,
    removeMm3: moment.removeMm3,
    strokes: removal ? count : null,
    minutes: habits.indexMin + (count * habits.strokeSeconds) / 60,
  };
}

/** A pass with the moments at which glass is ground: a facet that earlier ones have taken already is none. */
interface WorkedPass extends Pass {
  readonly moments: readonly Moment[];
}

/** Passes in which anything is ground, in order. */
function workedPasses({ solved, stages, facetOrder }: OrderSetting, way: Way): readonly WorkedPass[] {
  const passes = passesOf(solved, stages, way, facetOrder);
  const moments = walk(
    solved,
    passes.flatMap((p) => p.moves),
  );
  let walked = 0;
  return passes
    .map((pass) => {
      const own = moments.slice(walked, walked + pass.moves.length);
      walked += pass.moves.length;
      return { ...pass, moments: own.filter(({ widthMm }) => widthMm > 0) };
    })
    .filter((pass) => pass.moments.length > 0);
}

/** Steps after the last pass of a tier: look at the polish where there is one, measure what was cut. */
function leadOut({ solved, stages, habits }: OrderSetting, pass: Pass, facets: number): Step[] {
  const { id: tier, ...own } = solved.plan.tiers[pass.tierIndex];
  if (pass.stage !== stageCount(own, stages) - 1) return [];
  const look: Step[] = endsByLooking(stages, pass.stage)
    ? [{ kind: "inspect-polish", tier, minutes: habits.inspectMin * facets }]
    : [];
  return [...look, { kind: "measure-as-cut", tier, minutes: habits.measureMin }];
}

/** One way of doing the work. A plan without anything to grind has the preparations only. */
export function workInOrder(setting: OrderSetting, way: Way): Work {
  const passes = workedPasses(setting, way);
  const steps: Step[] = [{ kind: "prepare", what: PREPARATIONS, minutes: setting.habits.prepareMin }];
  passes.forEach((pass, i) => {
    const armHasStood = passes.slice(0, i).some((p) => p.tierIndex === pass.tierIndex);
    steps.push(...leadIn(setting, pass, passes[i - 1] ?? null, armHasStood));
    steps.push(...pass.moments.map((moment) => grindStep(setting, moment)));
    steps.push(...leadOut(setting, pass, pass.moments.length));
  });
  const count = (...kinds: Step["kind"][]) => steps.filter((s) => kinds.includes(s.kind)).length;
  return {
    way,
    discChanges: count("fit-disc"),
    armSettings: count("set-arm", "find-angle-again"),
    turnOvers: count("turn-over"),
    minutes: steps.reduce((sum, step) => sum + step.minutes, 0),
    minutesAreGuess: passes.some((p) => setting.removals[p.stage] === null),
    steps,
  };
}

/** A pass as a whole: how many of the tier's facets are ground in it, and what they lose together. */
export interface PassSum extends Pass {
  readonly facets: number;
  readonly removeMm3: number;
}

/** What `workInOrder` says of the minutes, from sums of passes: strokes go with volume, so the single facets need not be known. */
export function minutesOfPasses(setting: OrderSetting, passes: readonly PassSum[]): number {
  const { stages, removals, contactRadiiMm, habits } = setting;
  const sum = (steps: readonly Step[]) => steps.reduce((all, { minutes }) => all + minutes, 0);
  return passes.reduce((minutes, pass, i) => {
    const armHasStood = passes.slice(0, i).some((p) => p.tierIndex === pass.tierIndex);
    const removal = removals[pass.stage] ?? guessRemoval(stages[pass.stage]);
    const strokes = strokesFor(pass.removeMm3, removal, contactRadiiMm[pass.tierIndex]);
    return (
      minutes +
      sum(leadIn(setting, pass, passes[i - 1] ?? null, armHasStood)) +
      pass.facets * habits.indexMin +
      (strokes * habits.strokeSeconds) / 60 +
      sum(leadOut(setting, pass, pass.facets))
    );
  }, habits.prepareMin);
}

/** Tier pairs that share an edge on the finished piece, earlier first: `edges` as facet positions. */
function borderingTiers(
  solved: SolvedPlan,
  edges: readonly { readonly a: number; readonly b: number }[],
): readonly (readonly [number, number])[] {
  const keys = new Set(
    edges.map(({ a, b }) => {
      const [s, t] = [solved.facets[a].tierIndex, solved.facets[b].tierIndex];
      return `${Math.min(s, t)} ${Math.max(s, t)}`;
    }),
  );
  return [...keys].map((key) => key.split(" ").map(Number) as [number, number]).filter(([s, t]) => s !== t);
}

/**
 * Warns where a coarse stage of one tier is ground right beside an earlier tier that is already polished: stray grains
 * scratch it. Holds for the way that finishes each tier.
 */
export function coarseBesidePolished(
  solved: SolvedPlan,
  stages: readonly Stage[],
  edges: readonly { readonly a: number; readonly b: number }[],
): readonly BenchFinding[] {
  return borderingTiers(solved, edges).flatMap(([earlier, later]): BenchFinding[] => {
    const [done, next] = [solved.plan.tiers[earlier], solved.plan.tiers[later]];
    const start = tierStages(solved, later, stages).findIndex(({ widthMm }) => widthMm > 0);
    const isPolished = (done.finish ?? "polished") === "polished";
    if (!isPolished || start < 0 || endsByLooking(stages, start)) return [];
    return [
      {
        code: "coarse-beside-polished",
        severity: "warn",
        tier: next.id,
        data: { stage: stages[start].id, polishedTier: done.id },
      },
    ];
  });
}

/** Says that the piece is turned over more than once: each transfer costs alignment. */
export function turnOverFindings(work: Work): readonly BenchFinding[] {
  if (work.turnOvers < 2) return [];
  return [
    {
      code: "turned-over-often",
      severity: "warn",
      data: { turnOvers: work.turnOvers },
    },
  ];
}
