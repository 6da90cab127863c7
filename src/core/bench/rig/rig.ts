/**
 * Where the arm's pivot stands, how far the arm is slid out and where on the lap a facet is ground.
 *
 * Everything lies in the vertical plane through the lap's axis and the hinge: x is the distance from the lap's axis
 * (the hinge at x = pivotToAxisMm), heights are above the grinding surface, whatever disc makes it. The arm dips by the
 * arm angle when the facet is finished, because its normal then points straight down and the centre stands h above the
 * surface. Millimetres and degrees.
 */
import { cosDeg, sinDeg } from "../../geometry/plane.ts";
import { SAME_PLACE } from "../../geometry/tolerance.ts";
import type { Arm, Lap } from "../../plan/document.ts";

const DEG = Math.PI / 180;
const MM_PER_M = 1000;
const SECONDS_PER_MINUTE = 60;

export type ReasonCode = "radius-inside-band" | "radius-outside-band" | "pivot-too-low" | "pivot-too-high";
/** Why a tier is out of the rig's reach: what is needed and the limit that it passes, mm. */
export interface Reason {
  readonly code: ReasonCode;
  readonly needsMm: number;
  readonly limitMm: number;
}

export interface RigSetting {
  /** Height of the hinge above the grinding surface when the facet is finished. */
  readonly pivotHeightMm: number;
  readonly armLengthMm: number;
  /** Distance of the finished facet's foot from the lap's axis. */
  readonly contactRadiusMm: number;
  /** How far the arm dips when glass first touches at this pivot height; null when the arm can't stand so that it touches. */
  readonly dipAtTouchDeg: number | null;
  /** Speed of the lap's surface under the facet, m/s. */
  readonly speedMs: number;
  readonly reachable: boolean;
  readonly reasons: readonly Reason[];
}

/** What the rig needs to know of a tier: `planeMm` is h, the facet's distance from the centre. */
export interface TierPose {
  readonly armAngleDeg: number;
  readonly planeMm: number;
  readonly radiusMm: number;
}

/** Height of the hinge over the piece's centre: L sin a, and o cos a more when it lies o above the dop's axis. */
export const hingeRise = (lengthMm: number, dipDeg: number, hingeOffsetMm = 0): number =>
  lengthMm * sinDeg(dipDeg) + hingeOffsetMm * cosDeg(dipDeg);

/** Level distance from the hinge to the piece's centre: L cos a, less o sin a. */
export const hingeReach = (lengthMm: number, dipDeg: number, hingeOffsetMm = 0): number =>
  lengthMm * cosDeg(dipDeg) - hingeOffsetMm * sinDeg(dipDeg);

/**
 * The dip at which the hinge stands `riseMm` over the piece's centre, degrees, -90..90 for a hinge on the axis; null when
 * the arm is too short for that. L sin d + o cos d = rise is solved as sqrt(L^2 + o^2) sin(d + atan(o / L)) = rise.
 */
export function dipForRise(riseMm: number, lengthMm: number, hingeOffsetMm = 0): number | null {
  const ratio = riseMm / Math.hypot(lengthMm, hingeOffsetMm);
  if (Math.abs(ratio) > 1) return null;
  return (Math.asin(ratio) - Math.atan2(hingeOffsetMm, lengthMm)) / DEG;
}

/** Surface speed in m/s at a distance from the lap's axis. */
export const surfaceSpeed = (radiusMm: number, rpm: number): number =>
  (2 * Math.PI * radiusMm * rpm) / SECONDS_PER_MINUTE / MM_PER_M;

export const bandMiddle = (lap: Lap): number => (lap.bandMm[0] + lap.bandMm[1]) / 2;

const contactRadius = (arm: Arm, dipDeg: number, lengthMm: number): number =>
  Math.abs(arm.pivotToAxisMm - hingeReach(lengthMm, dipDeg, arm.hingeOffsetMm));

/**
 * The arm length, within its range, that puts the facet nearest the middle of the band, judged by radius alone; the
 * shorter of two equals. At 90 degrees the length doesn't move the facet, so the shortest is taken.
 */
export function bestArmLength(arm: Arm, lap: Lap, dipDeg: number): number {
  const [shortest, longest] = arm.lengthMm;
  const middle = bandMiddle(lap);
  const cosine = cosDeg(dipDeg);
  const foot = arm.pivotToAxisMm + (arm.hingeOffsetMm ?? 0) * sinDeg(dipDeg);
  // The facet comes to the middle on the near side of the lap's axis, or on the far side.
  const wished = cosine === 0 ? [] : [(foot - middle) / cosine, (foot + middle) / cosine];
  const allowed = wished.map((length) => Math.min(Math.max(length, shortest), longest));
  const misses = [shortest, ...allowed, longest]
    .sort((a, b) => a - b)
    .map((length) => ({ length, miss: Math.abs(contactRadius(arm, dipDeg, length) - middle) }));
  const least = Math.min(...misses.map((m) => m.miss));
  return misses.find((m) => m.miss <= least + SAME_PLACE)!.length;
}

/** What a value falls short of or goes beyond; null within the range (rounding of doubles doesn't count). */
function outside(value: number, [min, max]: readonly [number, number], low: ReasonCode, high: ReasonCode) {
  if (value < min - SAME_PLACE) return { code: low, needsMm: value, limitMm: min };
  if (value > max + SAME_PLACE) return { code: high, needsMm: value, limitMm: max };
  return null;
}

/** Contact radius within the band and pivot height within its range: nothing else decides whether a tier is in reach. */
function reasonsAgainst(
  arm: Arm,
  lap: Lap,
  contactRadiusMm: number,
  pivotHeightMm: number,
): readonly Reason[] {
  return [
    outside(contactRadiusMm, lap.bandMm, "radius-inside-band", "radius-outside-band"),
    outside(pivotHeightMm, arm.pivotHeightMm, "pivot-too-low", "pivot-too-high"),
  ].filter((reason) => reason !== null);
}

/** The setting at a given arm length; `dipDeg` may be negative, the arm tipped up. */
export function settingAtLength(arm: Arm, lap: Lap, pose: TierPose, armLengthMm: number): RigSetting {
  const offset = arm.hingeOffsetMm ?? 0;
  const pivotHeightMm = pose.planeMm + hingeRise(armLengthMm, pose.armAngleDeg, offset);
  const contactRadiusMm = contactRadius(arm, pose.armAngleDeg, armLengthMm);
  const reasons = reasonsAgainst(arm, lap, contactRadiusMm, pivotHeightMm);
  return {
    pivotHeightMm,
    armLengthMm,
    contactRadiusMm,
    dipAtTouchDeg: dipForRise(pivotHeightMm - pose.radiusMm, armLengthMm, offset),
    speedMs: surfaceSpeed(contactRadiusMm, lap.rpm),
    reachable: reasons.length === 0,
    reasons,
  };
}

/** The setting of the rig for a tier, with the arm slid so that the facet lands nearest the middle of the band. */
export const rigSetting = (arm: Arm, lap: Lap, pose: TierPose): RigSetting =>
  settingAtLength(arm, lap, pose, bestArmLength(arm, lap, pose.armAngleDeg));

/** Millimetres of pivot height that one degree of arm angle is worth at a finished facet, h unchanged. */
export const heightPerDegree = (armLengthMm: number, armAngleDeg: number, hingeOffsetMm = 0): number =>
  hingeReach(armLengthMm, armAngleDeg, hingeOffsetMm) * DEG;
