/**
 * Cuts a blank plane by plane. For each plane every vertex is classified once (inside, on, outside); edges that cross get
 * one new vertex, keyed by the edge itself, so both faces share it; faces are parted along the plane; what lies outside
 * falls away and the hole it leaves is closed by the plane's own face. Nothing depends on coordinates except the
 * classification, so the surface stays watertight for any planes at all.
 *
 * On a round blank the mesh is also made to hold what the plane does to the true ball: an arc that dips through the plane
 * between two vertices gets a vertex at its extreme, and a cap that falls inside one skin face gets a vertex at its pole.
 * So a facet far smaller than the mesh still appears, and its border lies on its true circle.
 */

import type { Blank, CutMesh } from "./mesh.ts";
import { angleOnCircle, findCrossing, findExtreme, findOnCircle, found, turnAbout } from "./mesh-curves.ts";
import { extractMesh } from "./mesh-extract.ts";
import {
  addEdge,
  addFace,
  addVertex,
  copyHalfEdges,
  endOf,
  fanFace,
  type HalfEdges,
  NONE,
  restoreHalfEdges,
  setNormal,
  splitEdge,
} from "./mesh-half-edges.ts";
import type { Plane } from "./plane.ts";
import { SKIN } from "./solid-types.ts";
import { COINCIDENT, EPSILON } from "./tolerance.ts";

const INSIDE = -1;
const ON = 0;
const OUTSIDE = 1;
/** Marks half-edges that fall away with the part cut off. */
const REMOVED = -2;
/** A facet's border on the skin turns by no more than this between two vertices: what the eye takes for a circle. */
const BORDER_STEP = Math.PI / 12;
/** How far past a plane the middle of an arc of so many radians can stand when its nearer end does not reach it. */
const reachOf = (arc: number): number => 1 - Math.cos(arc / 2);

/** A piece being cut. Only the functions of this file change it. */
export interface CutState {
  readonly isRound: boolean;
  /** Vertices farther inside than this have no arc that passes the plane. */
  readonly reach: number;
  /** Longest edge of the blank as an arc, radians; 0 when it is not round. */
  readonly longestArc: number;
  readonly mesh: HalfEdges;
  /** Planes cut so far; a plane's position is the id of the faces it made. */
  readonly planes: Plane[];
  /** Vertices still on the piece: the first `liveCount` of `live`. */
  live: Int32Array;
  liveCount: number;
  /** Scratch, by vertex: signed distance from the current plane, and INSIDE, ON or OUTSIDE. */
  distance: Float64Array;
  side: Int8Array;
  /** Scratch: what the current plane finds. */
  outside: number[];
  near: number[];
  anyInside: boolean;
}

/** A piece with nothing cut yet. The blank itself is never changed. */
export function beginCut(blank: Blank): CutState {
  const mesh = copyHalfEdges(blank.surface);
  const room = 2 * mesh.vertexCount;
  const state: CutState = {
    isRound: blank.isRound,
    reach: reachOf(Math.max(BORDER_STEP, blank.longestArc)),
    longestArc: blank.longestArc,
    mesh,
    planes: [],
    live: new Int32Array(room),
    liveCount: 0,
    outside: [],
    near: [],
    anyInside: false,
    distance: new Float64Array(room),
    side: new Int8Array(room),
  };
  allLive(state);
  return state;
}

function allLive(state: CutState): void {
  const { mesh, live } = state;
  state.liveCount = 0;
  for (let v = 0; v < mesh.vertexCount; v++) if (mesh.out[v] !== NONE) live[state.liveCount++] = v;
}

/** The piece that `cutMesh` last cut of each blank: its arrays serve again, because fresh memory costs more than cutting. */
const lastCuts = new WeakMap<Blank, CutState>();

/** A piece with nothing cut yet, in memory that the next call takes back. */
function beginAgain(blank: Blank): CutState {
  const state = lastCuts.get(blank);
  if (!state) {
    const first = beginCut(blank);
    lastCuts.set(blank, first);
    return first;
  }
  restoreHalfEdges(state.mesh, blank.surface);
  state.planes.length = 0;
  allLive(state);
  return state;
}

