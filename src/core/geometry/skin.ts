/**
 * The round skin left between facets: loops of arcs, the patches they border, and the area of each by Gauss-Bonnet
 * (do Carmo 1976, section 4-5): area = 2 pi chi - sum of geodesic curvature - sum of exterior angles.
 *
 * The caps that the planes take off the sphere form connected islands. A sphere minus islands is a tree: a patch
 * with several loops is bordered by several islands, and only an island with more than one loop separates anything.
 */
import type { Plane } from "./plane.ts";
import type { SkinPatch } from "./solid-types.ts";
import { TANGENT } from "./tolerance.ts";
import { addScaled, angleBetween, cross, dot, normalize, scale, type Vec3 } from "./vec.ts";

/** An arc of a facet's outline: counter-clockwise about the plane's normal, so the skin is on its right. */
export interface SkinArc {
  readonly plane: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Cluster ids of the ends; both -1 for a whole circle. */
  readonly fromId: number;
  readonly toId: number;
  /** Turn about the normal, (0, 2 pi]. */
  readonly turn: number;
  /** Plane whose edge with this one ends at `from`, -1 for a whole circle. */
  readonly before: number;
}

type Loop = readonly SkinArc[];

/** Direction at v of the circle of plane n, walked clockwise about n (skin on the left). */
const clockwise = (v: Vec3, n: Vec3): Vec3 => normalize(cross(v, n));

/** The arc that goes on from the start of `arc`, walking with the skin on the left: it ends where `arc` starts. */
function follow(
  arc: SkinArc,
  endingAt: ReadonlyMap<number, readonly SkinArc[]>,
  planes: readonly Plane[],
): SkinArc {
  const candidates = endingAt.get(arc.fromId) ?? [];
  if (candidates.length <= 1) return candidates[0] ?? arc;
  const direct = candidates.find((c) => c.plane === arc.before);
  if (direct) return direct;
  // Several wedges of skin meet here: the next border is the one reached first, turning left from straight back.
  const arrival = clockwise(arc.from, planes[arc.plane].n);
  const turnOf = (c: SkinArc) => {
    const departure = clockwise(arc.from, planes[c.plane].n);
    return Math.atan2(dot(arc.from, cross(arrival, departure)), dot(arrival, departure));
  };
  return candidates.reduce((best, c) => (turnOf(c) > turnOf(best) ? c : best));
}

function traceLoops(arcs: readonly SkinArc[], planes: readonly Plane[]): Loop[] {
  const endingAt = new Map<number, SkinArc[]>();
  for (const arc of arcs) {
    if (arc.toId < 0) continue;
    const list = endingAt.get(arc.toId);
    if (list) list.push(arc);
    else endingAt.set(arc.toId, [arc]);
  }
  const used = new Set<SkinArc>();
  const loops: Loop[] = [];
  for (const start of arcs) {
    if (used.has(start)) continue;
    const loop: SkinArc[] = [];
    for (let arc = start; !used.has(arc); arc = arc.fromId < 0 ? arc : follow(arc, endingAt, planes)) {
      used.add(arc);
      loop.push(arc);
    }
    loops.push(loop);
  }
  return loops;
}

/** Sum of exterior angles and geodesic curvature along a loop, skin on the left. */
function loopTurning(loop: Loop, planes: readonly Plane[]): number {
  let sum = 0;
  loop.forEach((arc, i) => {
    sum -= planes[arc.plane].h * arc.turn;
    if (arc.fromId < 0) return;
    const next = loop[(i + 1) % loop.length];
    // The wedge of skin between two caps is never reflex, so the exterior angle lies in [0, pi].
    sum += angleBetween(clockwise(arc.from, planes[arc.plane].n), clockwise(arc.from, planes[next.plane].n));
  });
  return sum;
}

