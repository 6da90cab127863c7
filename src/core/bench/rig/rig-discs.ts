/**
 * Discs and pads of different thickness. A thicker one lifts the grinding surface, so the hinge must be lifted by as much;
 * left where it is, the arm comes to rest less steep and the facet is turned.
 */
import type { Arm, Stage } from "../../plan/document.ts";
import { dipForRise, type RigSetting, type TierPose } from "./rig.ts";

export interface DiscHeight {
  readonly stage: string;
  /** Thickness of this disc or pad. */
  readonly discMm: number;
  /** Height of the hinge above the bare plate that carries the discs. */
  readonly hingeAbovePlateMm: number;
  /** How far the hinge is moved from the stage before, up counted positive; 0 for the first. */
  readonly moveHingeMm: number;
  /** How far the facet turns when the hinge stays where the stage before had it; null when the arm can't come to rest. */
  readonly uncorrectedDeg: number | null;
  /** The wedge that this turn leaves to grind across the facet's height, mm, never negative. */
  readonly wedgeMm: number | null;
}

const thickness = (stage: Stage): number => stage.discMm ?? 0;

/** Arm angle at which the facet comes to lie flat when the surface has risen by `riseMm` and the hinge has not followed. */
function turnedBy(arm: Arm, setting: RigSetting, pose: TierPose, riseMm: number): number | null {
  const rise = setting.pivotHeightMm - riseMm - pose.planeMm;
  const dip = dipForRise(rise, setting.armLengthMm, arm.hingeOffsetMm);
  return dip === null ? null : dip - pose.armAngleDeg;
}

/**
 * One entry a stage, in order.
 * @param facetHeightMm extent of the finished facet along its meridian, the way in which it is turned
 */
export function discHeights(
  arm: Arm,
  stages: readonly Stage[],
  setting: RigSetting,
  pose: TierPose,
  facetHeightMm: number,
): readonly DiscHeight[] {
  return stages.map((stage, i) => {
    const before = i === 0 ? thickness(stage) : thickness(stages[i - 1]);
    const moveHingeMm = thickness(stage) - before;
    const turn = turnedBy(arm, setting, pose, moveHingeMm);
    return {
      stage: stage.id,
      discMm: thickness(stage),
      hingeAbovePlateMm: setting.pivotHeightMm + thickness(stage),
      moveHingeMm,
      uncorrectedDeg: moveHingeMm === 0 ? 0 : turn,
      wedgeMm: turn === null ? null : facetHeightMm * Math.abs(Math.sin((turn * Math.PI) / 180)),
    };
  });
}
