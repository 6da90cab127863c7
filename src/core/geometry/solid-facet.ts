/** One facet of the exact solid measured: area and first moments by Green's theorem, extents, and what it sends out as seen from the centre. */
import type { Face } from "./cut.ts";
import type { Ring } from "./cut-ring.ts";
import { type FacetFrame, frameOf, type Plane } from "./plane.ts";
import { boxOf } from "./slice.ts";
import { type OutlinePiece, SKIN, type SolidFacet } from "./solid-types.ts";
import { sweep } from "./turn.ts";
import { addScaled, distance, dot, scale, type Vec3 } from "./vec.ts";

/** A ring drawn flat: coordinates (across, meridian) about the foot of the normal; `turns` of its arcs, 0 for edges. */
export interface FlatRing {
  readonly ring: Ring;
  readonly frame: FacetFrame;
  readonly h: number;
  readonly radius: number;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly turns: readonly number[];
}

const radiusOf = ({ h }: Plane): number => Math.sqrt(Math.max(0, (1 - h) * (1 + h)));

export function flatRing(plane: Plane, ring: Ring, places: readonly Vec3[]): FlatRing {
  const frame = frameOf(plane.n);
  const xs = ring.places.map((p) => dot(places[p], frame.across));
  const ys = ring.places.map((p) => dot(places[p], frame.meridian));
  const turns = ring.labels.map((label, i) => {
    if (label !== SKIN) return 0;
    const next = i + 1 === xs.length ? 0 : i + 1;
    return sweep(Math.atan2(ys[i], xs[i]), Math.atan2(ys[next], xs[next]));
  });
  return { ring, frame, h: plane.h, radius: radiusOf(plane), xs, ys, turns };
}

/** The point of space at (x, y) of a facet. */
const toSpace = ({ frame, h }: FlatRing, x: number, y: number): Vec3 =>
  addScaled(addScaled(scale(frame.n, h), frame.across, x), frame.meridian, y);

interface Sizes {
  readonly area: number;
  readonly perimeter: number;
  readonly centroid: Vec3;
}

function measure(flat: FlatRing): Sizes {
  const { radius: r, xs, ys, turns } = flat;
  let [area, mx, my, perimeter] = [0, 0, 0, 0];
  turns.forEach((turn, i) => {
    const next = i + 1 === xs.length ? 0 : i + 1;
    const [x0, y0, x1, y1] = [xs[i], ys[i], xs[next], ys[next]];
    if (turn > 0) {
      const from = Math.atan2(y0, x0);
      area += (r * r * turn) / 2;
      mx += (r ** 3 * (Math.sin(from + turn) - Math.sin(from))) / 3;
      my += (r ** 3 * (Math.cos(from) - Math.cos(from + turn))) / 3;
      perimeter += r * turn;
    } else {
      const twice = x0 * y1 - x1 * y0;
      area += twice / 2;
      mx += (twice * (x0 + x1)) / 6;
      my += (twice * (y0 + y1)) / 6;
      perimeter += Math.hypot(x1 - x0, y1 - y0);
    }
  });
  const centroid = area > 0 ? toSpace(flat, mx / area, my / area) : toSpace(flat, xs[0], ys[0]);
  return { area, perimeter, centroid };
}

/**
 * Solid angle of the facet seen from the centre, with the sign of h: what it lets out of a unit source there, times 4 pi.
 * Arcs bound sectors of the disc, 1 - h of their turn; edges bound triangles with the foot (Van Oosterom and Strackee 1983).
 */
export function fluxOf(plane: Plane, face: Face, places: readonly Vec3[]): number {
  const { h } = plane;
  const size = Math.abs(h);
  const sign = h < 0 ? -1 : 1;
  if (face === null) return 0;
  if (face === "whole") return sign * 2 * Math.PI * (1 - size);
  const { xs, ys, turns } = flatRing(plane, face, places);
  const seen = turns.reduce((sum, turn, i) => {
    if (turn > 0) return sum + turn * (1 - size);
    const next = i + 1 === xs.length ? 0 : i + 1;
    const [x0, y0, x1, y1] = [xs[i], ys[i], xs[next], ys[next]];
    const [a, b] = [Math.sqrt(size * size + x0 * x0 + y0 * y0), Math.sqrt(size * size + x1 * x1 + y1 * y1)];
    // vectors (0, 0, h), (x0, y0, h), (x1, y1, h), divided by h
    const triple = size * (x0 * y1 - x1 * y0);
    const against =
      size * a * b + size * size * b + size * size * a + (x0 * x1 + y0 * y1 + size * size) * size;
    return sum + 2 * Math.atan2(triple, against);
  }, 0);
  return sign * seen;
}

function outlineOf(flat: FlatRing, places: readonly Vec3[]): OutlinePiece[] {
  const { ring, turns, radius } = flat;
  return ring.labels.map((label, i) => {
    const next = i + 1 === ring.places.length ? 0 : i + 1;
    const [from, to] = [places[ring.places[i]], places[ring.places[next]]];
    return label === SKIN
      ? { kind: "arc", from, to, with: SKIN, length: turns[i] * radius }
      : { kind: "line", from, to, with: label, length: distance(from, to) };
  });
}

function wholeFacet(plane: Plane): SolidFacet {
  const frame = frameOf(plane.n);
  const radius = radiusOf(plane);
  const centroid = scale(plane.n, plane.h);
  const start = addScaled(centroid, frame.across, radius);
  return {
    plane,
    frame,
    swallowed: false,
    duplicateOf: -1,
    outline: [{ kind: "arc", from: start, to: start, with: SKIN, length: 2 * Math.PI * radius }],
    area: Math.PI * radius * radius,
    perimeter: 2 * Math.PI * radius,
    width: 2 * radius,
    height: 2 * radius,
    centroid,
  };
}

const goneFacet = (plane: Plane, duplicateOf: number): SolidFacet => ({
  plane,
  frame: frameOf(plane.n),
  swallowed: true,
  duplicateOf,
  outline: [],
  area: 0,
  perimeter: 0,
  width: 0,
  height: 0,
  centroid: scale(plane.n, plane.h),
});

export function facetOf(plane: Plane, face: Face, places: readonly Vec3[], duplicateOf: number): SolidFacet {
  if (face === null) return goneFacet(plane, duplicateOf);
  if (face === "whole") return wholeFacet(plane);
  const flat = flatRing(plane, face, places);
  const [xMin, xMax, yMin, yMax] = boxOf(flat.xs, flat.ys, face.labels, flat.radius);
  return {
    plane,
    frame: flat.frame,
    swallowed: false,
    duplicateOf: -1,
    outline: outlineOf(flat, places),
    ...measure(flat),
    width: xMax - xMin,
    height: yMax - yMin,
  };
}
