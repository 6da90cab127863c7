/**
 * Exact outlines (lines and arcs) as directions dense enough to be drawn: every piece is halved until its middle lies
 * within a tolerance of the straight line between its ends, as the caller measures it.
 */
import type { OutlinePiece } from "../../../core/geometry/solid-types.ts";
import { addScaled, cross, dot, mix, scale, type Vec3 } from "../../../core/geometry/vec.ts";

/** Halvings of one starting part; 2^10 parts is far below a pixel on any screen. */
const DEEPEST = 10;
/** Parts that every piece is cut into before the first look, so that a whole circle does not pass for a point. */
const LINE_PARTS = 2;
const ARC_PARTS_A_TURN = 16;

/** Point of a piece at t in 0..1. Arcs run counter-clockwise about their plane's normal. */
export type PieceCurve = (t: number) => Vec3;

/** Turn of an arc about the unit normal n, radians, 0..2 pi; equal ends are a whole circle. */
export function arcTurn(from: Vec3, to: Vec3, n: Vec3): number {
  const same = from[0] === to[0] && from[1] === to[1] && from[2] === to[2];
  if (same) return 2 * Math.PI;
  const u = addScaled(from, n, -dot(from, n));
  const v = addScaled(to, n, -dot(to, n));
  const turn = Math.atan2(dot(n, cross(u, v)), dot(u, v));
  return turn < 0 ? turn + 2 * Math.PI : turn;
}

/** The curve of an arc of `turn` radians about n that starts at `from`. */
export function arcCurve(from: Vec3, n: Vec3, turn: number): PieceCurve {
  const foot = scale(n, dot(from, n));
  const u = addScaled(from, n, -dot(from, n));
  const v = cross(n, u);
  return (t) => addScaled(addScaled(foot, u, Math.cos(turn * t)), v, Math.sin(turn * t));
}

/** The curve of an outline piece of the facet with unit normal n. */
export function pieceCurve(piece: OutlinePiece, n: Vec3): PieceCurve {
  if (piece.kind === "line") return (t) => mix(piece.from, piece.to, t);
  return arcCurve(piece.from, n, arcTurn(piece.from, piece.to, n));
}

/** How many parts a piece is first cut into. */
export function startingParts(piece: OutlinePiece, n: Vec3): number {
  if (piece.kind === "line") return LINE_PARTS;
  return Math.max(2, Math.ceil((arcTurn(piece.from, piece.to, n) / (2 * Math.PI)) * ARC_PARTS_A_TURN));
}

/**
 * Points along a curve as they lie in a picture, first and last included.
 * @param place where a point lies in the picture; asked once a point
 * @param isStraight whether the middle of a part is near enough to the line between its ends
 */
export function sampleCurve<P>(
  curve: PieceCurve,
  parts: number,
  place: (v: Vec3) => P,
  isStraight: (from: P, middle: P, to: P) => boolean,
): P[] {
  const at = (t: number): P => place(curve(t));
  const points: P[] = [at(0)];
  const halve = (t0: number, a: P, t1: number, b: P, depth: number): void => {
    const t = (t0 + t1) / 2;
    const m = at(t);
    if (depth >= DEEPEST || isStraight(a, m, b)) {
      points.push(b);
      return;
    }
    halve(t0, a, t, m, depth + 1);
    halve(t, m, t1, b, depth + 1);
  };
  for (let i = 0; i < parts; i++)
    halve(i / parts, points[points.length - 1], (i + 1) / parts, at((i + 1) / parts), 0);
  return points;
}
