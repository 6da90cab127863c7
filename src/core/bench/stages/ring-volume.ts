/**
 * The glass left of a ball cut by regular rings, from one facet of each kind: rings that repeat n times about the axis have n
 * facets alike. Cones from the centre: V = (sum of h A + S) / 3 with the round skin S = 4 pi - sum of the facets' solid angles.
 */
import type { Plane } from "../../geometry/plane.ts";
import { type Slice, sliceFacet } from "../../geometry/slice.ts";
import { SKIN } from "../../geometry/solid-types.ts";
import { sweep } from "../../geometry/turn.ts";
import type { SolvedPlan } from "../../plan/solved.ts";
import { areaOf } from "./removed-volume.ts";

/** Degrees by which a facet of an even ring may stand off its place: rounding only. */
const EVEN_DEG = 1e-9;

const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b));

/** How often the whole plan repeats about its axis; null where some tier is no even ring and no single facet at the pole. */
export function repeatsOf({ plan, tiers, facets }: SolvedPlan): number | null {
  let repeats = 0;
  for (const [t, { armAngleDeg, count }] of plan.tiers.entries()) {
    if (armAngleDeg === 90) {
      if (count > 1) return null;
      continue;
    }
    const { first } = tiers[t];
    for (let k = 1; k < count; k++) {
      const off = facets[first + k].azimuthDeg - facets[first].azimuthDeg - (360 * k) / count;
      if (Math.abs(off - 360 * Math.round(off / 360)) > EVEN_DEG) return null;
    }
    repeats = common(count, repeats);
  }
  return Math.max(1, repeats);
}

/** Solid angle of a slice seen from the centre, for h > 0: sectors of the disc, and triangles (Van Oosterom and Strackee 1983). */
function solidAngleOf({ state, h, xs, ys, labels }: Slice): number {
  if (state === "none") return 0;
  if (state === "whole") return 2 * Math.PI * (1 - h);
  return labels.reduce((sum, label, i) => {
    const next = (i + 1) % xs.length;
    const [x0, y0, x1, y1] = [xs[i], ys[i], xs[next], ys[next]];
    if (label === SKIN) return sum + sweep(Math.atan2(y0, x0), Math.atan2(y1, x1)) * (1 - h);
    const [a, b] = [Math.sqrt(h * h + x0 * x0 + y0 * y0), Math.sqrt(h * h + x1 * x1 + y1 * y1)];
    const against = h * a * b + h * h * b + h * h * a + (x0 * x1 + y0 * y1 + h * h) * h;
    return sum + 2 * Math.atan2(h * (x0 * y1 - x1 * y0), against);
  }, 0);
}

/** A plane that stands for `times` alike. */
export interface Kind {
  /** Position in the list of planes. */
  readonly at: number;
  readonly times: number;
}
export interface RingVolume {
  /** Unit ball. */
  readonly volume: number;
  /** For each kind whether anything of it is left. */
  readonly isThere: readonly boolean[];
}

/** @param planes all with h > 0; @param kinds one for each sort of facet, together all of them */
export function ringVolume(planes: readonly Plane[], kinds: readonly Kind[]): RingVolume {
  let [cones, seen] = [0, 0];
  const isThere = kinds.map(({ at, times }) => {
    const slice = sliceFacet(at, planes);
    cones += times * planes[at].h * areaOf(slice);
    seen += times * solidAngleOf(slice);
    return slice.state !== "none";
  });
  return { volume: (cones + 4 * Math.PI - seen) / 3, isThere };
}
