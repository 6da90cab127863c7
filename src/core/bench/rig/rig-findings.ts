/** What the bench must know of a tier on this rig before glass meets the lap: reach, other lengths, other ways, collisions. */
import { cosDeg, sinDeg } from "../../geometry/plane.ts";
import type { Arm, Lap } from "../../plan/document.ts";
import type { BenchFinding, BenchFindingCode, Finding, FindingCode } from "../bench-finding.ts";
import { type RigSetting, settingAtLength, type TierPose } from "./rig.ts";
import { clearances, type RigDrawing } from "./rig-pose.ts";

type Interval = readonly [number, number];

/** Arm lengths, whatever the arm's range, that put a facet within the band: near side of the lap's axis, then far side. */
function lengthsInBand(arm: Arm, lap: Lap, dipDeg: number): readonly Interval[] {
  const cosine = cosDeg(dipDeg);
  if (cosine === 0) return [];
  const foot = arm.pivotToAxisMm + (arm.hingeOffsetMm ?? 0) * sinDeg(dipDeg);
  const [inner, outer] = lap.bandMm;
  return [
    [(foot - outer) / cosine, (foot - inner) / cosine],
    [(foot + inner) / cosine, (foot + outer) / cosine],
  ];
}

/** Arm lengths that keep the pivot height within its range; null when no length does. */
function lengthsInHeight(arm: Arm, pose: TierPose): Interval | null {
  const sine = sinDeg(pose.armAngleDeg);
  const base = pose.planeMm + (arm.hingeOffsetMm ?? 0) * cosDeg(pose.armAngleDeg);
  const [low, high] = arm.pivotHeightMm;
  if (sine === 0) return base >= low && base <= high ? [0, Number.POSITIVE_INFINITY] : null;
  const ends = [(low - base) / sine, (high - base) / sine];
  return [Math.min(...ends), Math.max(...ends)];
}

const overlap = (a: Interval, b: Interval): Interval | null => {
  const [from, to] = [Math.max(a[0], b[0]), Math.min(a[1], b[1])];
  return from <= to ? [from, to] : null;
};
const nearest = (value: number, [from, to]: Interval): number => Math.min(Math.max(value, from), to);

/** A length of the arm's own range with which the tier is in reach although the best radius is not; null when none. */
export function otherLength(arm: Arm, lap: Lap, pose: TierPose, setting: RigSetting): number | null {
  const byHeight = lengthsInHeight(arm, pose);
  if (!byHeight) return null;
  const choices = lengthsInBand(arm, lap, pose.armAngleDeg).flatMap((band) => {
    const both = overlap(band, byHeight);
    const allowed = both && overlap(both, arm.lengthMm);
    return allowed ? [nearest(setting.armLengthMm, allowed)] : [];
  });
  const distance = (length: number) => Math.abs(length - setting.armLengthMm);
  return choices.sort((a, b) => distance(a) - distance(b))[0] ?? null;
}

export interface Extension {
  readonly lengthMm: number;
  /** How much longer than the longest arm; below 0, how much shorter than the shortest. */
  readonly byMm: number;
  readonly pivotHeightMm: number;
}

/** The change of arm that would bring the facet into the band, the smallest one; null when no length does (a flat at the pole). */
export function extensionNeeded(arm: Arm, lap: Lap, pose: TierPose): Extension | null {
  const [shortest, longest] = arm.lengthMm;
  const choices = lengthsInBand(arm, lap, pose.armAngleDeg)
    .filter(([, to]) => to > 0)
    .map(([from, to]) => {
      const lengthMm = from > longest ? from : to < shortest ? to : nearest(shortest, [from, to]);
      return { lengthMm, byMm: lengthMm > longest ? lengthMm - longest : Math.min(0, lengthMm - shortest) };
    })
    .sort((a, b) => Math.abs(a.byMm) - Math.abs(b.byMm));
  const choice = choices[0];
  if (!choice) return null;
  return { ...choice, pivotHeightMm: settingAtLength(arm, lap, pose, choice.lengthMm).pivotHeightMm };
}

/** What tells that a facet is finished where no pivot height does, mm. */
export interface FinishedFacet {
  /** What calipers read with one jaw flat on it, least and greatest where its tier's facets differ; null where the dop is in the way. */
  readonly caliperMm: number | readonly [number, number] | null;
  readonly widthMm: number;
}

/** How a tier out of the arm's reach is ground by hand: the dop held in a guide against the lap, until the finished facet reads so. */
const guideFinding = (tier: string, pose: TierPose, finished: FinishedFacet): BenchFinding => ({
  code: "guide-by-hand",
  severity: "info",
  tier,
  data: { leanDeg: 90 - pose.armAngleDeg, ...finished },
});