/** An independent copy, to return to this stage of the work later. */
export const copyCut = (state: CutState): CutState => ({
  ...state,
  mesh: copyHalfEdges(state.mesh),
  planes: [...state.planes],
  live: state.live.slice(),
  distance: state.distance.slice(),
  side: state.side.slice(),
});

/** The piece as it stands, as a mesh of its own. */
export const meshOfCut = (state: CutState): CutMesh =>
  extractMesh(state.mesh, state.liveCount, state.isRound, state.planes);

/**
 * Cuts a blank by planes, in order; face ids are positions in `planes`.
 * A plane that misses, touches, or coincides with an earlier one cuts nothing; when nothing is left the mesh is empty.
 */
export function cutMesh(blank: Blank, planes: readonly Plane[]): CutMesh {
  const state = beginAgain(blank);
  for (const plane of planes) cutNext(state, plane);
  return meshOfCut(state);
}

/** Cuts by one more plane; its id is the number of planes before it. Changes `state`. */
export function cutNext(state: CutState, plane: Plane): void {
  const isRepeated = state.planes.some((earlier) => coincide(earlier, plane));
  if (state.planes.some((earlier) => exclude(earlier, plane))) state.liveCount = 0;
  state.planes.push(plane);
  if (isRepeated || state.liveCount === 0) return;
  classify(state, plane);
  if (state.isRound) revealArcs(state, plane);
  if (state.outside.length === 0) return;
  if (!state.anyInside) {
    state.liveCount = 0;
    return;
  }
  splitCrossedEdges(state, plane);
  const rim = partFaces(state, plane);
  closeHole(state, plane, rim);
  dropOutside(state);
}

const isParallel = (p: Plane, q: Plane, sign: 1 | -1): boolean =>
  p.n.every((c, k) => Math.abs(c - sign * q.n[k]) <= COINCIDENT);

const coincide = (p: Plane, q: Plane): boolean => Math.abs(p.h - q.h) <= COINCIDENT && isParallel(p, q, 1);

/** Whether opposite planes leave no more than the thickness that counts as none. */
const exclude = (p: Plane, q: Plane): boolean => p.h + q.h <= COINCIDENT && isParallel(p, q, -1);

/** Classifies every vertex once; the lists of those outside and near the plane are kept for the steps that follow. */
function classify(state: CutState, { n: [nx, ny, nz], h }: Plane): void {
  const { live, liveCount, distance, side, reach } = state;
  const { at } = state.mesh;
  state.outside = [];
  state.near = [];
  state.anyInside = false;
  for (let i = 0; i < liveCount; i++) {
    const v = live[i];
    const d = nx * at[3 * v] + ny * at[3 * v + 1] + nz * at[3 * v + 2] - h;
    distance[v] = d;
    if (d < -reach) {
      side[v] = INSIDE;
      state.anyInside = true;
      continue;
    }
    if (d < reach) state.near.push(v);
    enterSide(state, v, d);
  }
}

function enterSide(state: CutState, v: number, d: number): void {
  state.distance[v] = d;
  state.side[v] = d > EPSILON ? OUTSIDE : d < -EPSILON ? INSIDE : ON;
  if (d > EPSILON) state.outside.push(v);
  else if (d < -EPSILON) state.anyInside = true;
}

/** Takes what was cut off from the list of live vertices. */
function dropOutside(state: CutState): void {
  const { live, side } = state;
  let kept = 0;
  for (let i = 0; i < state.liveCount; i++) if (side[live[i]] !== OUTSIDE) live[kept++] = live[i];
  state.liveCount = kept;
}

/** Makes a vertex at `found`; its skin normal is the radius on a ball. */
function addFound(state: CutState): number {
  const { mesh } = state;
  const v = addVertex(mesh, found.x, found.y, found.z);
  if (state.isRound) setNormal(mesh, v, found.x, found.y, found.z);
  if (v >= state.side.length) growScratch(state);
  state.live[state.liveCount++] = v;
  return v;
}

