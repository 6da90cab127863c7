/** What the lap needs of a plan: rig settings, widths, strokes, the order of work and what to look out for. */
import { wheelFindings } from "../check/findings-wheel.ts";
import { cutBall } from "../geometry/solid.ts";
import type { Habits, Plan, SetUpDop, Side, Stage } from "../plan/document.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { type CaliperReading, caliperFigures, caliperOf } from "./as-cut/caliper.ts";
import type { FoundAgain } from "./as-cut/found-again.ts";
import type { BenchFinding, Finding } from "./bench-finding.ts";
import { coarseBesidePolished, habitsOf, turnOverFindings, type Work, workInOrder } from "./order/order.ts";
import { heightPerDegree, type RigSetting, rigSetting, type TierPose } from "./rig/rig.ts";
import { type DiscHeight, discHeights } from "./rig/rig-discs.ts";
import { beforeTurning, rigFindings } from "./rig/rig-findings.ts";
import {
  drawGuide,
  drawRig,
  type GuideDrawing,
  type Holder,
  type RigDrawing,
  seatOnBall,
} from "./rig/rig-pose.ts";
import { type FacetOrder, facetsInOrder, readStop, type StopRead } from "./rig/set-up.ts";
import { DEFAULT_STAGES, stagesOf } from "./stages/default-stages.ts";
import { depthsBefore, sizeAt, tierFacets } from "./stages/half-cut.ts";
import {
  type FacetStage,
  facetStages,
  stageCount,
  startFindings,
  type TierStage,
  tierStages,
} from "./stages/stages.ts";
import { calibrate, type Removal, strokesFor, wearFindings } from "./stages/strokes.ts";

interface BenchTierStage extends TierStage {
  /** Mean over the tier's facets; null where nothing was calibrated. */
  readonly strokes: number | null;
}
interface BenchFacetStage extends FacetStage {
  readonly strokes: number | null;
}
export interface BenchFacet {
  readonly facet: string;
  readonly wheelStop: number | null;
  readonly read: StopRead;
  readonly stages: readonly BenchFacetStage[];
}
export interface BenchTier {
  readonly tier: string;
  readonly side: Side;
  readonly armAngleDeg: number;
  readonly pose: TierPose;
  /** Null without arm or lap. */
  readonly setting: RigSetting | null;
  readonly drawing: RigDrawing | null;
  /** The way by hand, for a tier that this arm can't reach at any length; else null. */
  readonly guide: GuideDrawing | null;
  /** Outside calipers on the finished tier; null when nothing of it is left. */
  readonly caliper: CaliperReading | null;
  readonly discs: readonly DiscHeight[];
  /** Millimetres of pivot height that a degree is worth; null without arm or lap. */
  readonly heightPerDegreeMm: number | null;
  /** Stages that the tier goes through: fewer than there are when it is to stay ground or pre-polished. */
  readonly stageCount: number;
  readonly stages: readonly BenchTierStage[];
  readonly facets: readonly BenchFacet[];
}
export interface Bench {
  readonly tiers: readonly BenchTier[];
  readonly order: readonly Work[];
  readonly findings: readonly Finding[];
}

/**
 * Whether a tier is ground at a stage: it goes through it, is deep enough for it, and earlier tiers have left some of its
 * glass at that depth.
 */
export const isWorked = ({ stages, stageCount: count }: BenchTier, stage: number): boolean =>
  stage < count && stages[stage].widthMm > 0;

/** Whether anything of a facet is ground at a stage: not where earlier facets have taken all of it. */
export const isGround = ({ stages }: BenchFacet, stage: number): boolean =>
  stages[stage].widthWhileGroundMm > 0;

/** The dop that holds the piece while one side is cut; null when none was named. */
export const dopOf = (plan: Plan, side: Side): SetUpDop | null =>
  plan.rig.setUps?.[side]?.dop ?? plan.piece.dop ?? null;

/** Where the dop's end sits: on the ball's skin, or on the flat at that pole when an earlier tier has cut one. */
function holderOf(solved: SolvedPlan, tierIndex: number): Holder | null {
  const { side } = solved.plan.tiers[tierIndex];
  const dop = dopOf(solved.plan, side);
  if (!dop) return null;
  const flats = solved.plan.tiers.flatMap((tier, i) =>
    i < tierIndex && tier.side !== side && tier.armAngleDeg === 90
      ? [solved.radiusMm - solved.tiers[i].depthMm]
      : [],
  );
  return { dop, seatMm: Math.min(seatOnBall(solved.radiusMm, dop.diameterMm), ...flats) };
}

