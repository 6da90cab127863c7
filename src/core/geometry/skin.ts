/**
 * The round skin left between facets: loops of arcs, the patches they border, and the area of each by Gauss-Bonnet
 * (do Carmo 1976, section 4-5): area = 2 pi chi - sum of geodesic curvature - sum of exterior angles.
 *
 * The caps that the planes take off the sphere form connected islands. A sphere minus islands is a tree: a patch
 * with several loops is bordered by several islands, and only an island with more than one loop separates anything.
 */
import { InexactCut } from "./inexact-cut.ts";
import type { Outlines } from "./outlines.ts";
import { frameOf, type Plane } from "./plane.ts";
import { flatRing } from "./solid-facet.ts";
import { SKIN, type SkinPatch } from "./solid-types.ts";
import { addScaled, cross, dot, normalize, scale, type Vec3 } from "./vec.ts";

/** An arc of a facet's outline: counter-clockwise about the plane's normal, so the skin is on its right. */
interface SkinArc {
  readonly plane: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Turn about the normal, (0, 2 pi]. */
  readonly turn: number;
  /** Its piece in the plane's ring; -1 for a whole circle, which closes on itself. */
  readonly piece: number;
}

type Loop = readonly SkinArc[];

function arcsOf({ planes, faces, places }: Outlines): SkinArc[] {
  return faces.flatMap((face, plane): SkinArc[] => {
    if (face === null) return [];
    if (face === "whole") {
      const { across } = frameOf(planes[plane].n);
      const { n, h } = planes[plane];
      const start = addScaled(scale(n, h), across, Math.sqrt((1 - h) * (1 + h)));
      return [{ plane, from: start, to: start, turn: 2 * Math.PI, piece: -1 }];
    }
    if (!face.labels.includes(SKIN)) return [];
    const { turns } = flatRing(planes[plane], face, places);
    return turns.flatMap((turn, piece) => {
      if (turn === 0) return [];
      const to = face.places[(piece + 1) % face.places.length];
      return [{ plane, from: places[face.places[piece]], to: places[to], turn, piece }];
    });
  });
}

/** Arcs by what they run into. */
interface Arrivals {
  /** By the place they end at, as an index of the table of places. */
  readonly at: ReadonlyMap<number, readonly SkinArc[]>;
  /** By facet and piece of its ring. */
  readonly piece: (plane: number, piece: number) => SkinArc | undefined;
}

function arrivalsOf(arcs: readonly SkinArc[], { faces }: Outlines): Arrivals {
  const at = new Map<number, SkinArc[]>();
  const byFacet = new Map<number, Map<number, SkinArc>>();
  for (const arc of arcs) {
    const face = faces[arc.plane];
    if (face === null || face === "whole") continue;
    const place = face.places[(arc.piece + 1) % face.places.length];
    const own = at.get(place);
    if (own) own.push(arc);
    else at.set(place, [arc]);
    const pieces = byFacet.get(arc.plane) ?? new Map<number, SkinArc>();
    byFacet.set(arc.plane, pieces.set(arc.piece, arc));
  }
  return { at, piece: (plane, piece) => byFacet.get(plane)?.get(piece) };
}

/** The other end of the run of facets that hang together by edges ending where `arc` starts: the arc that comes in there. */
function acrossFacets(arc: SkinArc, { faces }: Outlines, arrivals: Arrivals): SkinArc {
  let facet = arc.plane;
  let piece = arc.piece;
  for (let step = 0; step <= faces.length; step++) {
    const ring = faces[facet];
    if (ring === null || ring === "whole") throw new InexactCut("closed-skin");
    const before = (piece + ring.labels.length - 1) % ring.labels.length;
    const label = ring.labels[before];
    if (label === SKIN) {
      const found = arrivals.piece(facet, before);
      if (!found) throw new InexactCut("closed-skin");
      return found;
    }
    const other = faces[label];
    if (other === null || other === "whole") throw new InexactCut("two-sides");
    piece = other.labels.indexOf(facet);
    if (piece < 0 || other.places[piece] !== ring.places[(before + 1) % ring.places.length])
      throw new InexactCut("two-sides");
    facet = label;
  }
  throw new InexactCut("closed-skin");
}

/** Wedges of skin this thin may come out as a whole turn. */
const THIN_WEDGE = 1e-3;

/** The angle of the wedge of skin between two arcs at the place where the one starts and the other ends, [0, 2 pi). */
function wedgeBetween(starting: SkinArc, ending: SkinArc, planes: readonly Plane[]): number {
  const v = starting.from;
  const [a, b] = [cross(planes[starting.plane].n, v), cross(v, planes[ending.plane].n)];
  const turn = Math.atan2(dot(v, cross(b, a)), dot(a, b));
  return turn < -THIN_WEDGE ? turn + 2 * Math.PI : Math.max(0, turn);
}

