/** A tier moved by keys: how far one press goes, and where the next meeting is. */

import { stopsOf } from "../../../core/plan/place.ts";
import type { Snap } from "../../../core/plan/snaps.ts";
import { type Modifiers, type Resting, stepOf } from "./drag-maths.ts";
import type { DragHost, TierDrag } from "./tier-drag.ts";

/** Present value of the tier that a drag moves, as the document has it now: degrees, mm for a depth. */
function valueNow(host: DragHost, { tierId, value }: TierDrag): number {
  const plan = host.plan();
  const tier = plan.tiers.find((t) => t.id === tierId);
  if (!tier) return 0;
  if (value === "angle") return tier.armAngleDeg;
  return value === "depth" ? host.depthOf(plan, tierId) : tier.startDeg;
}

/** One key step on: starts go stop by stop where there is a wheel. */
export function stepped(host: DragHost, drag: TierDrag, steps: number, modifiers: Modifiers): Resting {
  const plan = host.plan();
  const tier = plan.tiers.find((t) => t.id === drag.tierId);
  const now = valueNow(host, drag);
  const stops = drag.value === "start" && tier ? stopsOf(plan, tier.side) : null;
  if (stops !== null) return { value: now + (steps * 360) / stops, snap: null };
  const size = stepOf(drag.value, modifiers);
  const most =
    drag.value === "angle"
      ? 90
      : drag.value === "depth"
        ? plan.piece.diameterMm / 2
        : Number.POSITIVE_INFINITY;
  const least = drag.value === "start" ? Number.NEGATIVE_INFINITY : 0;
  const next = Math.min(most, Math.max(least, now + steps * size));
  return { value: Number(next.toFixed(6)), snap: null };
}

/** Values closer than this are the one where the tier stands already. */
const SAME_VALUE = 1e-6;
/** Steps of search for one press of a key: angles up to some 20 degrees away. */
const LOOKS = 300;

/** The nearest value, up (1) or down (-1), at which something meets; null where none was found. */
export function nextSnap(host: DragHost, drag: TierDrag, direction: 1 | -1): Snap | null {
  const now = valueNow(host, drag);
  for (let i = 0; i < LOOKS && drag.think(); i++);
  const ahead = drag.snaps
    .filter((s) => (s.value - now) * direction > SAME_VALUE)
    .sort((a, b) => Math.abs(a.value - now) - Math.abs(b.value - now));
  return ahead[0] ?? null;
}
