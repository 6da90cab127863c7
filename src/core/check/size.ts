/** Finished length and width of the piece, its stable rests: what calipers and a table say. Unit sphere. */
import { SKIN, type Solid } from "../geometry/solid-types.ts";
import { EPSILON } from "../geometry/tolerance.ts";
import { add, cross, dot, scale, sub, type Vec3 } from "../geometry/vec.ts";

/** Greatest d.p over the solid, d a unit vector. */
export function supportOf(solid: Solid, d: Vec3): number {
  if (solid.vanished) return 0;
  // The sphere's own point in that direction, where it is still skin.
  if (solid.facets.every((f) => f.swallowed || dot(f.plane.n, d) <= f.plane.h)) return 1;
  let best = -1;
  for (const facet of solid.facets) {
    const { n, h } = facet.plane;
    const radius = Math.sqrt(Math.max(0, (1 - h) * (1 + h)));
    const up = dot(n, d);
    const level = sub(d, scale(n, up));
    const reach = Math.sqrt(Math.max(0, 1 - up * up));
    for (const piece of facet.outline) {
      best = Math.max(best, dot(piece.from, d));
      if (piece.with !== SKIN || reach < EPSILON) continue;
      // The circle's farthest point, if this arc has it.
      const top = add(scale(n, h), scale(level, radius / reach));
      const foot = scale(n, h);
      const [f, c] = [sub(piece.from, foot), sub(top, foot)];
      const ahead = Math.atan2(dot(n, cross(f, c)), dot(f, c));
      if ((ahead < 0 ? ahead + 2 * Math.PI : ahead) <= piece.length / radius)
        best = Math.max(best, dot(top, d));
    }
  }
  return best;
}

const caliper = (solid: Solid, d: Vec3): number => supportOf(solid, d) + supportOf(solid, scale(d, -1));

/** Azimuths at which a caliper across the axis can read most or least: square to a facet, or over a vertex; [0, pi). */
function caliperAzimuths(solid: Solid): number[] {
  const azimuths = [0, Math.PI / 2];
  const note = (p: Vec3) => {
    if (Math.hypot(p[0], p[1]) > EPSILON) azimuths.push((Math.atan2(p[1], p[0]) + 2 * Math.PI) % Math.PI);
  };
  for (const facet of solid.facets) {
    if (facet.swallowed) continue;
    note(facet.plane.n);
    for (const piece of facet.outline) note(piece.from);
  }
  azimuths.sort((a, b) => a - b);
  return azimuths.filter((t, i) => i === 0 || t - azimuths[i - 1] > 1e-9);
}

/** Along the axis, and the widest and narrowest caliper reading across it; fractions of the radius. */
export function sizeOf(solid: Solid): { along: number; widest: number; narrowest: number } {
  const across = caliperAzimuths(solid).map((t) => caliper(solid, [Math.cos(t), Math.sin(t), 0]));
  return { along: caliper(solid, [0, 0, 1]), widest: Math.max(...across), narrowest: Math.min(...across) };
}

/** Facets on which the piece rests by itself: the foot of the centre of mass lies inside the outline. */
export function restingFacets(solid: Solid): number[] {
  return solid.facets.flatMap((facet, i) => {
    if (facet.swallowed || solid.vanished) return [];
    const { n, h } = facet.plane;
    const foot = add(solid.centroid, scale(n, h - dot(solid.centroid, n)));
    const inside = facet.outline.every(({ kind, from, to }) => {
      // The facet touches a table along its outline's hull: an arc stands for the chord and the cap beyond it.
      if (kind === "arc") return dot(foot, foot) < 1;
      return dot(n, cross(sub(to, from), sub(foot, from))) > EPSILON;
    });
    return inside ? [i] : [];
  });
}