/**
 * The arc that goes on where `arc` starts, walking with the skin on the left. Where one wedge of skin ends there, that is
 * the arc on the far side of the facets; where several do (a pinch), the one beyond the wedge of skin itself.
 */
function follow(arc: SkinArc, outlines: Outlines, arrivals: Arrivals): SkinArc {
  const own = acrossFacets(arc, outlines, arrivals);
  const face = outlines.faces[arc.plane];
  const place = face === null || face === "whole" ? -1 : face.places[arc.piece];
  const others = (arrivals.at.get(place) ?? []).filter((other) => other !== own);
  if (others.length === 0) return own;
  const wedge = (other: SkinArc) => wedgeBetween(arc, other, outlines.planes);
  return others.reduce((best, other) => (wedge(other) < wedge(best) ? other : best));
}

function traceLoops(arcs: readonly SkinArc[], outlines: Outlines): Loop[] {
  const arrivals = arrivalsOf(arcs, outlines);
  const used = new Set<SkinArc>();
  const loops: Loop[] = [];
  for (const start of arcs) {
    if (used.has(start)) continue;
    const loop: SkinArc[] = [];
    let arc = start;
    do {
      if (used.has(arc)) throw new InexactCut("closed-skin");
      used.add(arc);
      loop.push(arc);
      if (arc.piece >= 0) arc = follow(arc, outlines, arrivals);
    } while (arc !== start);
    loops.push(loop);
  }
  return loops;
}

/**
 * Turn to the left from one arc into the next where they meet, radians. The wedge of skin between two caps is never
 * reflex, so it lies in [0, pi], but for rounding on either side: half a turn and a little must not read as its negative.
 */
function exteriorAngle(v: Vec3, from: Plane, to: Plane): number {
  const [a, b] = [cross(v, from.n), cross(v, to.n)];
  const turn = Math.atan2(dot(v, cross(a, b)), dot(a, b));
  return turn < -Math.PI / 2 ? turn + 2 * Math.PI : turn;
}

/** Sum of exterior angles and geodesic curvature along a loop, skin on the left. */
function loopTurning(loop: Loop, planes: readonly Plane[]): number {
  let sum = 0;
  loop.forEach((arc, i) => {
    sum -= planes[arc.plane].h * arc.turn;
    if (arc.piece < 0) return;
    const next = loop[(i + 1) % loop.length];
    sum += exteriorAngle(arc.from, planes[arc.plane], planes[next.plane]);
  });
  return sum;
}

