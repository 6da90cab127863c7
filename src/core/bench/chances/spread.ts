/**
 * The artist's own spread, and how the piece and its dop differ from the plan. Each is one standard deviation except
 * run-out, which is measured, and diameters, which are measured too.
 */
import type { Plan, Side } from "../../plan/document.ts";
import { dopOf } from "../bench.ts";

/** How the artist knows when to stop a facet: by its width, or when it has come to a fixed depth (hinge height, flat to skin). */
export type StopBy = "width" | "depth";

export interface SpreadSetting {
  /** Arm angle, set once a tier, so common to its facets. */
  readonly armDeg: number;
  /** Play of the wheel's stop, new for each facet. */
  readonly stopDeg: number;
  /** Depth at which a facet is stopped, new for each facet. */
  readonly depthMm: number;
  /** Width at which a facet is stopped when stopping by width, new for each facet. */
  readonly widthMm: number;
  /** How far the piece's axis circles about the dop's, one a side. */
  readonly runOutMm: Readonly<Record<Side, number>>;
  /** Three half-diameters: the skin is taken as an ellipsoid that lies anyhow. */
  readonly semiAxesMm: readonly [number, number, number];
}

/** Common practice, no source: what a practised hand does on a simple rig. */
export const DEFAULT_SPREAD = { armDeg: 0.25, stopDeg: 0.1, depthMm: 0.05, widthMm: 0.1 } as const;

/** Three half-diameters from one to three measured ones; a missing third lies midway. */
export function semiAxes(plan: Plan): SpreadSetting["semiAxesMm"] {
  const own = plan.piece.diameterMm / 2;
  const others = (plan.piece.otherDiametersMm ?? []).map((d) => d / 2);
  const second = others[0] ?? own;
  return [own, second, others[1] ?? (own + second) / 2];
}

/** The plan's own spread, with defaults where it says nothing. */
export function spreadOf(plan: Plan, widthMm: number = DEFAULT_SPREAD.widthMm): SpreadSetting {
  const own = plan.rig.spread ?? {};
  const runOut = (side: Side) => dopOf(plan, side)?.runOutMm ?? 0;
  return {
    armDeg: own.armDeg ?? DEFAULT_SPREAD.armDeg,
    stopDeg: own.stopDeg ?? DEFAULT_SPREAD.stopDeg,
    depthMm: own.depthMm ?? DEFAULT_SPREAD.depthMm,
    widthMm,
    runOutMm: { front: runOut("front"), back: runOut("back") },
    semiAxesMm: semiAxes(plan),
  };
}

const SOURCES = ["armAngle", "stopPlay", "depth", "width", "outOfRound", "runOut"] as const;
export type Source = (typeof SOURCES)[number];
