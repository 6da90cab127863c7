/** The piece as flat shapes in the picture, from the exact outlines: for a drawing where there is no glass to render. */
import type { Plane } from "../../core/geometry/plane.ts";
import type { Solid } from "../../core/geometry/solid-types.ts";
import { dot, normalize, scale, type Vec3, vec3 } from "../../core/geometry/vec.ts";
import { eyeFrame, eyePlace, type Orbit, pictureOf } from "./camera.ts";
import { arcPoints, outlinePoints } from "./outline-points.ts";

/** Right and up in the picture, 1 at the end of its shorter side. */
export type ScreenPoint = readonly [x: number, y: number];

interface DrawnFacet {
  /** Its position in `solid.facets`. */
  readonly index: number;
  readonly ring: readonly ScreenPoint[];
  /** How squarely it meets the light from above left, 0 to 1. */
  readonly light: number;
}

export interface DrawnPiece {
  /** What is seen of the whole piece; empty when nothing is left of it. */
  readonly silhouette: readonly ScreenPoint[];
  /** Facets turned to the eye. A convex body hides none of these behind another. */
  readonly facets: readonly DrawnFacet[];
}

/** Toward the window, in the eye's own axes: right, up, out. */
const LIGHT = normalize([-0.45, 0.75, 0.5]);

/** The convex outline of places, counter-clockwise (Andrew's monotone chain, 1979). */
function outlineOf(places: readonly ScreenPoint[]): ScreenPoint[] {
  const sorted = [...places].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (row: readonly ScreenPoint[]): ScreenPoint[] => {
    const kept: ScreenPoint[] = [];
    for (const p of row) {
      const turnsRight = (a: ScreenPoint, b: ScreenPoint) =>
        (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) <= 0;
      while (kept.length > 1 && turnsRight(kept[kept.length - 2], kept[kept.length - 1])) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

/** Where a ray of sight grazes the whole ball. Unit sphere. */
function contourOf(view: Orbit): Vec3[] {
  const eye = eyePlace(view);
  const h = 1 / Math.hypot(...eye);
  const n = scale(eye, h);
  const { right, up } = eyeFrame(view);
  const beside = normalize(Math.abs(dot(n, right)) < 0.9 ? across(right, n) : across(up, n));
  const start = vec3((k) => n[k] * h + beside[k] * Math.sqrt(1 - h * h));
  return arcPoints({ n, h }, start, start);
}

/** What of `v` is square to the unit vector `n`. */
const across = (v: Vec3, n: Vec3): Vec3 => {
  const along = dot(v, n);
  return [v[0] - along * n[0], v[1] - along * n[1], v[2] - along * n[2]];
};

const isSkin = (p: Vec3, facets: Solid["facets"]): boolean =>
  facets.every(({ plane }) => dot(plane.n, p) <= plane.h);

const facesEye = ({ n, h }: Plane, eye: Vec3): boolean => dot(n, eye) > h;

export function drawPiece(solid: Solid, view: Orbit): DrawnPiece {
  if (solid.vanished) return { silhouette: [], facets: [] };
  const place = pictureOf(view);
  const eye = eyePlace(view);
  const { right, up, out } = eyeFrame(view);
  const rings = solid.facets.map((facet) => outlinePoints(facet).map(place));
  const skin = contourOf(view).filter((p) => isSkin(p, solid.facets));
  return {
    // The picture of a convex body is the outline of its corners and of the skin seen edge-on.
    silhouette: outlineOf([...rings.flat(), ...skin.map(place)]),
    facets: solid.facets.flatMap(({ plane, swallowed }, index) => {
      if (swallowed || !facesEye(plane, eye)) return [];
      const own: Vec3 = [dot(plane.n, right), dot(plane.n, up), dot(plane.n, out)];
      return [{ index, ring: rings[index], light: Math.max(0, dot(own, LIGHT)) }];
    }),
  };
}

/** Places as the points of an SVG polygon, `size` at the end of the picture's shorter side. */
export const pointsOf = (places: readonly ScreenPoint[], size: number, digits: number): string =>
  places.map(([x, y]) => `${(x * size).toFixed(digits)},${(-y * size).toFixed(digits)}`).join(" ");
