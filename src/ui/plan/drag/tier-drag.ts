/**
 * One tier on its way by hand: takes movements in degrees or millimetres, rests at what meets, and shows every step to
 * the store as one drag. Knows nothing of pictures or pointers.
 */
import type { DepthRule, Plan, Tier } from "../../../core/plan/document.ts";
import { angleSnaps, depthSnaps, type Snap, startSnap } from "../../../core/plan/snaps.ts";
import type { PlanActions } from "../../../state/store.ts";
import {
  type DragValue,
  type Modifiers,
  type Resting,
  restOf,
  type Travel,
  travelBy,
  travelFrom,
  turned,
} from "./drag-maths.ts";

export interface DragHost extends Pick<PlanActions, "beginDrag" | "dragTo" | "endDrag" | "cancelDrag"> {
  readonly plan: () => Plan;
  readonly depthOf: (plan: Plan, tierId: string) => number;
  /** Whether to look for places where things meet. */
  readonly seeksMeets: () => boolean;
}

export interface TierDrag {
  readonly tierId: string;
  readonly value: DragValue;
  /** The document as it was when the drag began, with the tier in it. */
  readonly before: Plan;
  /** Moves on by `delta` (degrees or mm); rests within `reach` of a snap. */
  readonly by: (delta: number, reach: number, modifiers: Modifiers) => Resting;
  /** Goes to a value at once, with its rule when it is a snap's. */
  readonly to: (resting: Resting) => Resting;
  /** Takes one step in looking for snaps; false when all are found. */
  readonly think: () => boolean;
  readonly snaps: readonly Snap[];
  readonly end: () => void;
  readonly cancel: () => void;
}

/** Where a tier begins that is pulled in from the round surface. */
const UNCUT: DepthRule = { rule: "depth", mm: 0 };
const FIELD = { angle: "armAngleDeg", depth: "depth", start: "startDeg" } as const;

/** Snaps that are found without looking far, taken before the first movement. */
const FIRST_LOOK = 3;

/** @throws when the plan has no such tier */
export function beginTierDrag(host: DragHost, tierId: string, value: DragValue): TierDrag {
  const index = host.plan().tiers.findIndex((t) => t.id === tierId);
  if (index < 0) throw new Error(`there is no tier ${tierId} to drag`);
  host.beginDrag({ about: "tier", tier: index + 1, field: FIELD[value] });
  return dragOf(host, tierId, value);
}

/**
 * A tier that is not there yet comes into being under the hand; cancelling leaves no trace of it.
 * @throws when the plan can't take the tier; nothing is under way then
 */
export function beginFreshDrag(host: DragHost, fresh: Tier, value: DragValue): TierDrag {
  host.beginDrag({ about: "add-tier", tier: host.plan().tiers.length + 1 });
  const begun = host.dragTo({
    type: "add-tier",
    tier: value === "depth" ? { ...fresh, depth: UNCUT } : fresh,
  });
  if (!begun.ok) {
    host.cancelDrag();
    throw new Error(`a tier that can't be added was taken hold of: ${begun.message}`);
  }
  const drag = dragOf(host, fresh.id, value);
  // Pushed back out to the surface it is nothing, and is not kept.
  const isUncut = () => {
    const depth = host.plan().tiers.find((t) => t.id === fresh.id)?.depth;
    return depth?.rule === "depth" && depth.mm === 0;
  };
  return { ...drag, end: () => (isUncut() ? drag.cancel() : drag.end()) };
}

function dragOf(host: DragHost, tierId: string, value: DragValue): TierDrag {
  const before = host.plan();
  const index = before.tiers.findIndex((t) => t.id === tierId);
  const tier = before.tiers[index];
  const search = host.seeksMeets() ? searchFor(before, index, value) : NOTHING_TO_FIND();
  const snaps: Snap[] = [];
  let travel: Travel = travelFrom(
    value,
    presentValue(host, before, tier, value),
    before.piece.diameterMm / 2,
  );

  const think = (): boolean => {
    const step = search.next();
    if (step.done) return false;
    if (step.value) snaps.push(step.value);
    return true;
  };
  for (let i = 0; i < FIRST_LOOK && think(); i++);

  const show = (resting: Resting): Resting => {
    host.dragTo({ type: "change-tier", tierId, change: changeTo(value, tier, resting) });
    return resting;
  };
  return {
    tierId,
    value,
    before,
    snaps,
    think,
    by: (delta, reach, modifiers) => {
      travel = travelBy(travel, delta, modifiers);
      const near = value === "start" ? stopNear(before, tier, travel.at) : snaps;
      // A wheel has no places between its stops: every start rests on one unless the hand asks for none.
      const within = value === "start" ? Number.POSITIVE_INFINITY : reach;
      return show(restOf(travel, near, within, modifiers));
    },
    to: (resting) => {
      travel = { ...travel, at: resting.value };
      return show(resting);
    },
    end: host.endDrag,
    cancel: host.cancelDrag,
  };
}

const NOTHING_TO_FIND = (): Iterator<Snap | null> => [][Symbol.iterator]();

function searchFor(plan: Plan, index: number, value: DragValue): Iterator<Snap | null> {
  if (value === "depth") return depthSnaps(plan, index);
  if (value === "angle") return angleSnaps(plan, index);
  return NOTHING_TO_FIND();
}

function presentValue(host: DragHost, plan: Plan, tier: Tier, value: DragValue): number {
  if (value === "angle") return tier.armAngleDeg;
  return value === "depth" ? host.depthOf(plan, tier.id) : tier.startDeg;
}

/** The nearest stop, in the same turn as the value, so that nearness can be told by subtraction. */
function stopNear(plan: Plan, tier: Tier, at: number): Snap[] {
  const snap = startSnap(plan, tier.side, at);
  return snap ? [{ ...snap, value: snap.value + 360 * Math.round((at - snap.value) / 360) }] : [];
}

/** Fields of the tier at a resting place. A depth set by hand is a depth; one at a snap is the snap's rule. */
function changeTo(value: DragValue, tier: Tier, { value: at, snap }: Resting): Partial<Tier> {
  if (value === "start") return { startDeg: turned(at) };
  if (value === "angle") return { armAngleDeg: at, depth: snap?.depth ?? tier.depth };
  const depth: DepthRule = snap?.depth ?? { rule: "depth", mm: at };
  return { depth };
}
