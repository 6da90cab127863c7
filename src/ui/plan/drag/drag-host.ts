/** What a drag moves: the plan on a studio's bench. And a tier that is added whole, as one step. */
import type { Plan, Tier } from "../../../core/plan/document.ts";
import { depthOf } from "../../../state/derived.ts";
import type { Viewport } from "../../piece/viewport.ts";
import { settledPlan } from "../../settled.ts";
import { hasMany } from "../../settling.ts";
import type { Studio } from "../../studio.ts";
import type { DragHost } from "./tier-drag.ts";

/** A depth set by hand is in the plan; any other is that of the settled plan. */
function depthNow(studio: Studio, plan: Plan, tierId: string): number {
  const depth = plan.tiers.find((tier) => tier.id === tierId)?.depth;
  return depth?.rule === "depth" ? depth.mm : depthOf(settledPlan(studio), tierId);
}

export const dragHostOf = (studio: Studio): DragHost => ({
  plan: () => studio.getState().plan,
  depthOf: (plan, tierId) => depthNow(studio, plan, tierId),
  // each try would take longer than a frame
  seeksMeets: () => !hasMany(studio.getState().plan),
  beginDrag: (label) => studio.getState().beginDrag(label),
  dragTo: (command) => studio.getState().dragTo(command),
  endDrag: () => studio.getState().endDrag(),
  cancelDrag: () => studio.getState().cancelDrag(),
});

/** A tier that is new on the back is not to be seen from in front: the piece turns to it. */
export const turnTo = ({ eye }: Viewport, { id, side }: Tier): void => {
  if (side === "back") eye.showFacet(`${id}/1`);
};

/** Adds a tier as it is proposed, as one step, takes it up and lets it be seen. */
export function addTier(viewport: Viewport, tier: Tier): void {
  const { dispatch, select } = viewport.studio.getState();
  if (!dispatch({ type: "add-tier", tier }).ok) return;
  select({ tierId: tier.id });
  turnTo(viewport, tier);
}