function growScratch(state: CutState): void {
  const room = 2 * state.side.length;
  const [live, distance, side] = [new Int32Array(room), new Float64Array(room), new Int8Array(room)];
  live.set(state.live);
  distance.set(state.distance);
  side.set(state.side);
  Object.assign(state, { live, distance, side });
}

/** Gives vertices to what the plane does to the true arcs and the true cap between the mesh's own vertices. */
function revealArcs(state: CutState, plane: Plane): void {
  const { mesh } = state;
  // an arc that crosses between two vertices of one side comes near the plane at one of them
  for (const v of state.near) {
    const first = mesh.out[v];
    let h = first;
    do {
      const across = mesh.next[mesh.twin[h]];
      revealExtreme(state, plane, h);
      h = across;
    } while (h !== first);
  }
  if (state.outside.length === 0) revealPole(state, plane, 1);
  else if (!state.anyInside) revealPole(state, plane, -1);
}

const distanceOfFound = ({ n, h }: Plane): number => n[0] * found.x + n[1] * found.y + n[2] * found.z - h;

function revealExtreme(state: CutState, plane: Plane, h: number): void {
  const { mesh, side, planes } = state;
  const [a, b] = [side[mesh.start[h]], side[endOf(mesh, h)]];
  if (a * b < 0 || (a === ON && b === ON)) return;
  const sign = a + b < 0 ? 1 : -1;
  if (findExtreme(mesh, planes, h, plane, sign) <= EPSILON) return;
  const v = addFound(state);
  splitEdge(mesh, h, v);
  enterSide(state, v, distanceOfFound(plane));
}

/** The skin face that the plane's axis leaves the ball through, `sign` along its normal; or NONE. */
function skinFaceAt(state: CutState, plane: Plane, sign: 1 | -1): number {
  const { mesh, live, distance } = state;
  // all corners of the face that holds the pole are no farther from it than the longest edge
  const within = Math.cos(state.longestArc) - sign * plane.h - EPSILON;
  for (let i = 0; i < state.liveCount; i++) {
    if (sign * distance[live[i]] < within) continue;
    const first = mesh.out[live[i]];
    let h = first;
    do {
      const f = mesh.face[h];
      if (mesh.plane[f] === SKIN && turnsAbout(mesh, f, plane, sign) > Math.PI) return f;
      h = mesh.next[mesh.twin[h]];
    } while (h !== first);
  }
  return NONE;
}

/** By how much the ring of face f turns about the axis `sign` n, radians: 2 pi when the axis passes through it, else 0. */
function turnsAbout(mesh: HalfEdges, f: number, { n }: Plane, sign: 1 | -1): number {
  let turn = 0;
  let h = mesh.first[f];
  do {
    turn += turnAbout(n, mesh.at, 3 * mesh.start[h], 3 * endOf(mesh, h));
    h = mesh.next[h];
  } while (h !== mesh.first[f]);
  return sign * turn;
}

function revealPole(state: CutState, plane: Plane, sign: 1 | -1): void {
  if (sign * (sign - plane.h) <= EPSILON) return;
  const f = skinFaceAt(state, plane, sign);
  if (f === NONE) return;
  found.x = sign * plane.n[0];
  found.y = sign * plane.n[1];
  found.z = sign * plane.n[2];
  const v = addFound(state);
  fanFace(state.mesh, f, v);
  enterSide(state, v, distanceOfFound(plane));
}

/** Puts a vertex ON the plane into every edge from INSIDE to OUTSIDE. */
function splitCrossedEdges(state: CutState, plane: Plane): void {
  const { mesh, planes } = state;
  for (const v of state.outside) {
    const first = mesh.out[v];
    let h = first;
    do {
      const across = mesh.next[mesh.twin[h]];
      const end = endOf(mesh, h);
      if (state.side[end] === INSIDE) {
        const inward = mesh.twin[h];
        const s = findCrossing(
          mesh,
          planes,
          state.isRound,
          inward,
          plane,
          state.distance[end],
          state.distance[v],
        );
        const crossing = addFound(state);
        if (!state.isRound) mixNormal(mesh, crossing, end, v, s);
        splitEdge(mesh, h, crossing);
        state.side[crossing] = ON;
      }
      h = across;
    } while (h !== first);
  }
}

