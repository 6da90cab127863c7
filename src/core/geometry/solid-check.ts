/**
 * The laws that every ball cut by planes keeps, whatever the planes. Looked at after each cut; what breaks one is an
 * error and no number.
 */
import { InexactCut } from "./inexact-cut.ts";
import type { Outlines } from "./outlines.ts";
import { islandsOf } from "./skin.ts";
import { fluxOf } from "./solid-facet.ts";
import { SKIN, type SkinPatch, type Solid } from "./solid-types.ts";
import { CHECK_SUM, EPSILON } from "./tolerance.ts";

const BALL = (4 * Math.PI) / 3;

/** Every edge is in exactly two outlines, with the same ends; and V - E + F fits a body without holes. */
export function checkOutlines({ faces }: Outlines, patches: readonly SkinPatch[]): void {
  const places = new Set<number>();
  let [edges, halves, left, whole] = [0, 0, 0, 0];
  faces.forEach((face, j) => {
    if (face === null) return;
    left++;
    if (face === "whole") {
      whole++;
      return;
    }
    face.labels.forEach((label, i) => {
      const [from, to] = [face.places[i], face.places[i + 1 === face.places.length ? 0 : i + 1]];
      places.add(from);
      if (label === SKIN) {
        edges++;
        return;
      }
      halves++;
      const other = faces[label];
      if (other === null || other === "whole") throw new InexactCut("two-sides");
      const back = other.labels.indexOf(j);
      if (back < 0 || back !== other.labels.lastIndexOf(j)) throw new InexactCut("two-sides");
      const next = back + 1 === other.places.length ? 0 : back + 1;
      if (other.places[back] !== to || other.places[next] !== from) throw new InexactCut("two-sides");
    });
  });
  if (left === 0) return;
  // a whole circle is one place and one edge; islands make the drawing fall into parts
  const parts = new Set(islandsOf({ faces, planes: [], places: [] }).filter((id) => id >= 0)).size;
  const vertices = places.size + whole;
  const lines = edges + halves / 2 + whole;
  if (vertices - lines + left + patches.length !== 1 + parts) throw new InexactCut("euler");
}

/** How far rounding may set a place beyond a plane. */
const BEYOND = 1e-7;

/**
 * No place of an outline, and no skin, lies beyond any plane: also none of those that have no facet left. (The skin would
 * reach beyond such a plane farthest at the plane's own pole.)
 */
function checkWithin({ planes, faces, places }: Outlines): void {
  const used = new Set<number>();
  for (const face of faces)
    if (face !== null && face !== "whole") for (const place of face.places) used.add(place);
  const points = [...used].map((place) => places[place]);
  const left = planes.filter((_, k) => faces[k] !== null);
  if (left.length === 0) return;
  planes.forEach(({ n, h }, k) => {
    for (const p of points)
      if (n[0] * p[0] + n[1] * p[1] + n[2] * p[2] > h + BEYOND) throw new InexactCut("beyond");
    if (faces[k] !== null || h >= 1 - BEYOND) return;
    const isCovered = left.some(
      (other) => other.n[0] * n[0] + other.n[1] * n[1] + other.n[2] * n[2] > other.h - BEYOND,
    );
    if (!isCovered) throw new InexactCut("beyond");
  });
}

const rounded = (value: number, most: number): number => {
  if (!(value >= -EPSILON && value <= most + EPSILON * 10)) throw new InexactCut("size");
  return Math.max(0, value);
};

/** Areas and volume lie between none and the ball's, and the surface sees all of the centre's light (Gauss). */
export function checkSizes(solid: Solid, outlines: Outlines): Solid {
  const { planes, faces, places } = outlines;
  checkWithin(outlines);
  const facets = solid.facets.map((facet) =>
    facet.area < 0 ? { ...facet, area: rounded(facet.area, Math.PI) } : facet,
  );
  const patches = solid.patches.map((patch) => ({ ...patch, area: rounded(patch.area, 4 * Math.PI) }));
  const skinArea = rounded(solid.skinArea, 4 * Math.PI);
  const volume = rounded(solid.volume, BALL);
  const isOnCentre = planes.some(({ h }, k) => faces[k] !== null && Math.abs(h) < CHECK_SUM);
  if (!isOnCentre && !solid.vanished) {
    const flux = planes.reduce((sum, plane, k) => sum + fluxOf(plane, faces[k], places), skinArea);
    const isInside = planes.every(({ h }) => h > 0);
    if (Math.abs(flux - (isInside ? 4 * Math.PI : 0)) > CHECK_SUM) throw new InexactCut("flux");
  }
  return { ...solid, facets, patches, skinArea, volume };
}
