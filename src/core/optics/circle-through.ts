/** The circle through three points that a person sets on a ball's edge, and three handles on a circle. */
import type { Outline } from "./photo.ts";

type Point = readonly [x: number, y: number];
export type ThreePoints = readonly [Point, Point, Point];

/**
 * Circumscribed circle of three points (closed form from their perpendicular bisectors); null where they lie so nearly on a
 * line that its radius would be more than `mostRadius`.
 */
export function circleThrough([a, b, c]: ThreePoints, mostRadius: number): Outline | null {
  const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]];
  const area = 2 * (bx * cy - by * cx);
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy];
  const x = (cy * b2 - by * c2) / area;
  const y = (bx * c2 - cx * b2) / area;
  const r = Math.hypot(x, y);
  return r > 0 && r <= mostRadius ? { x: a[0] + x, y: a[1] + y, r } : null;
}

/** Where the handles stand on a circle, by their directions in radians (y down). */
export const pointsOn = ({ x, y, r }: Outline, turns: readonly [number, number, number]): ThreePoints => {
  const at = (turn: number): Point => [x + r * Math.cos(turn), y + r * Math.sin(turn)];
  return [at(turns[0]), at(turns[1]), at(turns[2])];
};

/** The directions in which three points lie from the middle of a circle. */
export const turnsOf = ({ x, y }: Outline, points: ThreePoints): readonly [number, number, number] => {
  const turn = ([px, py]: Point) => Math.atan2(py - y, px - x);
  return [turn(points[0]), turn(points[1]), turn(points[2])];
};