function mixNormal(mesh: HalfEdges, v: number, a: number, b: number, s: number): void {
  const { normal } = mesh;
  const x = normal[3 * a] + s * (normal[3 * b] - normal[3 * a]);
  const y = normal[3 * a + 1] + s * (normal[3 * b + 1] - normal[3 * a + 1]);
  const z = normal[3 * a + 2] + s * (normal[3 * b + 2] - normal[3 * a + 2]);
  const l = Math.hypot(x, y, z) || 1;
  setNormal(mesh, v, x / l, y / l, z / l);
}

/** Parts every face that reaches outside. Returns the half-edges, on the removed side, that border what stays. */
function partFaces(state: CutState, plane: Plane): number[] {
  const { mesh } = state;
  const chords: number[] = [];
  const lost: number[] = [];
  for (const v of state.outside) {
    const first = mesh.out[v];
    let h = first;
    do {
      const f = mesh.face[h];
      if (f !== REMOVED) partFace(state, plane, f, chords, lost);
      h = mesh.next[mesh.twin[h]];
    } while (h !== first);
  }
  // faces lost as a whole can border what stays along an edge that lies in the plane
  return chords.concat(lost.filter((h) => mesh.face[mesh.twin[h]] !== REMOVED));
}

/** A run of a face's ring outside the plane, from a vertex ON it to a vertex ON it: its half-edges and the one before. */
interface Run {
  before: number;
  readonly enter: number;
  readonly last: number;
}

/** Cuts what lies outside off face f by chords; a face with nothing inside is lost as a whole. */
function partFace(state: CutState, plane: Plane, f: number, chords: number[], lost: number[]): void {
  const { mesh, side } = state;
  let inside = mesh.first[f];
  do inside = mesh.next[inside];
  while (side[mesh.start[inside]] !== INSIDE && inside !== mesh.first[f]);
  if (side[mesh.start[inside]] !== INSIDE) {
    loseFace(state, f, lost);
    return;
  }
  const runs = outsideRuns(state, inside);
  const kept: number[] = [];
  const isBitten = runs.length > 1 && state.isRound && mesh.plane[f] === SKIN;
  const partners = isBitten ? runsAcross(mesh, plane, runs) : runs;
  const exits = runs.map((run) => mesh.next[run.last]);
  runs.forEach((run, i) => {
    const to = partners[i];
    const chord = addEdge(mesh, mesh.start[to.enter], mesh.start[exits[i]]);
    mesh.next[to.before] = chord;
    mesh.next[chord] = exits[i];
    mesh.next[run.last] = chord + 1;
    mesh.next[chord + 1] = to.enter;
    mesh.face[chord] = REMOVED;
    mesh.face[chord + 1] = REMOVED;
    kept.push(chord);
    chords.push(chord + 1);
    // two runs that meet in one vertex: the second chord follows the first
    if (i + 1 < runs.length && exits[i] === runs[i + 1].enter) runs[i + 1].before = chord;
  });
  nameKept(mesh, f, kept);
}

/** Finds the outside runs of a ring from a half-edge that starts inside, and marks them REMOVED. */
function outsideRuns({ mesh, side }: CutState, kept: number): Run[] {
  const runs: Run[] = [];
  let before = kept;
  do {
    const enter = mesh.next[before];
    if (side[mesh.start[enter]] !== ON || side[endOf(mesh, enter)] !== OUTSIDE) {
      before = enter;
      continue;
    }
    let last = enter;
    mesh.face[last] = REMOVED;
    while (side[endOf(mesh, last)] === OUTSIDE) {
      last = mesh.next[last];
      mesh.face[last] = REMOVED;
    }
    runs.push({ before, enter, last });
    before = last;
  } while (before !== kept);
  return runs;
}

/**
 * The plane's circle can pass through one skin face several times. From where a run ends, the circle goes on, counter-
 * clockwise, through the face to where the next run along it begins: that run is its partner. Where rounding gives two
 * runs one partner, each is its own.
 */
