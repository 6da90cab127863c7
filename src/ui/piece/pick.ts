/** Which face of the cut piece a ray meets first: exact, from the planes themselves, since the piece is convex. */
import type { Plane } from "../../core/geometry/plane.ts";
import { SKIN } from "../../core/geometry/solid-types.ts";
import { addScaled, dot, type Vec3 } from "../../core/geometry/vec.ts";

export interface Hit {
  /** Position in the list of planes, or SKIN. */
  readonly face: number;
  readonly at: Vec3;
}

/**
 * @param planes half-spaces n.x <= h that cut the unit ball
 * @returns the first hit in front of `from`, null when the ray passes by. `along` is a unit vector.
 */
export function pickFace(planes: readonly Plane[], from: Vec3, along: Vec3): Hit | null {
  const b = dot(from, along);
  const inside = b * b - (dot(from, from) - 1);
  if (inside <= 0) return null;
  let enter = -b - Math.sqrt(inside);
  let leave = -b + Math.sqrt(inside);
  let face = SKIN;
  for (let i = 0; i < planes.length; i++) {
    const { n, h } = planes[i]!;
    const toward = dot(n, along);
    const away = h - dot(n, from);
    if (toward === 0) {
      if (away < 0) return null;
    } else if (toward < 0) {
      const t = away / toward;
      if (t > enter) {
        enter = t;
        face = i;
      }
    } else leave = Math.min(leave, away / toward);
  }
  return enter < leave && enter > 0 ? { face, at: addScaled(from, along, enter) } : null;
}