/** Pose, facet extents and holder of a finished tier, later tiers uncut: all that the rig has to know. */
function onRig(solved: SolvedPlan, tierIndex: number) {
  const tier = solved.tiers[tierIndex];
  const depths = depthsBefore(solved, tierIndex);
  for (const k of tierFacets(tier)) depths[k] = tier.depthMm;
  const pose: TierPose = {
    armAngleDeg: solved.plan.tiers[tierIndex].armAngleDeg,
    planeMm: solved.radiusMm - tier.depthMm,
    radiusMm: solved.radiusMm,
  };
  // The first facet that anything is left of stands for its tier.
  const sizes = tierFacets(tier).map((k) => sizeAt(solved, depths, k));
  const size = sizes.find(({ widthMm }) => widthMm > 0) ?? sizes[0];
  return { pose, size, holder: holderOf(solved, tierIndex) };
}

interface TierAndFindings {
  readonly tier: BenchTier;
  readonly findings: readonly Finding[];
}

function rigOf(
  solved: SolvedPlan,
  tierIndex: number,
  stages: readonly Stage[],
  caliper: CaliperReading | null,
) {
  const { arm, lap } = solved.plan.rig;
  const { id, side } = solved.plan.tiers[tierIndex];
  const { pose, size, holder } = onRig(solved, tierIndex);
  if (!arm || !lap)
    return {
      pose,
      setting: null,
      drawing: null,
      guide: null,
      discs: [],
      heightPerDegreeMm: null,
      findings: [],
    };
  const setting = rigSetting(arm, lap, pose);
  const draw = (p: TierPose, s: RigSetting) => drawRig(arm, lap, p, s, holder, size.polewardMm);
  const drawing = draw(pose, setting);
  const tipped = side === "back" ? beforeTurning(arm, lap, pose, draw) : null;
  const early: BenchFinding[] = tipped
    ? [
        {
          code: "cut-before-turning",
          severity: "info",
          tier: id,
          data: { pivotHeightMm: tipped.pivotHeightMm, armLengthMm: tipped.armLengthMm },
        },
      ]
    : [];
  const own = rigFindings(id, arm, lap, pose, setting, drawing, {
    caliperMm: caliper?.isBlocked ? null : caliperFigures(caliper),
    widthMm: size.widthMm,
  });
  const isByHand = own.some(({ code }) => code === "guide-by-hand");
  return {
    pose,
    setting,
    drawing,
    guide: isByHand ? drawGuide(pose, holder, size.polewardMm) : null,
    discs: discHeights(arm, stages, setting, pose, size.heightMm),
    heightPerDegreeMm: heightPerDegree(setting.armLengthMm, pose.armAngleDeg, arm.hingeOffsetMm),
    findings: [...own, ...early],
  };
}

function tierBench(
  solved: SolvedPlan,
  tierIndex: number,
  stages: readonly Stage[],
  removals: readonly (Removal | null)[],
  facetOrder: FacetOrder,
): TierAndFindings {
  const { id, side } = solved.plan.tiers[tierIndex];
  const count = stageCount(solved.plan.tiers[tierIndex], stages);
  const solvedTier = solved.tiers[tierIndex];
  const caliper = caliperOf(solved, tierIndex, dopOf(solved.plan, side));
  const { findings, ...rig } = rigOf(solved, tierIndex, stages, caliper);
  const radius = rig.setting?.contactRadiusMm ?? null;
  const strokes = (mm3: number, i: number) => {
    const removal = removals[i];
    return removal ? strokesFor(mm3, removal, radius) : null;
  };
  const facets = facetsInOrder(solved, tierIndex, facetOrder);
  const work = facetStages(solved, tierIndex, stages, facets);
  const meanMm3 = (i: number) => work.reduce((sum, own) => sum + own[i].removeMm3, 0) / work.length;
  const tier: BenchTier = {
    tier: id,
    side,
    armAngleDeg: rig.pose.armAngleDeg,
    ...rig,
    caliper,
    stageCount: count,
    stages: tierStages(solved, tierIndex, stages).map((stage, i) => ({
      ...stage,
      strokes: strokes(meanMm3(i), i),
    })),
    facets: facets.map((k, position) => ({
      facet: solved.facets[k].id,
      wheelStop: solved.facets[k].wheelStop,
      read: readStop(solved.plan, solved.facets[k]),
      stages: work[position].map((stage, i) => ({ ...stage, strokes: strokes(stage.removeMm3, i) })),
    })),
  };
  return { tier, findings: [...findings, ...startFindings(id, solvedTier.depthMm, stages, count)] };
}

