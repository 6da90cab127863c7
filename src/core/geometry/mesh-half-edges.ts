/**
 * A closed surface of polygons as half-edges in growing typed arrays. Every edge is two half-edges that name each other
 * as twins, so a surface changed only through these functions stays watertight whatever the coordinates are.
 * Half-edge h runs from `start[h]`, belongs to the face on its left, and is followed by `next[h]` round that face.
 */

export interface HalfEdges {
  vertexCount: number;
  /** Three coordinates a vertex. */
  at: Float64Array;
  /** Three a vertex: outward unit normal of the smooth skin there. */
  normal: Float64Array;
  /** One half-edge that leaves the vertex. */
  out: Int32Array;
  halfEdgeCount: number;
  start: Int32Array;
  next: Int32Array;
  twin: Int32Array;
  face: Int32Array;
  faceCount: number;
  /** One half-edge of the face, or NONE once the face is gone. */
  first: Int32Array;
  /** The plane that made the face, SKIN for the blank's own surface. */
  plane: Int32Array;
}

export const NONE = -1;

/** The same contents with room for `size` numbers; the array itself where it has that. */
function roomier<T extends Float64Array | Int32Array>(array: T, size: number): T {
  if (size <= array.length) return array;
  const larger = new (array.constructor as new (n: number) => T)(size);
  larger.set(array as never);
  return larger;
}

/** Gives the surface room for so many vertices, half-edges and faces; never less than it has. */
function reserve(m: HalfEdges, vertices: number, halfEdges: number, faces: number): void {
  m.at = roomier(m.at, 3 * vertices);
  m.normal = roomier(m.normal, 3 * vertices);
  m.out = roomier(m.out, vertices);
  m.start = roomier(m.start, halfEdges);
  m.next = roomier(m.next, halfEdges);
  m.twin = roomier(m.twin, halfEdges);
  m.face = roomier(m.face, halfEdges);
  m.first = roomier(m.first, faces);
  m.plane = roomier(m.plane, faces);
}

export const endOf = (m: HalfEdges, h: number): number => m.start[m.twin[h]];

/** Adds a vertex without edges; its caller links it. */
export function addVertex(m: HalfEdges, x: number, y: number, z: number): number {
  const v = m.vertexCount++;
  if (v >= m.out.length) reserve(m, 2 * v, 0, 0);
  m.at[3 * v] = x;
  m.at[3 * v + 1] = y;
  m.at[3 * v + 2] = z;
  return v;
}

export function setNormal(m: HalfEdges, v: number, x: number, y: number, z: number): void {
  m.normal[3 * v] = x;
  m.normal[3 * v + 1] = y;
  m.normal[3 * v + 2] = z;
}

/** Adds the two half-edges a to b (returned) and b to a (returned + 1), in no face yet. */
export function addEdge(m: HalfEdges, a: number, b: number): number {
  const h = m.halfEdgeCount;
  m.halfEdgeCount += 2;
  if (m.halfEdgeCount > m.start.length) reserve(m, 0, 2 * m.halfEdgeCount, 0);
  m.start[h] = a;
  m.start[h + 1] = b;
  m.twin[h] = h + 1;
  m.twin[h + 1] = h;
  return h;
}

export function addFace(m: HalfEdges, firstHalfEdge: number, plane: number): number {
  const f = m.faceCount++;
  if (f >= m.first.length) reserve(m, 0, 0, 2 * f);
  m.first[f] = firstHalfEdge;
  m.plane[f] = plane;
  return f;
}

/** Puts vertex v into the edge of h: afterwards h ends at v, and the half-edge returned goes on from v to where h ended. */
export function splitEdge(m: HalfEdges, h: number, v: number): number {
  const t = m.twin[h];
  const onward = addEdge(m, v, m.start[t]);
  const back = onward + 1;
  // `onward` follows h on its left; on the other side t, which still starts at the far end, is cut short by a new twin of h
  m.start[back] = v;
  m.next[onward] = m.next[h];
  m.next[h] = onward;
  m.next[back] = m.next[t];
  m.next[t] = back;
  m.face[onward] = m.face[h];
  m.face[back] = m.face[t];
  m.twin[h] = back;
  m.twin[back] = h;
  m.twin[t] = onward;
  m.twin[onward] = t;
  m.out[v] = onward;
  return onward;
}

