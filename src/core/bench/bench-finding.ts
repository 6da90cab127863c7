/** What the bench's findings are, as data; those of the plan itself stand in `../plan/finding.ts`. Millimetres, degrees, ids. */
import type { FindingOf, PlanFindingData } from "../plan/finding.ts";
import type { Help } from "./as-cut/fit-tier.ts";
import type { MeasureName } from "./as-cut/measurements.ts";
import type { ReasonCode } from "./rig/rig.ts";
import type { Extension, FinishedFacet } from "./rig/rig-findings.ts";
import type { Part } from "./rig/rig-pose.ts";

/** The data of each code. */
export type BenchFindingData = {
  // abrasives and order
  readonly "default-stages": { readonly stages: readonly string[] };
  readonly "start-at-stage": {
    readonly stage: string;
    readonly stageName: string;
    readonly depthMm: number;
  };
  readonly "nothing-to-grind": { readonly depthMm: number };
  /** `share`: what the disc takes at the end, as a part of what it takes now. */
  readonly "disc-dulls": { readonly stage: string; readonly plannedStrokes: number; readonly share: number };
  readonly "coarse-beside-polished": { readonly stage: string; readonly polishedTier: string };
  readonly "turned-over-often": { readonly turnOvers: number };
  // the rig
  readonly "other-arm-length": {
    readonly armLengthMm: number;
    readonly pivotHeightMm: number;
    readonly contactRadiusMm: number;
  };
  readonly "extension-needed": Extension;
  readonly "shorter-arm-needed": Extension;
  readonly "guide-by-hand": FinishedFacet & { readonly leanDeg: number };
  readonly "hits-lap": { readonly part: Part; readonly overlapMm: number };
  readonly "facet-over-rim": { readonly overMm: number };
  readonly "facet-over-dead-centre": Readonly<Record<never, never>>;
  readonly "cut-before-turning": { readonly pivotHeightMm: number; readonly armLengthMm: number };
  // as cut
  readonly undetermined: {
    readonly angleFromPlan: boolean;
    readonly depthFromPlan: boolean;
    readonly wouldHelp: Help | null;
  };
  readonly "measurements-disagree": {
    readonly measure: MeasureName;
    readonly measured: number;
    readonly fitted: number;
  };
  readonly "facet-too-deep": { readonly extraMm: number };
} & {
  /** Out of the rig's reach. */
  readonly [R in ReasonCode]: { readonly needsMm: number; readonly limitMm: number };
};
export type BenchFindingCode = keyof BenchFindingData;

export type BenchFinding<C extends BenchFindingCode = BenchFindingCode> = FindingOf<BenchFindingData, C>;

export type FindingData = PlanFindingData & BenchFindingData;
export type FindingCode = keyof FindingData;

/** Whatever is found, at the plan or at the bench. */
export type Finding<C extends FindingCode = FindingCode> = FindingOf<FindingData, C>;