const DEFAULT_STAGES_FINDING: BenchFinding = {
  code: "default-stages",
  severity: "info",
  data: { stages: DEFAULT_STAGES.map((stage) => stage.id) },
};

/** Strokes of each stage over the whole plan; 0 where nothing was calibrated. */
const plannedStrokes = (tiers: readonly BenchTier[], stages: readonly Stage[]): readonly number[] =>
  stages.map((_, i) =>
    tiers.reduce(
      (sum, tier) => sum + tier.facets.reduce((own, facet) => own + (facet.stages[i].strokes ?? 0), 0),
      0,
    ),
  );

/**
 * The whole bench of a solved plan.
 * @param facetOrder where each ring begins: its facets stand and are ground in that order, with the widths that go with it
 */
export function benchOf(
  solved: SolvedPlan,
  habits: Required<Habits> = habitsOf(solved.plan.rig),
  facetOrder: FacetOrder = "ring",
): Bench {
  const { plan, radiusMm } = solved;
  const stages = stagesOf(plan.rig);
  const removals = stages.map((stage) => calibrate(stage, radiusMm, plan.rig.lap));
  const tiers = plan.tiers.map((_, i) => tierBench(solved, i, stages, removals, facetOrder));
  const setting = {
    solved,
    stages,
    removals,
    contactRadiiMm: tiers.map(({ tier }) => tier.setting?.contactRadiusMm ?? null),
    habits,
    facetOrder,
  };
  const order = (["finish-each", "rough-all"] as const).map((way) => workInOrder(setting, way));
  return {
    tiers: tiers.map(({ tier }) => tier),
    order,
    findings: [
      ...solved.findings,
      ...(plan.rig.stages ? [] : [DEFAULT_STAGES_FINDING]),
      ...wheelFindings(solved),
      ...wearFindings(
        stages,
        removals,
        plannedStrokes(
          tiers.map(({ tier }) => tier),
          stages,
        ),
      ),
      ...tiers.flatMap(({ findings }) => findings),
      ...coarseBesidePolished(solved, stages, cutBall(solved.planes).edges),
      ...turnOverFindings(order[0]),
    ],
  };
}

/**
 * The bench as plain data. Rig numbers are null without arm or lap.
 * @param again what each tier's angle found again costs, in tier order
 */
export function benchData(bench: Bench, again: readonly (FoundAgain | null)[]) {
  return {
    tiers: bench.tiers.map(
      (
        { tier, side, armAngleDeg, setting, caliper, discs, heightPerDegreeMm, stageCount, stages, facets },
        i,
      ) => ({
        tier,
        side,
        armAngleDeg,
        pivotHeightMm: setting?.pivotHeightMm ?? null,
        armLengthMm: setting?.armLengthMm ?? null,
        contactRadiusMm: setting?.contactRadiusMm ?? null,
        dipAtTouchDeg: setting?.dipAtTouchDeg ?? null,
        speedMs: setting?.speedMs ?? null,
        reachable: setting?.reachable ?? null,
        reasons: setting?.reasons ?? [],
        caliperMm: caliperFigures(caliper),
        caliperTo: caliper && { ...caliper.opposite, underDop: caliper.isBlocked },
        heightPerDegreeMm,
        foundAgain: again[i],
        discs,
        lastStage: stages[stageCount - 1]?.stage ?? null,
        stages,
        facets: facets.map(({ facet, wheelStop, read, stages: own }) => ({
          facet,
          wheelStop,
          stopLabel: read.label,
          stages: own,
        })),
      }),
    ),
    order: bench.order,
    findings: bench.findings,
  };
}
