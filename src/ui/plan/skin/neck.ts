/**
 * The neck of round skin between two neighbouring facets, where they come nearest: what is drawn as the gap's
 * hatched band. All on the unit sphere.
 */
import { angularRadius, gapBetween } from "../../../core/geometry/circles.ts";
import type { Plane } from "../../../core/geometry/plane.ts";
import { type OutlinePiece, SKIN } from "../../../core/geometry/solid-types.ts";
import { addScaled, distance, dot, normalize, scale, type Vec3 } from "../../../core/geometry/vec.ts";
import { arcCurve } from "./sample-outline.ts";

/** Breadth of the band to each side, as part of the smaller circle's radius. */
const BREADTH = 0.45;
/** A gap wider than this many radii of the smaller circle is skin left on purpose. */
const WIDEST = 1.5;
/** Corners along each side of the band. */
const SIDE_PARTS = 6;

/** Direction at the angle `rho` from `from` along the great circle toward `to`; `from` itself when they are one. */
function toward(from: Vec3, to: Vec3, rho: number): Vec3 {
  const sideways = normalize(addScaled(to, from, -dot(to, from)));
  return addScaled(scale(from, Math.cos(rho)), sideways, Math.sin(rho));
}

/**
 * The band between two circles that don't meet, as a closed ring of short straight pieces.
 * Empty where the circles touch or overlap, and where so much skin lies between them that it is no gap to be closed.
 */
export function neckOf(a: Plane, b: Plane): OutlinePiece[] {
  const gap = gapBetween(a, b);
  if (gap <= 0 || gap > WIDEST * Math.min(angularRadius(a), angularRadius(b))) return [];
  const breadth = BREADTH * Math.min(Math.sin(angularRadius(a)), Math.sin(angularRadius(b)));
  const nearA = sideOf(a, b, breadth);
  const nearB = sideOf(b, a, breadth);
  return ringOf([...nearA, ...nearB]);
}

/** Points along circle `a` to both sides of where it comes nearest to `b`, counter-clockwise about a. */
function sideOf(a: Plane, b: Plane, breadth: number): Vec3[] {
  const rho = angularRadius(a);
  const half = Math.asin(Math.min(1, breadth / Math.max(breadth, Math.sin(rho))));
  const middle = arcCurve(toward(a.n, b.n, rho), a.n, -half)(1);
  const curve = arcCurve(middle, a.n, 2 * half);
  return Array.from({ length: SIDE_PARTS + 1 }, (_, i) => curve(i / SIDE_PARTS));
}

const ringOf = (points: readonly Vec3[]): OutlinePiece[] =>
  points.map((from, i) => {
    const to = points[(i + 1) % points.length];
    return { kind: "line", from, to, with: SKIN, length: distance(from, to) };
  });