/** Puts vertex v inside face f, joined to every corner of it: the face becomes a fan of triangles. */
export function fanFace(m: HalfEdges, f: number, v: number): void {
  const ring: number[] = [];
  let h = m.first[f];
  do {
    ring.push(h);
    h = m.next[h];
  } while (h !== m.first[f]);
  // one spoke from each corner to v, then close each triangle: rim edge, spoke in, spoke out
  const spokes = ring.map((rim) => addEdge(m, m.start[rim], v));
  ring.forEach((rim, i) => {
    const inward = spokes[(i + 1) % ring.length];
    const outward = spokes[i] + 1;
    const own = i === 0 ? f : addFace(m, rim, m.plane[f]);
    m.next[rim] = inward;
    m.next[inward] = outward;
    m.next[outward] = rim;
    m.face[rim] = own;
    m.face[inward] = own;
    m.face[outward] = own;
  });
  m.out[v] = spokes[0] + 1;
}

/**
 * Half-edges of a closed, oriented surface.
 * @param at three coordinates a vertex
 * @param normal three a vertex, outward unit normals
 * @param faces rings of vertex indices, counter-clockwise from outside
 * @throws RangeError when an edge is not shared by exactly two faces that run along it in opposite directions
 */
export function halfEdgesOf(
  at: Float64Array,
  normal: Float64Array,
  faces: readonly (readonly number[])[],
  plane: number,
): HalfEdges {
  const total = faces.reduce((sum, ring) => sum + ring.length, 0);
  const m: HalfEdges = {
    vertexCount: at.length / 3,
    at: at.slice(),
    normal: normal.slice(),
    out: new Int32Array(at.length / 3).fill(NONE),
    halfEdgeCount: total,
    start: new Int32Array(total),
    next: new Int32Array(total),
    twin: new Int32Array(total).fill(NONE),
    face: new Int32Array(total),
    faceCount: faces.length,
    first: new Int32Array(faces.length),
    plane: new Int32Array(faces.length).fill(plane),
  };
  let h = 0;
  faces.forEach((ring, f) => {
    m.first[f] = h;
    ring.forEach((from, i) => {
      m.start[h] = from;
      m.next[h] = i + 1 < ring.length ? h + 1 : m.first[f];
      m.face[h] = f;
      h++;
    });
  });
  pairTwins(m);
  return m;
}

/** Finds each half-edge's twin among those that leave its end, and leaves one half-edge that leaves in `out`. */
function pairTwins(m: HalfEdges): void {
  // half-edges that leave one vertex are chained: out, then nextOut
  const nextOut = new Int32Array(m.halfEdgeCount);
  for (let h = 0; h < m.halfEdgeCount; h++) {
    nextOut[h] = m.out[m.start[h]];
    m.out[m.start[h]] = h;
  }
  const leaving = (to: number, after: number): number => {
    let h = after;
    while (h !== NONE && m.start[m.next[h]] !== to) h = nextOut[h];
    return h;
  };
  for (let h = 0; h < m.halfEdgeCount; h++) {
    const [from, to] = [m.start[h], m.start[m.next[h]]];
    if (leaving(to, nextOut[h]) !== NONE)
      throw new RangeError(`edge ${from}-${to} is used twice in the same direction`);
    m.twin[h] = leaving(from, m.out[to]);
    if (m.twin[h] === NONE) throw new RangeError(`the surface is open at vertex ${from}`);
  }
}

/** An independent copy with room to grow; costs a few block copies. */
export function copyHalfEdges(m: HalfEdges): HalfEdges {
  const copy = { ...m };
  // more room than any of the arrays has, so that each is made anew
  const room = (count: number): number => 2 * count;
  reserve(copy, room(m.vertexCount), room(m.halfEdgeCount), room(m.faceCount));
  return copy;
}

/** Makes `copy`, an earlier copy of `m` that has since been changed, equal to it again, in the room it has. */
export function restoreHalfEdges(copy: HalfEdges, m: HalfEdges): void {
  copy.vertexCount = m.vertexCount;
  copy.halfEdgeCount = m.halfEdgeCount;
  copy.faceCount = m.faceCount;
  copy.at.set(m.at.subarray(0, 3 * m.vertexCount));
  copy.normal.set(m.normal.subarray(0, 3 * m.vertexCount));
  copy.out.set(m.out.subarray(0, m.vertexCount));
  copy.start.set(m.start.subarray(0, m.halfEdgeCount));
  copy.next.set(m.next.subarray(0, m.halfEdgeCount));
  copy.twin.set(m.twin.subarray(0, m.halfEdgeCount));
  copy.face.set(m.face.subarray(0, m.halfEdgeCount));
  copy.first.set(m.first.subarray(0, m.faceCount));
  copy.plane.set(m.plane.subarray(0, m.faceCount));
}
