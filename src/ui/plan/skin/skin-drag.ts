/** What movements mean on the strip: sideways the start, up and down the arm angle. */
import type { Plan } from "../../../core/plan/document.ts";
import { CATCH_PX, meantBy } from "../drag/drag-maths.ts";
import type { DragPicture } from "../drag/tier-hold.ts";
import { elevationAt, type Strip } from "./projection.ts";

const DEG = 180 / Math.PI;

/** @param top where the strip begins in the picture, pixels */
export function skinDrag(plan: Plan, strip: Strip, top: number): DragPicture {
  const sideSign = (tierId: string) => (plan.tiers.find((t) => t.id === tierId)?.side === "back" ? -1 : 1);
  const elevationDeg = (y: number) => elevationAt(strip, y - top) * DEG;
  return {
    meant: (_, from, to) => meantBy(to[0] - from[0], to[1] - from[1], "start" as const, "angle" as const),
    delta: (value, tierId, from, to) =>
      value === "start"
        ? ((to[0] - from[0]) / strip.width) * 360
        : (elevationDeg(to[1]) - elevationDeg(from[1])) * sideSign(tierId),
    reach: (_, __, at) => Math.abs(elevationDeg(at[1] - CATCH_PX / 2) - elevationDeg(at[1] + CATCH_PX / 2)),
  };
}
