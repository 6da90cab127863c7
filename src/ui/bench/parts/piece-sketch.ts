/**
 * The cut piece as a drawing on paper: seen from far away (orthographic), facets as they face the eye, the silhouette of what is
 * left. The piece is convex, so a facet that faces the eye is seen whole. Unit sphere; paper x to the right, y down.
 */
import type { Plane } from "../../../core/geometry/plane.ts";
import type { Solid } from "../../../core/geometry/solid-types.ts";
import { cross, dot, normalize, type Vec3 } from "../../../core/geometry/vec.ts";
import { outlinePoints } from "../../piece/outline-points.ts";

const DEG = Math.PI / 180;
const DIRECTIONS = 120;
/** Halvings of the silhouette's radius: finer than a pixel of any screen. */
const HALVINGS = 12;

export interface SketchView {
  readonly right: Vec3;
  readonly up: Vec3;
  /** From the piece towards the eye. */
  readonly toEye: Vec3;
}
export interface Sketch {
  readonly silhouette: string;
  readonly faces: readonly { readonly points: string; readonly isOwn: boolean }[];
}

/** A view from an azimuth and elevation in degrees; straight above, +y is up. */
export function viewFrom(azimuthDeg: number, elevationDeg: number): SketchView {
  const [a, e] = [azimuthDeg * DEG, elevationDeg * DEG];
  const toEye: Vec3 = [Math.cos(e) * Math.cos(a), Math.cos(e) * Math.sin(a), Math.sin(e)];
  const isPole = Math.abs(toEye[2]) > 1 - 1e-9;
  const right = normalize(cross(isPole ? [0, 1, 0] : [0, 0, 1], toEye));
  return { right, up: cross(toEye, right), toEye };
}

const paper = (x: number, y: number): string => `${x.toFixed(4)},${(-y).toFixed(4)}`;

/** Whether the line towards the eye through a point of the paper passes through the piece. */
function isCovered(
  planes: readonly Plane[],
  { right, up, toEye }: SketchView,
  x: number,
  y: number,
): boolean {
  const half = Math.sqrt(Math.max(0, 1 - x * x - y * y));
  let [from, to] = [-half, half];
  for (const { n, h } of planes) {
    const left = h - x * dot(n, right) - y * dot(n, up);
    const toward = dot(n, toEye);
    if (toward > 0) to = Math.min(to, left / toward);
    else if (toward < 0) from = Math.max(from, left / toward);
    else if (left < 0) return false;
  }
  return from <= to;
}

/** How far the piece reaches from the centre of the paper in one direction. */
function reach(planes: readonly Plane[], view: SketchView, c: number, s: number): number {
  if (isCovered(planes, view, c, s)) return 1;
  let [inside, outside] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (inside + outside) / 2;
    if (isCovered(planes, view, c * middle, s * middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}

/** @param isOwn whether the facet of plane i is drawn as the one in hand */
export function pieceSketch(solid: Solid, view: SketchView, isOwn: (i: number) => boolean): Sketch {
  const planes = solid.facets.map((facet) => facet.plane);
  const rim = Array.from({ length: DIRECTIONS }, (_, i) => {
    const angle = (2 * Math.PI * i) / DIRECTIONS;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const r = reach(planes, view, c, s);
    return paper(r * c, r * s);
  });
  const faces = solid.facets.flatMap((facet, i) => {
    if (facet.swallowed || dot(facet.plane.n, view.toEye) <= 0) return [];
    const points = outlinePoints(facet).map((p) => paper(dot(p, view.right), dot(p, view.up)));
    return [{ points: points.join(" "), isOwn: isOwn(i) }];
  });
  return { silhouette: rim.join(" "), faces };
}