function runsAcross(mesh: HalfEdges, plane: Plane, runs: readonly Run[]): readonly Run[] {
  const touches = runs.some((run, i) => mesh.next[run.last] === runs[(i + 1) % runs.length].enter);
  if (touches) return runs;
  const partners = runs.map((run) => {
    const end = 3 * endOf(mesh, run.last);
    const angleTo = (other: Run): number => angleOnCircle(plane, mesh.at, end, 3 * mesh.start[other.enter]);
    return runs.reduce((best, other) => (angleTo(other) < angleTo(best) ? other : best));
  });
  return new Set(partners).size === runs.length ? partners : runs;
}

/** Names the rings that stay of face f, each holding some of the chords: the first keeps the name f. */
function nameKept(mesh: HalfEdges, f: number, chords: readonly number[]): void {
  let name = f;
  for (const chord of chords) {
    if (mesh.face[chord] !== REMOVED) continue;
    if (name === NONE) name = addFace(mesh, chord, mesh.plane[f]);
    mesh.first[name] = chord;
    for (let h = chord; mesh.face[h] === REMOVED || h !== chord; h = mesh.next[h]) mesh.face[h] = name;
    name = NONE;
  }
}

/** Only an edge that lies in the plane can border what stays: those go to `lost`. */
function loseFace({ mesh, side }: CutState, f: number, lost: number[]): void {
  const first = mesh.first[f];
  let h = first;
  do {
    mesh.face[h] = REMOVED;
    if (side[mesh.start[h]] === ON && side[endOf(mesh, h)] === ON) lost.push(h);
    h = mesh.next[h];
  } while (h !== first);
  mesh.first[f] = NONE;
}

/** Gives the hole that `rim` borders its face in the plane. */
function closeHole(state: CutState, plane: Plane, rim: readonly number[]): void {
  const { mesh } = state;
  // the next rim edge is found by turning about the end vertex through what was removed
  const follow = rim.map((c) => {
    let h = mesh.next[c];
    while (mesh.face[mesh.twin[h]] === REMOVED) h = mesh.next[mesh.twin[h]];
    return h;
  });
  rim.forEach((c, i) => {
    mesh.next[c] = follow[i];
    mesh.out[mesh.start[c]] = c;
  });
  // borders become true arcs first: a hole of two edges can be a whole facet
  if (state.isRound) for (const c of rim) refineBorder(state, plane, c);
  const id = state.planes.length - 1;
  for (const c of rim) {
    if (mesh.face[c] !== REMOVED) continue;
    if (mesh.next[mesh.next[c]] === c) joinTwins(mesh, c);
    else {
      const f = addFace(mesh, c, id);
      for (let h = c; mesh.face[h] === REMOVED; h = mesh.next[h]) mesh.face[h] = f;
    }
  }
}

/** A hole of two edges has no face: the faces on its two sides become neighbours. */
function joinTwins(mesh: HalfEdges, c: number): void {
  const [a, b] = [mesh.twin[c], mesh.twin[mesh.next[c]]];
  mesh.twin[a] = b;
  mesh.twin[b] = a;
  mesh.out[mesh.start[a]] = a;
  mesh.out[mesh.start[b]] = b;
  mesh.face[c] = NONE;
  mesh.face[mesh.next[c]] = NONE;
}

/** Gives a border between the plane's face to be and skin more vertices of the true circle where it turns too far. */
function refineBorder(state: CutState, plane: Plane, c: number): void {
  const { mesh } = state;
  if (mesh.plane[mesh.face[mesh.twin[c]]] !== SKIN) return;
  const from = mesh.start[c];
  const angle = angleOnCircle(plane, mesh.at, 3 * from, 3 * endOf(mesh, c));
  const parts = Math.ceil(angle / BORDER_STEP);
  for (let i = 1, h = c; i < parts; i++) {
    findOnCircle(plane, mesh.at, 3 * from, (angle * i) / parts);
    const v = addFound(state);
    h = splitEdge(mesh, h, v);
    state.side[v] = ON;
  }
}
