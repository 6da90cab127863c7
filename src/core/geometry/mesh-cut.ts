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
import { angleOnCircle, findCrossing, findExtreme, findOnCircle, found } from "./mesh-curves.ts";
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
/** How far an arc of BORDER_STEP, the longest a mesh of 24 segments or more has, can stand off its chord's ends. */
const ARC_REACH = 1 - Math.cos(BORDER_STEP / 2);

/** A piece being cut. Only the functions of this file change it. */
export interface CutState {
  readonly isRound: boolean;
  readonly mesh: HalfEdges;
  /** Planes cut so far; a plane's position is the id of the faces it made. */
  readonly planes: Plane[];
  /** Vertices still on the piece. */
  live: number[];
  /** Scratch, by vertex: signed distance from the current plane, and INSIDE, ON or OUTSIDE. */
  distance: Float64Array;
  side: Int8Array;
}

/** A piece with nothing cut yet. The blank itself is never changed. */
export function beginCut(blank: Blank): CutState {
  const mesh = copyHalfEdges(blank.surface);
  const live: number[] = [];
  for (let v = 0; v < mesh.vertexCount; v++) if (mesh.out[v] !== NONE) live.push(v);
  const room = 2 * mesh.vertexCount;
  return {
    isRound: blank.isRound,
    mesh,
    planes: [],
    live,
    distance: new Float64Array(room),
    side: new Int8Array(room),
  };
}

/** An independent copy, to return to this stage of the work later. */
export const copyCut = (state: CutState): CutState => ({
  ...state,
  mesh: copyHalfEdges(state.mesh),
  planes: [...state.planes],
  live: [...state.live],
  distance: state.distance.slice(),
  side: state.side.slice(),
});

/** The piece as it stands, as a mesh of its own. */
export const meshOfCut = (state: CutState): CutMesh =>
  extractMesh(state.mesh, state.live.length, state.isRound);

/**
 * Cuts a blank by planes, in order; face ids are positions in `planes`.
 * A plane that misses, touches, or coincides with an earlier one cuts nothing; when nothing is left the mesh is empty.
 */
export function cutMesh(blank: Blank, planes: readonly Plane[]): CutMesh {
  const state = beginCut(blank);
  for (const plane of planes) cutNext(state, plane);
  return meshOfCut(state);
}

/** Cuts by one more plane; its id is the number of planes before it. Changes `state`. */
export function cutNext(state: CutState, plane: Plane): void {
  const isRepeated = state.planes.some((earlier) => coincide(earlier, plane));
  state.planes.push(plane);
  if (isRepeated || state.live.length === 0) return;
  classify(state, plane);
  if (state.isRound) revealArcs(state, plane);
  const outside = state.live.filter((v) => state.side[v] === OUTSIDE);
  if (outside.length === 0) return;
  if (!state.live.some((v) => state.side[v] === INSIDE)) {
    state.live = [];
    return;
  }
  splitCrossedEdges(state, plane, outside);
  const rim = partFaces(state, outside);
  closeHole(state, plane, rim);
  state.live = state.live.filter((v) => state.side[v] !== OUTSIDE);
}

const coincide = (p: Plane, q: Plane): boolean =>
  Math.abs(p.h - q.h) < COINCIDENT &&
  Math.hypot(p.n[0] - q.n[0], p.n[1] - q.n[1], p.n[2] - q.n[2]) < COINCIDENT;

function classifyOne(state: CutState, { n, h }: Plane, v: number): void {
  const { at } = state.mesh;
  const d = n[0] * at[3 * v] + n[1] * at[3 * v + 1] + n[2] * at[3 * v + 2] - h;
  state.distance[v] = d;
  state.side[v] = d > EPSILON ? OUTSIDE : d < -EPSILON ? INSIDE : ON;
}

function classify(state: CutState, plane: Plane): void {
  for (const v of state.live) classifyOne(state, plane, v);
}

/** Makes a vertex at `found`; its skin normal is the radius on a ball. */
function addFound(state: CutState): number {
  const { mesh } = state;
  const v = addVertex(mesh, found.x, found.y, found.z);
  if (state.isRound) setNormal(mesh, v, found.x, found.y, found.z);
  if (v >= state.side.length) {
    const distance = new Float64Array(2 * v);
    distance.set(state.distance);
    state.distance = distance;
    const side = new Int8Array(2 * v);
    side.set(state.side);
    state.side = side;
  }
  state.live.push(v);
  return v;
}

/** Gives vertices to what the plane does to the true arcs and the true cap between the mesh's own vertices. */
function revealArcs(state: CutState, plane: Plane): void {
  const { mesh, side, distance } = state;
  // an arc that crosses between two vertices of one side comes near the plane at one of them
  const near = state.live.filter((v) => Math.abs(distance[v]) < ARC_REACH);
  for (const v of near) {
    const first = mesh.out[v];
    let h = first;
    do {
      const across = mesh.next[mesh.twin[h]];
      revealExtreme(state, plane, h);
      h = across;
    } while (h !== first);
  }
  if (!state.live.some((v) => side[v] === OUTSIDE)) revealPole(state, plane, 1);
  else if (!state.live.some((v) => side[v] === INSIDE)) revealPole(state, plane, -1);
}