/** Facets that hang together by places they share: island number of each plane, -1 for those with nothing left. */
export function islandsOf({ faces }: Outlines): number[] {
  const parent = faces.map((_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (parent[r] !== r) r = parent[r];
    parent[i] = r;
    return r;
  };
  const firstAt = new Map<number, number>();
  faces.forEach((face, j) => {
    if (face === null || face === "whole") return;
    for (const place of face.places) {
      const first = firstAt.get(place);
      if (first === undefined) firstAt.set(place, j);
      else parent[root(j)] = root(first);
    }
  });
  return faces.map((face, i) => (face === null ? -1 : root(i)));
}

/** Where the great circle from p through the plane's pole first enters its cap: angle along it, or Infinity. */
function entryAngle(p: Vec3, q: Vec3, plane: Plane): number {
  const [a, b] = [dot(plane.n, p), dot(plane.n, q)];
  const reach = Math.sqrt(a * a + b * b);
  if (reach <= Math.abs(plane.h)) return plane.h <= -reach ? 0 : Number.POSITIVE_INFINITY;
  const s = Math.atan2(b, a) - Math.acos(plane.h / reach);
  return s < 0 ? s + 2 * Math.PI : s;
}

/** The point of an arc's circle at a share of its turn. */
const pointOf = (arc: SkinArc, planes: readonly Plane[], share = 0.5): Vec3 => {
  const { n, h } = planes[arc.plane];
  const foot = scale(n, h);
  const u: Vec3 = [arc.from[0] - foot[0], arc.from[1] - foot[1], arc.from[2] - foot[2]];
  const angle = arc.turn * share;
  return addScaled(addScaled(foot, u, Math.cos(angle)), cross(n, u), Math.sin(angle));
};

/** How far a point is from the nearest cap of `members`, one plane excepted; along normals, so a lower bound. */
function slackOf(
  p: Vec3,
  members: readonly number[],
  planes: readonly Plane[],
  except: number,
  enough = Number.NEGATIVE_INFINITY,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (const j of members) {
    if (j === except) continue;
    const { n, h } = planes[j];
    least = Math.min(least, h - n[0] * p[0] - n[1] * p[1] - n[2] * p[2]);
    if (least <= enough) return least;
  }
  return least;
}

/** Up to `most` of a list, evenly spread. */
const someOf = <T>(list: readonly T[], most: number): T[] =>
  list.filter((_, i) => i % Math.ceil(list.length / most) === 0);

const PROBED = 6;
const SHARES = [0.5, 0.31, 0.73];

/** A point of a loop that lies clear of other caps: circles that touch there would make the way from it doubtful. */
function clearPoint(loop: Loop, live: readonly number[], planes: readonly Plane[]): Vec3 {
  let best = { at: pointOf(loop[0], planes), slack: Number.NEGATIVE_INFINITY };
  for (const arc of someOf(loop, PROBED))
    for (const share of SHARES) {
      const at = pointOf(arc, planes, share);
      const slack = slackOf(at, live, planes, arc.plane, best.slack);
      if (slack > best.slack) best = { at, slack };
    }
  return best.at;
}

/** Where the way from p to a goal first enters a cap of the island, and how clear of its other caps that is. */
function entryOf(p: Vec3, goal: Vec3, island: readonly number[], planes: readonly Plane[]) {
  const q = normalize(addScaled(goal, p, -dot(goal, p)));
  let [s, plane] = [Number.POSITIVE_INFINITY, island[0]];
  for (const i of island) {
    const angle = entryAngle(p, q, planes[i]);
    if (angle < s) [s, plane] = [angle, i];
  }
  const at = addScaled(scale(p, Math.cos(s)), q, Math.sin(s));
  return { at, plane, slack: slackOf(at, island, planes, plane) };
}

/** Which loop of an island faces the point p outside it. */
function facingLoop(
  p: Vec3,
  island: readonly number[],
  loops: readonly Loop[],
  planes: readonly Plane[],
): Loop {
  const { at: hit, plane } = someOf(island, PROBED)
    .map((goal) => entryOf(p, planes[goal].n, island, planes))
    .reduce((a, b) => (b.slack > a.slack ? b : a));
  // The hit lies on an arc of that plane's circle: take the arc whose middle, allowing for its length, is nearest.
  let found = { slack: Number.POSITIVE_INFINITY, loop: loops[0] };
  for (const loop of loops) {
    for (const arc of loop) {
      if (arc.plane !== plane) continue;
      const chord = Math.sqrt(Math.max(0, 1 - planes[arc.plane].h ** 2));
      const mid = pointOf(arc, planes);
      const apart =
        2 *
        Math.asin(Math.min(1, Math.hypot(hit[0] - mid[0], hit[1] - mid[1], hit[2] - mid[2]) / (2 * chord)));
      const slack = apart - arc.turn / 2;
      if (slack < found.slack) found = { slack, loop };
    }
  }
  return found.loop;
}

/** Loops that border one and the same patch, grouped. */
function groupLoops(loops: readonly Loop[], outlines: Outlines): Loop[][] {
  if (loops.length === 1) return [[loops[0]]];
  const { planes } = outlines;
  const islandOf = islandsOf(outlines);
  const byIsland = new Map<number, Loop[]>();
  for (const loop of loops) {
    const id = islandOf[loop[0].plane];
    const own = byIsland.get(id);
    if (own) own.push(loop);
    else byIsland.set(id, [loop]);
  }
  const separators = [...byIsland].flatMap(([id, own]) =>
    own.length > 1 ? [{ id, own, members: planes.map((_, i) => i).filter((i) => islandOf[i] === id) }] : [],
  );
  if (separators.length === 0) return [[...loops]];
  const live = planes.map((_, i) => i).filter((i) => islandOf[i] >= 0);
  const groups = new Map<string, Loop[]>();
  for (const loop of loops) {
    const p = clearPoint(loop, live, planes);
    const key = separators
      .map(({ id, own, members }) =>
        own.indexOf(islandOf[loop[0].plane] === id ? loop : facingLoop(p, members, own, planes)),
      )
      .join(",");
    groups.set(key, [...(groups.get(key) ?? []), loop]);
  }
  return [...groups.values()];
}

/**
 * The patches of skin left beside the outlines. Without arcs the skin is whole, or gone when any facet is there.
 * @throws InexactCut when a loop of skin does not close
 */
export function patchesOf(outlines: Outlines, vanished: boolean): SkinPatch[] {
  const { planes, faces } = outlines;
  const arcs = arcsOf(outlines);
  if (arcs.length === 0) {
    const isUncut = !vanished && faces.every((face) => face === null);
    return isUncut ? [{ facets: [], area: 4 * Math.PI, loops: [] }] : [];
  }
  return groupLoops(traceLoops(arcs, outlines), outlines).map((loops) => {
    const euler = 2 - loops.length;
    const turning = loops.reduce((sum, loop) => sum + loopTurning(loop, planes), 0);
    return {
      facets: [...new Set(loops.flatMap((loop) => loop.map((arc) => arc.plane)))].sort((a, b) => a - b),
      area: 2 * Math.PI * euler - turning,
      loops: loops.map((loop) => loop.map(({ plane, from, to }) => ({ plane, from: to, to: from }))),
    };
  });
}
