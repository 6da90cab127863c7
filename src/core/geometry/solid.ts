/**
 * The exact solid: a unit ball cut by half-spaces, in closed form. Outlines as lines and arcs, areas by Green's
 * theorem, round skin by Gauss-Bonnet, volume as cones from the centre: sum of h A / 3 + S / 3.
 * Every number a person reads comes from here.
 */
import type { Plane } from "./plane.ts";
import { patchesOf, type SkinArc } from "./skin.ts";
import { heightOf, type Slice, sliceFacet, sweep, toSpace, widthOf } from "./slice.ts";
import {
  type OutlinePiece,
  SKIN,
  type SkinPatch,
  type Solid,
  type SolidEdge,
  type SolidFacet,
  type SolidVertex,
} from "./solid-types.ts";
import { SAME_PLACE, TANGENT } from "./tolerance.ts";
import { addScaled, distance, scale, type Vec3 } from "./vec.ts";

const ORIGIN: Vec3 = [0, 0, 0];

/** One vertex of one outline, before vertices of different outlines are made one. */
interface Corner {
  readonly facet: number;
  readonly at: Vec3;
}

/** Gives equal ids to corners within SAME_PLACE of each other; the place of each id is that of its first corner. */
function mergePlaces(corners: readonly Corner[]): { ids: Int32Array; places: Vec3[] } {
  const order = corners.map((_, i) => i).sort((i, j) => corners[i].at[0] - corners[j].at[0]);
  const ids = new Int32Array(corners.length).fill(-1);
  const places: Vec3[] = [];
  order.forEach((i, rank) => {
    const at = corners[i].at;
    for (let r = rank - 1; r >= 0; r--) {
      const other = corners[order[r]].at;
      if (at[0] - other[0] > SAME_PLACE) break;
      if (distance(at, other) <= SAME_PLACE) {
        ids[i] = ids[order[r]];
        return;
      }
    }
    ids[i] = places.length;
    places.push(at);
  });
  return { ids, places };
}