function revealExtreme(state: CutState, plane: Plane, h: number): void {
  const { mesh, side, planes } = state;
  const [a, b] = [side[mesh.start[h]], side[endOf(mesh, h)]];
  if (a * b < 0 || (a === ON && b === ON)) return;
  const sign = a + b < 0 ? 1 : -1;
  if (findExtreme(mesh, planes, h, plane, sign) <= EPSILON) return;
  const v = addFound(state);
  splitEdge(mesh, h, v);
  classifyOne(state, plane, v);
}

/** The skin face that holds direction `sign` n, found by walking towards it from the live vertex nearest to it; or NONE. */
function skinFaceAt(state: CutState, { n }: Plane, sign: 1 | -1): number {
  const { mesh, distance, live } = state;
  const nearest = live.reduce((best, v) => (sign * distance[v] > sign * distance[best] ? v : best), live[0]);
  let f = mesh.face[mesh.out[nearest]];
  for (let steps = 0; steps < mesh.faceCount; steps++) {
    if (mesh.plane[f] !== SKIN) return NONE;
    // leave through an edge whose great circle has the direction on its other side
    let h = mesh.first[f];
    let leave = NONE;
    do {
      const a = 3 * mesh.start[h];
      const b = 3 * endOf(mesh, h);
      const { at } = mesh;
      const det =
        n[0] * (at[a + 1] * at[b + 2] - at[a + 2] * at[b + 1]) +
        n[1] * (at[a + 2] * at[b] - at[a] * at[b + 2]) +
        n[2] * (at[a] * at[b + 1] - at[a + 1] * at[b]);
      if (sign * det < 0) leave = h;
      h = mesh.next[h];
    } while (h !== mesh.first[f] && leave === NONE);
    if (leave === NONE) return f;
    f = mesh.face[mesh.twin[leave]];
  }
  return NONE;
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
  classifyOne(state, plane, v);
}

/** Puts a vertex ON the plane into every edge from INSIDE to OUTSIDE. */
function splitCrossedEdges(state: CutState, plane: Plane, outside: readonly number[]): void {
  const { mesh, planes } = state;
  for (const v of outside) {
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
function partFaces(state: CutState, outside: readonly number[]): number[] {
  const { mesh } = state;
  const chords: number[] = [];
  const lost: number[] = [];
  for (const v of outside) {
    const first = mesh.out[v];
    let h = first;
    do {
      const f = mesh.face[h];
      if (f !== REMOVED) partFace(state, f, chords, lost);
      h = mesh.next[mesh.twin[h]];
    } while (h !== first);
  }
  // faces lost as a whole can border what stays along an edge that lies in the plane
  return chords.concat(lost.filter((h) => mesh.face[mesh.twin[h]] !== REMOVED));
}

/** Cuts each outside run of the face's ring off by a chord; a face with nothing inside is lost as a whole. */
function partFace(state: CutState, f: number, chords: number[], lost: number[]): void {
  const { mesh, side } = state;
  const { start, next, face } = mesh;
  let kept = mesh.first[f];
  do kept = next[kept];
  while (side[start[kept]] !== INSIDE && kept !== mesh.first[f]);
  if (side[start[kept]] !== INSIDE) {
    loseFace(mesh, f, lost);
    return;
  }
  mesh.first[f] = kept;
  let h = kept;
  do {
    const enter = mesh.next[h];
    if (side[mesh.start[enter]] !== ON || side[endOf(mesh, enter)] !== OUTSIDE) {
      h = enter;
      continue;
    }
    let last = enter;
    while (side[mesh.start[mesh.next[last]]] === OUTSIDE) {
      face[last] = REMOVED;
      last = mesh.next[last];
    }
    mesh.face[last] = REMOVED;
    h = addChord(mesh, f, h, enter, last);
    chords.push(h + 1);
  } while (h !== kept);
}

/** Joins the run enter .. last of face f's ring, which follows `before`, by a chord; its half-edge in f is returned. */
function addChord(mesh: HalfEdges, f: number, before: number, enter: number, last: number): number {
  const exit = mesh.next[last];
  const chord = addEdge(mesh, mesh.start[enter], mesh.start[exit]);
  mesh.next[before] = chord;
  mesh.next[chord] = exit;
  mesh.face[chord] = f;
  mesh.next[last] = chord + 1;
  mesh.next[chord + 1] = enter;
  mesh.face[chord + 1] = REMOVED;
  return chord;
}

function loseFace(mesh: HalfEdges, f: number, lost: number[]): void {
  const first = mesh.first[f];
  let h = first;
  do {
    mesh.face[h] = REMOVED;
    lost.push(h);
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
  const id = state.planes.length - 1;
  for (const c of rim) {
    if (mesh.face[c] !== REMOVED) continue;
    if (mesh.next[mesh.next[c]] === c) joinTwins(mesh, c);
    else {
      const f = addFace(mesh, c, id);
      for (let h = c; mesh.face[h] === REMOVED; h = mesh.next[h]) mesh.face[h] = f;
    }
  }
  if (state.isRound) for (const c of rim) refineBorder(state, plane, c);
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

/** Gives a border between the plane's face and skin more vertices of the true circle where it turns too far. */
function refineBorder(state: CutState, plane: Plane, c: number): void {
  const { mesh } = state;
  if (mesh.face[c] === NONE || mesh.plane[mesh.face[mesh.twin[c]]] !== SKIN) return;
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