/** Groups of caps that overlap: island number of each plane, -1 where the plane misses the ball. */
export function islandsOf(planes: readonly Plane[]): number[] {
  const parent = planes.map((_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (parent[r] !== r) r = parent[r];
    parent[i] = r;
    return r;
  };
  const rho = planes.map((p) => Math.acos(Math.max(-1, Math.min(1, p.h))));
  const cuts = planes.map((p) => (1 - p.h) * (1 + p.h) > TANGENT || p.h < 0);
  for (let i = 0; i < planes.length; i++) {
    if (!cuts[i]) continue;
    for (let j = i + 1; j < planes.length; j++) {
      if (!cuts[j]) continue;
      const [a, b] = [root(i), root(j)];
      if (a !== b && dot(planes[i].n, planes[j].n) > Math.cos(Math.min(Math.PI, rho[i] + rho[j])) + TANGENT)
        parent[a] = b;
    }
  }
  return planes.map((_, i) => (cuts[i] ? root(i) : -1));
}

/** Where the great circle from p through the plane's pole first enters its cap: angle along it, or Infinity. */
function entryAngle(p: Vec3, q: Vec3, plane: Plane): number {
  const [a, b] = [dot(plane.n, p), dot(plane.n, q)];
  const reach = Math.sqrt(a * a + b * b);
  if (reach <= Math.abs(plane.h)) return plane.h <= -reach ? 0 : Number.POSITIVE_INFINITY;
  const s = Math.atan2(b, a) - Math.acos(plane.h / reach);
  return s < 0 ? s + 2 * Math.PI : s;
}

const midpoint = (arc: SkinArc, planes: readonly Plane[]): Vec3 => {
  const { n, h } = planes[arc.plane];
  const foot = scale(n, h);
  const u: Vec3 = [arc.from[0] - foot[0], arc.from[1] - foot[1], arc.from[2] - foot[2]];
  const half = arc.turn / 2;
  return addScaled(addScaled(foot, u, Math.cos(half)), cross(n, u), Math.sin(half));
};

/** Which loop of an island faces the point p outside it. */
function facingLoop(
  p: Vec3,
  island: readonly number[],
  loops: readonly Loop[],
  planes: readonly Plane[],
): Loop {
  const goal = planes[island[0]].n;
  const q = normalize(addScaled(goal, p, -dot(goal, p)));
  let best = { s: Number.POSITIVE_INFINITY, plane: island[0] };
  for (const i of island) {
    const s = entryAngle(p, q, planes[i]);
    if (s < best.s) best = { s, plane: i };
  }
  const hit = addScaled(scale(p, Math.cos(best.s)), q, Math.sin(best.s));
  // The hit lies on an arc of that plane's circle: take the arc whose middle, allowing for its length, is nearest.
  let found = { slack: Number.POSITIVE_INFINITY, loop: loops[0] };
  for (const loop of loops) {
    for (const arc of loop) {
      if (arc.plane !== best.plane) continue;
      const chord = Math.sqrt(Math.max(0, 1 - planes[arc.plane].h ** 2));
      const mid = midpoint(arc, planes);
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
function groupLoops(loops: readonly Loop[], planes: readonly Plane[]): Loop[][] {
  if (loops.length === 1) return [[loops[0]]];
  const islandOf = islandsOf(planes);
  const byIsland = new Map<number, Loop[]>();
  for (const loop of loops) {
    const id = islandOf[loop[0].plane];
    byIsland.set(id, [...(byIsland.get(id) ?? []), loop]);
  }
  const separators = [...byIsland].filter(([, own]) => own.length > 1);
  const groups = new Map<string, Loop[]>();
  for (const loop of loops) {
    const p = midpoint(loop[0], planes);
    const key = separators
      .map(([id, own]) => {
        if (islandOf[loop[0].plane] === id) return own.indexOf(loop);
        const members = planes.map((_, i) => i).filter((i) => islandOf[i] === id);
        return own.indexOf(facingLoop(p, members, own, planes));
      })
      .join(",");
    groups.set(key, [...(groups.get(key) ?? []), loop]);
  }
  return [...groups.values()];
}

/**
 * The patches of skin bordered by the given arcs. Without arcs the skin is whole, or gone when any plane cuts.
 * @param covered true when some plane cuts the ball
 */
export function patchesOf(arcs: readonly SkinArc[], planes: readonly Plane[], covered: boolean): SkinPatch[] {
  if (arcs.length === 0) return covered ? [] : [{ facets: [], area: 4 * Math.PI, loops: [] }];
  return groupLoops(traceLoops(arcs, planes), planes).map((loops) => {
    const euler = 2 - loops.length;
    const turning = loops.reduce((sum, loop) => sum + loopTurning(loop, planes), 0);
    return {
      facets: [...new Set(loops.flatMap((loop) => loop.map((arc) => arc.plane)))].sort((a, b) => a - b),
      area: Math.max(0, 2 * Math.PI * euler - turning),
      loops: loops.map((loop) => loop.map(({ plane, from, to }) => ({ plane, from: to, to: from }))),
    };
  });
}