/** A slice whose vertices carry merged ids; pieces shorter than SAME_PLACE are gone. */
interface Ring {
  readonly slice: Slice;
  readonly ids: readonly number[];
  readonly labels: readonly number[];
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

function dropShortPieces(slice: Slice, ids: readonly number[]): Ring {
  const keep = ids.map((id, i) => {
    const next = (i + 1) % ids.length;
    if (id !== ids[next]) return true;
    // Both ends in one place: an arc may still run all the way round.
    const turn = sweep(Math.atan2(slice.ys[i], slice.xs[i]), Math.atan2(slice.ys[next], slice.xs[next]));
    return slice.labels[i] === SKIN && turn > Math.PI;
  });
  const pick = <T>(list: readonly T[]) => list.filter((_, i) => keep[i]);
  return { slice, ids: pick(ids), labels: pick(slice.labels), xs: pick(slice.xs), ys: pick(slice.ys) };
}

const isGone = ({ slice, labels }: Ring): boolean =>
  slice.state === "none" ||
  (slice.state === "part" && (labels.length === 0 || (labels.length < 3 && !labels.includes(SKIN))));

interface Sizes {
  readonly area: number;
  readonly perimeter: number;
  readonly centroid: Vec3;
}

/** Area and first moments by Green's theorem, piece by piece about the foot of the normal. */
function measure(ring: Ring): Sizes {
  const { slice, xs, ys, labels } = ring;
  const r = slice.radius;
  if (slice.state === "whole")
    return { area: Math.PI * r * r, perimeter: 2 * Math.PI * r, centroid: toSpace(slice, 0, 0) };
  let [area, mx, my, perimeter] = [0, 0, 0, 0];
  labels.forEach((label, i) => {
    const next = (i + 1) % xs.length;
    const [x0, y0, x1, y1] = [xs[i], ys[i], xs[next], ys[next]];
    if (label === SKIN) {
      const from = Math.atan2(y0, x0);
      const turn = sweep(from, Math.atan2(y1, x1));
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
  area = Math.max(0, area);
  return {
    area,
    perimeter,
    centroid: area > 0 ? toSpace(slice, mx / area, my / area) : toSpace(slice, xs[0], ys[0]),
  };
}

function outlineOf(ring: Ring, places: readonly Vec3[]): OutlinePiece[] {
  const { slice, ids, labels, xs, ys } = ring;
  if (slice.state === "whole") {
    const start = toSpace(slice, slice.radius, 0);
    return [{ kind: "arc", from: start, to: start, with: SKIN, length: 2 * Math.PI * slice.radius }];
  }
  return labels.map((label, i) => {
    const next = (i + 1) % ids.length;
    const [from, to] = [places[ids[i]], places[ids[next]]];
    if (label !== SKIN) return { kind: "line", from, to, with: label, length: distance(from, to) };
    const turn = sweep(Math.atan2(ys[i], xs[i]), Math.atan2(ys[next], xs[next]));
    return { kind: "arc", from, to, with: SKIN, length: turn * slice.radius };
  });
}

const goneFacet = (plane: Plane, slice: Slice): SolidFacet => ({
  plane,
  frame: slice.frame,
  swallowed: true,
  duplicateOf: slice.duplicateOf,
  outline: [],
  area: 0,
  perimeter: 0,
  width: 0,
  height: 0,
  centroid: scale(plane.n, plane.h),
});

function facetOf(plane: Plane, ring: Ring, places: readonly Vec3[]): SolidFacet {
  if (isGone(ring)) return goneFacet(plane, ring.slice);
  const shape = { ...ring.slice, xs: ring.xs, ys: ring.ys, labels: ring.labels };
  return {
    plane,
    frame: ring.slice.frame,
    swallowed: false,
    duplicateOf: -1,
    outline: outlineOf(ring, places),
    ...measure(ring),
    width: widthOf(shape),
    height: heightOf(shape),
  };
}

/** The arcs of all outlines, for tracing the skin. */
function arcsOf(rings: readonly Ring[], places: readonly Vec3[]): SkinArc[] {
  return rings.flatMap((ring, plane): SkinArc[] => {
    if (isGone(ring)) return [];
    const { slice, ids, labels, xs, ys } = ring;
    if (slice.state === "whole") {
      const start = toSpace(slice, slice.radius, 0);
      return [{ plane, from: start, to: start, turn: 2 * Math.PI, fromId: -1, toId: -1, before: -1 }];
    }
    const arcs: SkinArc[] = [];
    for (let i = 0; i < labels.length; i++) {
      if (labels[i] !== SKIN) continue;
      const next = (i + 1) % ids.length;
      arcs.push({
        plane,
        from: places[ids[i]],
        to: places[ids[next]],
        turn: sweep(Math.atan2(ys[i], xs[i]), Math.atan2(ys[next], xs[next])),
        fromId: ids[i],
        toId: ids[next],
        before: labels[(i + ids.length - 1) % ids.length],
      });
    }
    return arcs;
  });
}

/** Each shared edge once; an edge counts when the facet with the lower index has it. */
function edgesOf(facets: readonly SolidFacet[]): SolidEdge[] {
  return facets.flatMap((facet, a) =>
    facet.outline.flatMap((piece) =>
      piece.kind === "line" && piece.with > a && !facets[piece.with].swallowed
        ? [{ a, b: piece.with, from: piece.from, to: piece.to, length: piece.length }]
        : [],
    ),
  );
}

/** Places where three or more outlines have a vertex. */
function verticesOf(
  rings: readonly Ring[],
  facets: readonly SolidFacet[],
  places: readonly Vec3[],
): SolidVertex[] {
  const at = places.map(() => new Set<number>());
  rings.forEach((ring, k) => {
    if (!facets[k].swallowed) for (const id of ring.ids) at[id].add(k);
  });
  return at.flatMap((set, id) =>
    set.size < 3 ? [] : [{ at: places[id], facets: [...set].sort((a, b) => a - b) }],
  );
}

/** Volume and its first moment: cones over the facets, sectors over the skin (whose vector area closes the facets'). */
function massOf(facets: readonly SolidFacet[], skinArea: number): { volume: number; centroid: Vec3 } {
  let volume = skinArea / 3;
  let moment: Vec3 = ORIGIN;
  for (const { plane, area, centroid } of facets) {
    volume += (plane.h * area) / 3;
    moment = addScaled(moment, centroid, (plane.h * area) / 4);
    moment = addScaled(moment, plane.n, -area / 4);
  }
  return { volume, centroid: volume > 0 ? scale(moment, 1 / volume) : ORIGIN };
}

/** What is left of every plane on the ball, with one id for each place where outlines have a vertex. */
function ringsOf(planes: readonly Plane[]): { rings: readonly Ring[]; places: readonly Vec3[] } {
  const slices = planes.map((_, k) => sliceFacet(k, planes));
  const corners: Corner[] = slices.flatMap((slice, facet) =>
    slice.xs.map((x, i) => ({ facet, at: toSpace(slice, x, slice.ys[i]) })),
  );
  const { ids, places } = mergePlaces(corners);
  let offset = 0;
  const rings = slices.map((slice) => {
    const own = Array.from(ids.subarray(offset, offset + slice.xs.length));
    offset += slice.xs.length;
    return dropShortPieces(slice, own);
  });
  return { rings, places };
}

function skinOf(rings: readonly Ring[], places: readonly Vec3[], planes: readonly Plane[]): SkinPatch[] {
  if (planes.some((p) => p.h <= -1)) return [];
  const covered = planes.some((p) => p.h < 0 || (1 - p.h) * (1 + p.h) > TANGENT);
  return patchesOf(arcsOf(rings, places), planes, covered);
}

/** The patches of skin and which planes are swallowed, as `cutBall` finds them, without measuring any facet. */
export function cutSkin(planes: readonly Plane[]): {
  readonly patches: readonly SkinPatch[];
  readonly swallowed: readonly boolean[];
} {
  const { rings, places } = ringsOf(planes);
  return { patches: skinOf(rings, places, planes), swallowed: rings.map(isGone) };
}

/**
 * Cuts the unit ball by planes.
 * @param planes unit normals and signed distances, any number; each keeps n.x <= h
 * Degenerate planes are answers: one that misses or only touches is swallowed, a coincident one is swallowed by the
 * earlier, a plane at h <= -1 (or opposite planes that exclude each other) leaves nothing and `vanished` is true.
 */
export function cutBall(planes: readonly Plane[]): Solid {
  const { rings, places } = ringsOf(planes);
  const facets = planes.map((plane, k) => facetOf(plane, rings[k], places));
  const patches = skinOf(rings, places, planes);
  const facetArea = facets.reduce((sum, f) => sum + f.area, 0);
  const skinArea = patches.reduce((sum, p) => sum + p.area, 0);
  const { volume, centroid } = massOf(facets, skinArea);
  return {
    facets,
    edges: edgesOf(facets),
    vertices: verticesOf(rings, facets, places),
    patches,
    volume: Math.max(0, volume),
    facetArea,
    skinArea,
    centroid,
    vanished: facetArea === 0 && skinArea === 0,
  };
}
