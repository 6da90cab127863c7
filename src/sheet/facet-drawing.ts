/**
 * One facet drawn flat, seen from outside with its own pole up, in mm: what to hold the glass against. x to the right,
 * y up, about the foot of the normal.
 */
import type { FacetFrame } from "../core/geometry/plane.ts";
import type { SolidFacet } from "../core/geometry/solid-types.ts";
import { sweep } from "../core/geometry/turn.ts";
import { dot, type Vec3 } from "../core/geometry/vec.ts";
import type { Side } from "../core/plan/document.ts";

export interface FlatPiece {
  readonly kind: "line" | "arc";
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** Of an arc: the turn from one end to the other, counter-clockwise, radians. */
  readonly turn: number;
}
export interface FlatFacet {
  readonly pieces: readonly FlatPiece[];
  /** Radius of the uncut circle that arcs lie on. */
  readonly circleMm: number;
  /** [left, right, low, high] */
  readonly box: readonly [number, number, number, number];
}

const FULL_TURN = 2 * Math.PI;

const flatPoint = (frame: FacetFrame, at: Vec3, up: number, radiusMm: number): [number, number] => [
  up * dot(at, frame.across) * radiusMm,
  up * dot(at, frame.meridian) * radiusMm,
];

/** Whether the direction `angle` lies within an arc. */
const holds = (piece: FlatPiece, angle: number): boolean =>
  piece.kind === "arc" && sweep(Math.atan2(piece.from[1], piece.from[0]), angle) < piece.turn;

function boxOf(pieces: readonly FlatPiece[], circleMm: number): FlatFacet["box"] {
  const xs = pieces.flatMap((p) => [p.from[0], p.to[0]]);
  const ys = pieces.flatMap((p) => [p.from[1], p.to[1]]);
  const reaches = (angle: number) => pieces.some((p) => holds(p, angle));
  return [
    reaches(Math.PI) ? -circleMm : Math.min(...xs),
    reaches(0) ? circleMm : Math.max(...xs),
    reaches(-Math.PI / 2) ? -circleMm : Math.min(...ys),
    reaches(Math.PI / 2) ? circleMm : Math.max(...ys),
  ];
}

/** @returns null for a swallowed facet, which has nothing to draw */
export function flatFacet(facet: SolidFacet, radiusMm: number, side: Side): FlatFacet | null {
  if (facet.swallowed) return null;
  // The meridian runs to +z: towards a front facet's pole, away from a back facet's, which is turned half round.
  const up = side === "front" ? 1 : -1;
  const circleMm = radiusMm * Math.sqrt(Math.max(0, 1 - facet.plane.h ** 2));
  const pieces = facet.outline.map((piece): FlatPiece => {
    const isWhole = piece.kind === "arc" && facet.outline.length === 1;
    return {
      kind: piece.kind,
      from: flatPoint(facet.frame, piece.from, up, radiusMm),
      to: flatPoint(facet.frame, piece.to, up, radiusMm),
      turn: isWhole ? FULL_TURN : piece.kind === "arc" ? (piece.length * radiusMm) / circleMm : 0,
    };
  });
  return { pieces, circleMm, box: boxOf(pieces, circleMm) };
}

const n3 = (value: number): string => String(Math.round(value * 1000) / 1000);
const svgPoint = ([x, y]: readonly [number, number]): string => `${n3(x)} ${n3(-y)}`;

/** SVG path data of one piece, mm, y down. A whole circle is drawn as two halves. */
export function piecePath({ kind, from, to, turn }: FlatPiece, circleMm: number): string {
  if (kind === "line") return `M${svgPoint(from)}L${svgPoint(to)}`;
  const arc = (end: readonly [number, number], large: boolean) =>
    `A${n3(circleMm)} ${n3(circleMm)} 0 ${large ? 1 : 0} 0 ${svgPoint(end)}`;
  if (turn < FULL_TURN) return `M${svgPoint(from)}${arc(to, turn > Math.PI)}`;
  return `M${svgPoint(from)}${arc([-from[0], -from[1]], false)}${arc(to, false)}`;
}
