/**
 * One facet laid flat in millimetres, as if one looked at it from outside: x across, y along the meridian (toward the front) drawn
 * upward, so y grows downward here, as in SVG. The origin is the middle of the facet's extent.
 */
import type { OutlinePiece, SolidFacet } from "../../../core/geometry/solid-types.ts";
import { SKIN } from "../../../core/geometry/solid-types.ts";
import { dot, type Vec3 } from "../../../core/geometry/vec.ts";
import { arcCurve, arcTurn, pieceCurve } from "../skin/sample-outline.ts";

type FlatPoint = readonly [number, number];

export interface FlatSide {
  /** Path data of this side alone. */
  readonly path: string;
  /** Position of the neighbour in the solid, SKIN for round skin. */
  readonly with: number;
  readonly lengthMm: number;
  readonly middle: FlatPoint;
  /** Unit direction outward at the middle. */
  readonly outward: FlatPoint;
}

export interface FlatFacet {
  /** Closed path data. */
  readonly path: string;
  readonly sides: readonly FlatSide[];
  readonly widthMm: number;
  readonly heightMm: number;
}

const MM_DIGITS = 4;

/** The flat outline of a facet; null for a swallowed one. @param radiusMm of the piece */
export function flatFacet(facet: SolidFacet, radiusMm: number): FlatFacet | null {
  if (facet.swallowed || facet.outline.length === 0) return null;
  const { n, across, meridian } = facet.frame;
  const raw = (p: Vec3): FlatPoint => [dot(p, across) * radiusMm, -dot(p, meridian) * radiusMm];
  const box = boxOf(facet, raw);
  const flat = (p: Vec3): FlatPoint => {
    const [x, y] = raw(p);
    return [x - (box.left + box.right) / 2, y - (box.top + box.bottom) / 2];
  };
  const r = Math.sqrt(Math.max(0, 1 - facet.plane.h ** 2)) * radiusMm;
  const sides = facet.outline.map((piece) => sideOf(piece, n, flat, r, radiusMm));
  const steps = facet.outline.map((piece) => pieceData(piece, n, flat, r));
  const path = `M${pair(flat(facet.outline[0].from))}${steps.join("")}Z`;
  return { path, sides, widthMm: facet.width * radiusMm, heightMm: facet.height * radiusMm };
}

function sideOf(
  piece: OutlinePiece,
  n: Vec3,
  flat: (p: Vec3) => FlatPoint,
  r: number,
  radiusMm: number,
): FlatSide {
  const curve = pieceCurve(piece, n);
  const middle = flat(curve(0.5));
  // Outlines run counter-clockwise seen from outside; with y downward the outside lies to the left of the tangent.
  const [ax, ay] = flat(curve(0.499));
  const [bx, by] = flat(curve(0.501));
  const l = Math.hypot(bx - ax, by - ay) || 1;
  return {
    path: `M${pair(flat(piece.from))}${pieceData(piece, n, flat, r)}`,
    with: piece.kind === "arc" ? SKIN : piece.with,
    lengthMm: piece.length * radiusMm,
    middle,
    outward: [-(by - ay) / l, (bx - ax) / l],
  };
}

/** "L x y" or one or two elliptical arcs: SVG can't draw a whole circle with one. */
function pieceData(piece: OutlinePiece, n: Vec3, flat: (p: Vec3) => FlatPoint, r: number): string {
  if (piece.kind === "line") return `L${pair(flat(piece.to))}`;
  const turn = arcTurn(piece.from, piece.to, n);
  const middle = flat(arcCurve(piece.from, n, turn)(0.5));
  const radius = r.toFixed(MM_DIGITS);
  const arc = (to: FlatPoint): string => `A${radius} ${radius} 0 0 0 ${pair(to)}`;
  return `${arc(middle)}${arc(flat(piece.to))}`;
}

const pair = ([x, y]: FlatPoint): string => `${x.toFixed(MM_DIGITS)} ${y.toFixed(MM_DIGITS)}`;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Exact box of an outline: its ends, and the circle's extremes that lie on its arcs. */
function boxOf(facet: SolidFacet, raw: (p: Vec3) => FlatPoint): Box {
  const points: FlatPoint[] = facet.outline.map((p) => raw(p.from));
  const { n } = facet.plane;
  for (const piece of facet.outline) {
    if (piece.kind !== "arc") continue;
    const turn = arcTurn(piece.from, piece.to, n);
    const curve = arcCurve(piece.from, n, turn);
    const start = Math.atan2(dot(piece.from, facet.frame.meridian), dot(piece.from, facet.frame.across));
    for (let k = 0; k < 4; k++) {
      const ahead = (k * Math.PI) / 2 - start;
      const away = ((ahead % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
      if (away < turn) points.push(raw(curve(away / turn)));
    }
  }
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
