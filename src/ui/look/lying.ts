/** How the piece lies on a table while it is looked at: which way is down, and the eye's stand that goes with it. */
import { restingFacets } from "../../core/check/size.ts";
import { dot, scale, type Vec3 } from "../../core/geometry/vec.ts";
import { RESTS } from "../../core/optics/rest.ts";
import { tableFrame } from "../../core/optics/tabletop.ts";
import type { Plan } from "../../core/plan/document.ts";
import { solid } from "../../state/derived.ts";
import { eyeFrame, type Orbit, type Stand } from "../piece/camera.ts";
import type { LookSettings, RestChoice } from "./look-settings.ts";

/** Outward normal of the largest facet that it rests on by itself; null when there is none. */
export function flatOf(plan: Plan): Vec3 | null {
  const { facets } = solid(plan);
  const resting = restingFacets(solid(plan)).map((i) => facets[i]);
  if (resting.length === 0) return null;
  return resting.reduce((best, facet) => (facet.area > best.area ? facet : best)).plane.n;
}

/** Unit direction in which its lowest point touches the table. */
export const downOf = (plan: Plan, rest: RestChoice): Vec3 =>
  rest === "flat" ? (flatOf(plan) ?? RESTS.side.down) : RESTS[rest].down;

const stands = new Map<string, Stand>();
/** The same object for the same way down, so that an edit that keeps it moves no eye. */
export function standOf(
  plan: Plan,
  { table, rest }: Pick<LookSettings, "table" | "rest">,
): Stand | undefined {
  if (table === "none") return undefined;
  const down = downOf(plan, rest);
  const key = down.map((v) => v.toFixed(9)).join(" ");
  const stand = stands.get(key) ?? tableFrame(scale(down, -1));
  stands.set(key, stand);
  return stand;
}

const RAD = Math.PI / 180;
/** Over a table the eye stays so far above its level and from straight overhead, degrees, and the piece this near to the middle. */
const [LOWEST, HIGHEST] = [6, 84];
const MOST_RAISED = 0.4;
const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value));

/** The view on a piece that lies on `stand`, or is held free again, nearest to how it was to be seen; never from below a table. */
export function restood(view: Orbit, stand: Stand | undefined): Orbit {
  const turned = view.stand === stand ? view : recounted(view, stand);
  if (!stand) return turned;
  return {
    ...turned,
    elevationDeg: clamp(turned.elevationDeg, LOWEST, HIGHEST),
    panY: Math.min(turned.panY, MOST_RAISED),
  };
}

/** The same direction of the eye, counted from another stand. */
function recounted(view: Orbit, stand: Stand | undefined): Orbit {
  const { out } = eyeFrame(view);
  const [x, y, z] = stand ? [dot(out, stand.along), dot(out, stand.across), dot(out, stand.up)] : out;
  const { stand: _, ...free } = view;
  const azimuthDeg = Math.hypot(x, y) < 1e-6 ? view.azimuthDeg : Math.atan2(y, x) / RAD;
  const elevationDeg = Math.asin(clamp(z, -1, 1)) / RAD;
  return { ...free, azimuthDeg, elevationDeg, ...(stand && { stand }) };
}

/** Something on a table is first seen from a little above and aside, with room for its shadow. */
export const ON_TABLE: Omit<Orbit, "stand"> = {
  azimuthDeg: 30,
  elevationDeg: 25,
  distance: 7,
  panX: 0,
  panY: 0,
};
