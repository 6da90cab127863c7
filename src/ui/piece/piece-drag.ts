/**
 * What movements mean on the piece itself: along the waist the start, toward the pole the arm angle, in or out along a
 * facet's normal (where it is seen from the side) the depth. Each is the shift on the screen of the facet that was taken.
 */
import { dot, length as lengthOf, type Vec3 } from "../../core/geometry/vec.ts";
import type { SolvedPlan } from "../../core/plan/solved.ts";
import { CATCH_PX, DRAG_STARTS_PX, type DragValue } from "../plan/drag/drag-maths.ts";
import type { DragPicture, ScreenPoint } from "../plan/drag/tier-hold.ts";
import { eyeFrame, type Orbit, verticalField } from "./camera.ts";

type Shift = readonly [number, number];
const RAD = Math.PI / 180;

/** Pixels to the right and down by which a step in space moves on the screen, near the piece's centre. */
function onScreen(view: Orbit, height: number, step: Vec3): Shift {
  const { right, up } = eyeFrame(view);
  const perRadius = height / 2 / Math.tan((verticalField(1) * RAD) / 2) / view.distance;
  return [dot(step, right) * perRadius, -dot(step, up) * perRadius];
}

/**
 * Screen shift of a facet for one degree of start, one degree of arm angle, one mm of depth.
 * @param short the picture's shorter side, pixels
 */
export function facetShifts(
  view: Orbit,
  short: number,
  solved: SolvedPlan,
  facet: number,
): Readonly<Record<DragValue, Shift>> {
  const { frame } = solved.facets[facet];
  const [ax, ay, az] = frame.across;
  const [mx, my, mz] = frame.meridian;
  const [nx, ny, nz] = frame.n;
  // The facet rides on the surface: a degree takes it a degree's arc further; its azimuth circle is smaller near the pole.
  const level = Math.hypot(nx, ny);
  const isBack = solved.plan.tiers[solved.facets[facet].tierIndex].side === "back";
  // The meridian points to the waist for a front facet (n x across), so a larger arm angle runs against it.
  const toPole = (mz > 0 ? 1 : -1) * (isBack ? -1 : 1);
  const inward = -1 / solved.radiusMm;
  return {
    start: onScreen(view, short, [ax * level * RAD, ay * level * RAD, az * level * RAD]),
    angle: onScreen(view, short, [mx * toPole * RAD, my * toPole * RAD, mz * toPole * RAD]),
    depth: onScreen(view, short, [nx * inward, ny * inward, nz * inward]),
  };
}

const size = ([x, y]: Shift): number => Math.hypot(x, y);
const along = ([x, y]: Shift, [dx, dy]: Shift): number => x * dx + y * dy;

/** Depth is meant only where the facet is seen this much from the side (cosine of its normal to the eye). */
const FROM_SIDE = 0.55;
/** A value that hardly moves on the screen can't be meant. */
const LEAST_PART = 0.2;

export function pieceDrag(view: Orbit, short: number, solved: SolvedPlan, facet: number): DragPicture {
  const shifts = facetShifts(view, short, solved, facet);
  const { out } = eyeFrame(view);
  const n = solved.facets[facet].frame.n;
  const isFromSide = Math.abs(dot(n, out)) / lengthOf(n) < FROM_SIDE;
  // Depth is in mm: what a mm weighs against a degree is told by how far each goes on the screen at full sight.
  const full = { start: RAD, angle: RAD, depth: 1 / solved.radiusMm };
  const perRadius = short / 2 / Math.tan((verticalField(1) * RAD) / 2) / view.distance;
  const isSeen = (value: DragValue) => size(shifts[value]) > LEAST_PART * full[value] * perRadius;
  const values = (["start", "angle", "depth"] as const).filter(
    (value) => isSeen(value) && (value !== "depth" || isFromSide),
  );
  return {
    meant: (_, from, to) => {
      const moved: Shift = [to[0] - from[0], to[1] - from[1]];
      if (size(moved) < DRAG_STARTS_PX || values.length === 0) return null;
      const closeness = (value: DragValue) => Math.abs(along(moved, shifts[value])) / size(shifts[value]);
      return values.reduce((best, value) => (closeness(value) > closeness(best) ? value : best));
    },
    delta: (value, _, from: ScreenPoint, to: ScreenPoint) =>
      along([to[0] - from[0], to[1] - from[1]], shifts[value]) / size(shifts[value]) ** 2,
    reach: (value) => CATCH_PX / size(shifts[value]),
  };
}
