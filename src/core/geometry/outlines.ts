/**
 * The outlines of a cut ball made clean: places within SAME_PLACE of each other become one, pieces and facets that have
 * shrunk to nothing go, and what lay beyond them now borders what was on this side.
 */
import type { BallCut, Face } from "./cut.ts";
import type { Ring } from "./cut-ring.ts";
import { frameOf, type Plane } from "./plane.ts";
import { SKIN } from "./solid-types.ts";
import { SAME_PLACE } from "./tolerance.ts";
import { sweep } from "./turn.ts";
import { distance, dot, type Vec3 } from "./vec.ts";

export interface Outlines {
  readonly planes: readonly Plane[];
  readonly faces: readonly Face[];
  readonly places: readonly Vec3[];
}

/** Places in use that lie within SAME_PLACE of an earlier one: which one they become. Empty in all but odd cases. */
function mergedPlaces(cut: BallCut): Map<number, number> {
  const used = new Set<number>();
  for (const face of cut.faces)
    if (face !== null && face !== "whole") for (const place of face.places) used.add(place);
  const order = [...used].sort((p, q) => cut.places[p][0] - cut.places[q][0]);
  const merged = new Map<number, number>();
  order.forEach((place, rank) => {
    const at = cut.places[place];
    for (let r = rank - 1; r >= 0; r--) {
      const other = order[r];
      if (at[0] - cut.places[other][0] > SAME_PLACE) break;
      if (distance(at, cut.places[other]) > SAME_PLACE) continue;
      merged.set(place, merged.get(other) ?? other);
      break;
    }
  });
  return merged;
}

/** True for an arc whose ends have become one place but which still runs all the way round. */
function isLongArc(plane: Plane, from: Vec3, to: Vec3): boolean {
  const { across, meridian } = frameOf(plane.n);
  const angleOf = (p: Vec3) => Math.atan2(dot(p, meridian), dot(p, across));
  return sweep(angleOf(from), angleOf(to)) > Math.PI;
}

function mergeRing(ring: Ring, plane: Plane, cut: BallCut, merged: ReadonlyMap<number, number>): Ring {
  const own = ring.places.map((place) => merged.get(place) ?? place);
  const keep = own.map((place, i) => {
    const next = (i + 1) % own.length;
    if (place !== own[next]) return true;
    const [from, to] = [cut.places[ring.places[i]], cut.places[ring.places[next]]];
    return ring.labels[i] === SKIN && ring.places.length > 1 && isLongArc(plane, from, to);
  });
  return { places: own.filter((_, i) => keep[i]), labels: ring.labels.filter((_, i) => keep[i]) };
}

/** A facet of no area: no piece left, or one edge there and back. */
const isFlat = (ring: Ring): boolean =>
  ring.labels.length === 0 || (ring.labels.length < 3 && !ring.labels.includes(SKIN));

/** Takes flat facets out; the two that it lay between then share its edge. */
function dropFlat(faces: Face[]): void {
  for (let changed = true; changed; ) {
    changed = false;
    faces.forEach((face, j) => {
      if (face === null || face === "whole" || !isFlat(face)) return;
      faces[j] = null;
      changed = true;
      const [a, b] = face.labels;
      if (face.labels.length === 2) {
        replaceLabel(faces, a, j, b);
        replaceLabel(faces, b, j, a);
      }
    });
  }
}

/** An edge that has come to lie beside another with the same facet is one edge with it. */
function joinRuns({ places, labels }: Ring): Ring {
  const keep = labels.map(
    (label, i) => label === SKIN || label !== labels[i === 0 ? labels.length - 1 : i - 1],
  );
  return { places: places.filter((_, i) => keep[i]), labels: labels.filter((_, i) => keep[i]) };
}

function replaceLabel(faces: Face[], facet: number, from: number, to: number): void {
  const face = faces[facet];
  if (face === null || face === "whole" || facet === SKIN) return;
  faces[facet] = joinRuns({
    places: face.places,
    labels: face.labels.map((label) => (label === from ? to : label)),
  });
}

export function outlinesOf(cut: BallCut): Outlines {
  const merged = mergedPlaces(cut);
  const faces = cut.faces.map(
    (face, j): Face =>
      face === null || face === "whole" || merged.size === 0
        ? face
        : mergeRing(face, cut.planes[j], cut, merged),
  );
  dropFlat(faces);
  return { planes: cut.planes, faces, places: cut.places };
}
