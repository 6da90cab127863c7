/**
 * How much glass goes when one plane is cut deeper, in closed form and from the few outlines that change. Divergence
 * theorem about the centre of the unit ball: the volume lost is a third of (sum of h times the area that each plane's facet
 * loses, plus the round skin lost); the deepened plane counts with its old area at its old h and its new area at its new h.
 */

import type { Plane } from "../../geometry/plane.ts";
import { type Slice, sliceFacet } from "../../geometry/slice.ts";
import { cutBall } from "../../geometry/solid.ts";
import { SKIN } from "../../geometry/solid-types.ts";
import { sweep } from "../../geometry/turn.ts";
import { dot } from "../../geometry/vec.ts";

const TURN = 2 * Math.PI;

/** Area of an outline by Green's theorem about the foot of the normal. */
export function areaOf({ state, radius, xs, ys, labels }: Slice): number {
  if (state === "none") return 0;
  if (state === "whole") return Math.PI * radius * radius;
  return labels.reduce((area, label, i) => {
    const next = (i + 1) % xs.length;
    if (label !== SKIN) return area + (xs[i] * ys[next] - xs[next] * ys[i]) / 2;
    const turn = sweep(Math.atan2(ys[i], xs[i]), Math.atan2(ys[next], xs[next]));
    return area + (radius * radius * turn) / 2;
  }, 0);
}

/** The angle t with its half stretched by `kappa`: 2 atan(kappa tan(t / 2)), continuous over whole turns. */
function stretched(t: number, kappa: number): number {
  const turns = Math.round(t / TURN);
  const rest = (t - turns * TURN) / 2;
  return turns * TURN + 2 * Math.atan2(kappa * Math.sin(rest), Math.cos(rest));
}

/**
 * Integral of (1 - u) d(phi) along the arcs of an outline, u the height along `axis` and phi the angle about it. Summed over
 * the loops round a piece of skin it is that piece's area (Archimedes), but for the sign of the direction.
 *
 * On the circle of plane (n, h) with m = n.axis the integrand in the circle's own angle t is -h + (m + h) / (D + E cos t),
 * D = 1 + h m, E = r sqrt(1 - m^2), D^2 - E^2 = (h + m)^2, which integrates by the half-angle tangent.
 */
function skinIntegral({ state, frame, h, radius, xs, ys, labels }: Slice, axis: Plane["n"]): number {
  if (state === "none") return 0;
  const m = dot(frame.n, axis);
  const [a, b] = [dot(frame.across, axis), dot(frame.meridian, axis)];
  const tilt = radius * Math.hypot(a, b);
  const zero = Math.atan2(b, a);
  const kappa = Math.sqrt(Math.max(0, 1 + h * m - tilt) / (1 + h * m + tilt));
  const along = (from: number, turn: number): number =>
    -h * turn + Math.sign(m + h) * (stretched(from + turn - zero, kappa) - stretched(from - zero, kappa));
  if (state === "whole") return along(zero, TURN);
  return labels.reduce((sum, label, i) => {
    if (label !== SKIN) return sum;
    const next = (i + 1) % xs.length;
    const from = Math.atan2(ys[i], xs[i]);
    return sum + along(from, sweep(from, Math.atan2(ys[next], xs[next])));
  }, 0);
}

/**
 * Volume that moving plane `own` in from `before` (null: not cut at all) to where it stands in `planes` takes, unit ball.
 * @param planes all that are cut; those that don't reach the cap of `own` may be left out, they change nothing
 * Degenerate: a plane at h <= -1 takes everything that was left.
 */
export function removedVolume(planes: readonly Plane[], own: number, before: Plane | null): number {
  const earlier = before ? planes.with(own, before) : planes;
  const isOwn = (j: number) => j === own;
  if (planes[own].h <= -1) return cutBall(before ? earlier : planes.filter((_, j) => !isOwn(j))).volume;
  const axis = planes[own].n;
  let thrice = 0;
  planes.forEach((plane, k) => {
    const after = sliceFacet(k, planes);
    thrice += skinIntegral(after, axis) - plane.h * areaOf(after);
    if (isOwn(k) && !before) return;
    const was = sliceFacet(k, earlier, before ? undefined : isOwn);
    thrice += earlier[k].h * areaOf(was) - skinIntegral(was, axis);
  });
  return Math.max(0, thrice / 3);
}
