/**
 * The half-section through the axis, to scale: where rim, chords, handles, ticks and dop lie.
 * Section coordinates on the unit sphere: `[r, z]`, r from the axis outward, z to the front (drawn upward). A tier is
 * drawn as if its facet were turned into this one plane.
 */
import { cosDeg, sinDeg } from "../../../core/geometry/plane.ts";
import type { Side } from "../../../core/plan/document.ts";

export type SectionPoint = readonly [number, number];

/** The picture's frame: pixels, y down; `centre` is the piece's centre. */
export interface ProfileFrame {
  readonly cx: number;
  readonly cy: number;
  /** The piece's radius in pixels. */
  readonly radius: number;
}

export const toScreen = (frame: ProfileFrame, [r, z]: SectionPoint): SectionPoint => [
  frame.cx + r * frame.radius,
  frame.cy - z * frame.radius,
];

export const toSection = (frame: ProfileFrame, x: number, y: number): SectionPoint => [
  (x - frame.cx) / frame.radius,
  (frame.cy - y) / frame.radius,
];

/** Unit direction of a tier in the section. */
export const tierDirection = (side: Side, armAngleDeg: number): SectionPoint => [
  cosDeg(armAngleDeg),
  side === "front" ? sinDeg(armAngleDeg) : -sinDeg(armAngleDeg),
];

export interface Chord {
  /** Where the chord leaves the round surface, nearer the pole; on the axis when it would pass it. */
  readonly poleEnd: SectionPoint;
  readonly girdleEnd: SectionPoint;
  /** Point of the plane nearest the centre, and the point of the rim above it: the two ends of the depth tick. */
  readonly foot: SectionPoint;
  readonly rim: SectionPoint;
}

/**
 * A plane at distance h from the centre as a chord of the half-section; null when it misses the ball (h >= 1).
 * What lies beyond the axis (r < 0) belongs to the other half and is left off.
 */
export function chordOf(side: Side, armAngleDeg: number, h: number): Chord | null {
  if (h >= 1) return null;
  const [r, z] = tierDirection(side, armAngleDeg);
  const half = Math.sqrt(1 - h * h);
  const toPole = side === "front" ? 1 : -1;
  const end = (s: number): SectionPoint => cutAtAxis([h * r, h * z], [-z * toPole * s, r * toPole * s], half);
  return { poleEnd: end(1), girdleEnd: end(-1), foot: [h * r, h * z], rim: [r, z] };
}

/** From a point along a unit direction for a length, or as far as the axis. */
function cutAtAxis(from: SectionPoint, along: SectionPoint, length: number): SectionPoint {
  const reach = along[0] < 0 ? Math.min(length, Math.max(0, from[0] / -along[0])) : length;
  return [from[0] + along[0] * reach, from[1] + along[1] * reach];
}

/**
 * The section of the cut piece: the half-disc with every tier turned into this plane and cut away.
 * @param cuts direction and distance of each tier; a plane that misses the ball takes nothing
 * @returns a closed polygon, counter-clockwise with z up, the rim sampled every `stepDeg` degrees
 */
export function cutSection(
  cuts: readonly { readonly direction: SectionPoint; readonly h: number }[],
  stepDeg = 1,
): SectionPoint[] {
  const steps = Math.round(180 / stepDeg);
  let polygon: SectionPoint[] = Array.from({ length: steps + 1 }, (_, i) => {
    const elevation = -90 + (180 * i) / steps;
    return [cosDeg(elevation), sinDeg(elevation)];
  });
  for (const { direction, h } of cuts) polygon = clip(polygon, direction, h);
  return polygon;
}

/** Sutherland and Hodgman (1974), one half-plane n.p <= h. */
function clip(polygon: readonly SectionPoint[], n: SectionPoint, h: number): SectionPoint[] {
  const out: SectionPoint[] = [];
  const over = (p: SectionPoint): number => p[0] * n[0] + p[1] * n[1] - h;
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length];
    const [a, b] = [over(p), over(q)];
    if (a <= 0) out.push(p);
    if (a < 0 !== b < 0 && a !== b) {
      const t = a / (a - b);
      if (t > 0 && t < 1) out.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
    }
  });
  return out;
}

export interface RimTick {
  readonly degrees: number;
  readonly side: Side;
  readonly at: SectionPoint;
  readonly isNumbered: boolean;
}

/** Degrees along the rim: arm angles, so 0 at the equator and 90 at both poles. */
export function rimTicks(stepDeg: number, numberedEveryDeg: number): RimTick[] {
  const ticks: RimTick[] = [];
  for (const side of ["front", "back"] as const) {
    for (let degrees = side === "front" ? 0 : stepDeg; degrees <= 90; degrees += stepDeg) {
      ticks.push({
        degrees,
        side,
        at: tierDirection(side, degrees),
        isNumbered: degrees % numberedEveryDeg === 0,
      });
    }
  }
  return ticks;
}

export interface DopOutline {
  /** Corners of the dop's half-section: on the axis and at its radius, from the glass outward. */
  readonly points: readonly SectionPoint[];
}

/**
 * The dop where it sits: a cylinder whose rim touches the round surface. A dop wider than the piece stands at the
 * equator. @param diameter and @param length over the piece's radius
 */
export function dopOutline(side: Side, diameter: number, length: number): DopOutline {
  const r = Math.min(1, diameter / 2);
  const z = Math.sqrt(1 - r * r);
  const out = side === "front" ? 1 : -1;
  return {
    points: [
      [0, out * z],
      [r, out * z],
      [r, out * (z + length)],
      [0, out * (z + length)],
    ],
  };
}
