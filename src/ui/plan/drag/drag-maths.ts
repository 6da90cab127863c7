/**
 * From a moving pointer to the value of a tier: which of its values a movement means, how far, and where it rests.
 * Pure. The pointer's way is added up move by move, so that changing to fine movement in the middle does not jump.
 */
import type { Snap } from "../../../core/plan/snaps.ts";

export type DragValue = "angle" | "depth" | "start";

export interface Modifiers {
  /** No resting places. */
  readonly free: boolean;
  /** A tenth of the way, and finer steps. */
  readonly fine: boolean;
}

/** What part of the pointer's way counts when moving finely. */
const FINE = 0.1;
/** Steps in which values move: degrees and millimetres that a person can set and measure. */
const STEP = { angle: 0.5, depth: 0.05, start: 0.5 } as const;
const FINE_STEP = { angle: 0.1, depth: 0.01, start: 0.1 } as const;
/** Resting places catch the pointer within this many pixels. */
export const CATCH_PX = 9;
/** A press becomes a drag after this many pixels, and its first direction tells which value is meant. */
export const DRAG_STARTS_PX = 4;

/** A value on its way: where the pointer has taken it, before steps and resting places. */
export interface Travel {
  readonly value: DragValue;
  readonly at: number;
  readonly low: number;
  readonly high: number;
}

/** Least and greatest of each value; a start goes round and round. */
export function travelFrom(value: DragValue, at: number, radiusMm: number): Travel {
  if (value === "angle") return { value, at, low: 0, high: 90 };
  if (value === "depth") return { value, at, low: 0, high: radiusMm };
  return { value, at, low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
}

export const travelBy = (travel: Travel, delta: number, { fine }: Modifiers): Travel => ({
  ...travel,
  at: Math.min(travel.high, Math.max(travel.low, travel.at + delta * (fine ? FINE : 1))),
});

export interface Resting {
  readonly value: number;
  readonly snap: Snap | null;
}

/**
 * Where a value rests: at the nearest snap within reach, else at a whole step.
 * @param snaps candidates near by; @param reach in the value's unit
 */
export function restOf(travel: Travel, snaps: readonly Snap[], reach: number, modifiers: Modifiers): Resting {
  if (!modifiers.free) {
    const best = nearestSnap(travel.at, snaps);
    if (best && Math.abs(best.value - travel.at) <= reach) return { value: best.value, snap: best };
  }
  return { value: roundTo(travel.at, stepOf(travel.value, modifiers)), snap: null };
}

function nearestSnap(at: number, snaps: readonly Snap[]): Snap | null {
  let best: Snap | null = null;
  for (const snap of snaps) {
    if (!best || Math.abs(snap.value - at) < Math.abs(best.value - at)) best = snap;
  }
  return best;
}

/** Rounded to a step, without the dust that multiplication leaves (0.15000000000000002). */
export function roundTo(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(6));
}

export const stepOf = (value: DragValue, { fine }: Modifiers): number => (fine ? FINE_STEP : STEP)[value];

/** A start of any number of turns in [0, 360). */
export const turned = (deg: number): number => ((deg % 360) + 360) % 360;

/** Which of two values a first movement means: the one along which it went further. Null before it is a drag. */
export function meantBy<A, B>(dx: number, dy: number, along: A, inward: B): A | B | null {
  if (Math.hypot(dx, dy) < DRAG_STARTS_PX) return null;
  return Math.abs(dx) >= Math.abs(dy) ? along : inward;
}
