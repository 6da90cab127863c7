/**
 * What a plan's findings are, as data: a code, how much it matters, where, and the numbers that go with the code. Words are
 * made of them elsewhere (`src/words`), one table a language. Lengths in mm, angles in degrees, tiers and facets by id.
 */
import type { DepthRule } from "./document.ts";

type None = Readonly<Record<never, never>>;
interface Got {
  /** What there is. */
  readonly got: number;
}
interface Less extends Got {
  /** What should be in its stead. */
  readonly asked: number;
}
interface Named {
  /** The tier that the rule names. */
  readonly other: string;
}

/** Why a depth rule can't be met, with what goes with each reason. */
interface Reasons {
  /** One facet alone has no neighbour. */
  single: None;
  "same-place": Less;
  "already-closer": Less;
  "never-shared": None;
  "too-long": Less;
  "too-wide": Less;
  /** Earlier tiers have taken all the glass. */
  covered: None;
  "no-corners": Named;
  /** Neighbours of the tier named stand so far apart. */
  "open-below": Named & Got;
  "ground-away": Named;
  "stays-open": Named;
  /** Other tiers lie between already: no skin borders both, however shallow. */
  "nothing-between": Named;
}
export type UnmetWhy = keyof Reasons;

/** A reason as a rule finds it; lengths as fractions of the radius. */
export type Unmet = { readonly [W in UnmetWhy]: { readonly why: W } & Reasons[W] }[UnmetWhy];

/** A rule that can't be met; `got` in mm, null where the reason has no number, `other` null where the rule names no tier. */
export type RuleUnmet<W extends UnmetWhy = UnmetWhy> = {
  readonly [K in W]: {
    readonly why: K;
    readonly rule: DepthRule["rule"];
    readonly asked: number | null;
    readonly got: Reasons[K] extends Got ? number : null;
    /** Of the nearest that can be done; 0 where nothing can. */
    readonly depthMm: number;
    readonly armAngleDeg: number;
    readonly count: number;
    readonly other: Reasons[K] extends Named ? string : string | null;
  };
}[W];

interface Twice {
  readonly count: number;
  /** The tier that keeps the face. */
  readonly other: string;
}
/** Meets that are lost. */
interface Lost {
  /** By how much the worst of them is missed. */
  readonly missMm: number;
  /** How many corners, and how many pairs of neighbours. */
  readonly corners: number;
  readonly pairs: number;
}
interface GlassLeft {
  readonly leastMm: number;
  readonly wantedMm: number;
  readonly depthMm: number;
  readonly depthThatClearsMm: number;
}

/** The data of each code. */
export interface PlanFindingData {
  // what solving says
  "rule-unmet": RuleUnmet;
  /** Facets pass the corner they come to. */
  overshoot: { readonly worstMm: number; readonly of: string };
  // the wheel
  "start-moved": {
    readonly stops: number;
    readonly movedDeg: number;
    readonly startDeg: number;
    readonly placedDeg: number;
  };
  uneven: {
    readonly stops: number;
    readonly count: number;
    readonly errorDeg: number;
    readonly gapMm: number;
    readonly evenStepDeg: number;
    /** Counts that the wheel divides. */
    readonly counts: readonly number[];
    readonly nearestCount: number;
  };
  "wheel-splits": Lost & {
    readonly stops: number | null;
    readonly movedDeg: number;
    /** Wheels that keep all. */
    readonly wheels: readonly number[];
    /** The nearest start that keeps all; null when none does. */
    readonly startDeg: number | null;
  };
  /** Lost by the plan's last edit. */
  "edit-splits": Lost;
  // facets that are not what they were meant to be
  vanished: None;
  duplicate: Twice & { readonly keeps: string; readonly swallowed: string };
  "near-duplicate": Twice & { readonly apartDeg: number; readonly apartMm: number };
  swallowed: { readonly depthMm: number; readonly neededMm: number; readonly all: boolean };
  lost: { readonly by: readonly string[] };
  sliver: { readonly leastMm: number; readonly toleranceMm: number };
  // meets
  "near-miss": { readonly count: number; readonly missMm: number; readonly skin: boolean };
  /** Corners of tier `of`, which has `all`, that a tier named for them has too few facets for, or the wrong number. */
  "corners-left": {
    readonly of: string;
    readonly count: number;
    readonly all: number;
    readonly missMm: number;
  };
  "short-edge": { readonly count: number; readonly longestMm: number };
  "skin-between": {
    readonly tiers: readonly [string, string];
    readonly leastMm: number;
    readonly mostMm: number;
  };
  // where facets must not go
  "under-dop": {
    readonly byMm: number;
    readonly dopMm: number;
    readonly side: "front" | "back";
    readonly fitsMm: number;
  };
  "inside-broken": GlassLeft;
  "inside-thin": GlassLeft;
  /** How far the inside reaches out of the uncut ball at the most. */
  "inside-outside": { readonly byMm: number };
  /** An id that the inside names and the plan has no picture for: nothing is seen there. */
  "picture-missing": { readonly picture: string };
}
export type PlanFindingCode = keyof PlanFindingData;

type Severity = "info" | "warn" | "stop";

/** Findings whose codes and data stand in one map. */
export type FindingOf<D, C extends keyof D> = {
  readonly [K in C]: {
    readonly code: K;
    readonly severity: Severity;
    readonly tier?: string;
    readonly facets?: readonly string[];
    readonly data: D[K];
  };
}[C];

export type PlanFinding<C extends PlanFindingCode = PlanFindingCode> = FindingOf<PlanFindingData, C>;