function reachFindings(
  tier: string,
  arm: Arm,
  lap: Lap,
  pose: TierPose,
  setting: RigSetting,
  finished: FinishedFacet,
): BenchFinding[] {
  if (setting.reachable) return [];
  const reasons: BenchFinding[] = setting.reasons.map((reason) => ({
    code: reason.code,
    severity: "stop",
    tier,
    data: { needsMm: reason.needsMm, limitMm: reason.limitMm },
  }));
  const length = otherLength(arm, lap, pose, setting);
  if (length !== null) {
    const { pivotHeightMm, contactRadiusMm } = settingAtLength(arm, lap, pose, length);
    return [
      ...reasons,
      {
        code: "other-arm-length",
        severity: "info",
        tier,
        data: { armLengthMm: length, pivotHeightMm, contactRadiusMm },
      },
    ];
  }
  const extension = extensionNeeded(arm, lap, pose);
  const isRadius = setting.reasons.some((reason) => reason.code.startsWith("radius"));
  const stretch: BenchFinding[] =
    extension && isRadius && extension.byMm !== 0
      ? [
          {
            code: extension.byMm > 0 ? "extension-needed" : "shorter-arm-needed",
            severity: "info",
            tier,
            data: { ...extension },
          },
        ]
      : [];
  return [...reasons, ...stretch, ...(finished.widthMm > 0 ? [guideFinding(tier, pose, finished)] : [])];
}

function collisionFindings(tier: string, drawing: RigDrawing): BenchFinding[] {
  return clearances(drawing)
    .filter(({ mm }) => mm < 0)
    .map(({ part, mm }) => ({
      code: "hits-lap",
      severity: "stop" as const,
      tier,
      data: { part, overlapMm: -mm },
    }));
}

/** A facet that hangs over the rim or lies across the dead centre is not ground evenly. */
function facetFindings(tier: string, setting: RigSetting, drawing: RigDrawing): BenchFinding[] {
  // A facet that never comes onto the band is told so once.
  if (setting.reasons.some((reason) => reason.code === "radius-outside-band")) return [];
  const ends = drawing.facet.map(([x]) => x);
  const overRim = Math.max(...ends.map(Math.abs)) - drawing.lapRadiusMm;
  const rim: BenchFinding[] =
    overRim > 0
      ? [
          {
            code: "facet-over-rim",
            severity: "stop",
            tier,
            data: { overMm: overRim },
          },
        ]
      : [];
  const centre: BenchFinding[] =
    Math.min(...ends) < 0 && Math.max(...ends) > 0
      ? [
          {
            code: "facet-over-dead-centre",
            severity: "warn",
            tier,
            data: {},
          },
        ]
      : [];
  return [...rim, ...centre];
}

/** Codes of what `rigFindings` says, and of a back tier that can be cut before turning. */
const RIG_CODES: ReadonlySet<FindingCode> = new Set<BenchFindingCode>([
  "radius-inside-band",
  "radius-outside-band",
  "pivot-too-low",
  "pivot-too-high",
  "other-arm-length",
  "extension-needed",
  "shorter-arm-needed",
  "guide-by-hand",
  "hits-lap",
  "facet-over-rim",
  "facet-over-dead-centre",
  "cut-before-turning",
]);

/** Whether a finding is about a tier on the rig. */
export const isAboutRig = ({ code }: Finding): boolean => RIG_CODES.has(code);

/** All that is to say of one tier on this rig. */
export const rigFindings = (
  tier: string,
  arm: Arm,
  lap: Lap,
  pose: TierPose,
  setting: RigSetting,
  drawing: RigDrawing,
  finished: FinishedFacet,
): readonly BenchFinding[] => [
  ...reachFindings(tier, arm, lap, pose, setting, finished),
  ...collisionFindings(tier, drawing),
  ...facetFindings(tier, setting, drawing),
];

/**
 * Whether a back tier can be cut before the piece is turned over, with the arm tipped up by its angle: in reach so, and
 * neither dop, chuck nor arm meets the lap. Gives the setting, or null.
 */
export function beforeTurning(
  arm: Arm,
  lap: Lap,
  pose: TierPose,
  draw: (pose: TierPose, setting: RigSetting) => RigDrawing,
): RigSetting | null {
  const tipped: TierPose = { ...pose, armAngleDeg: -pose.armAngleDeg };
  const lengths = lengthsInBand(arm, lap, tipped.armAngleDeg);
  const byHeight = lengthsInHeight(arm, tipped);
  if (!byHeight) return null;
  for (const band of lengths) {
    const both = overlap(band, byHeight);
    const allowed = both && overlap(both, arm.lengthMm);
    if (!allowed) continue;
    const middle = (band[0] + band[1]) / 2;
    const setting = settingAtLength(arm, lap, tipped, nearest(middle, allowed));
    if (clearances(draw(tipped, setting)).every(({ mm }) => mm >= 0)) return setting;
  }
  return null;
}
