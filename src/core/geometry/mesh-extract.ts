/** Turns the half-edges of a cut piece into a compact mesh: vertices numbered anew, polygons parted into triangles. */
import type { CutMesh, FacetPolygon } from "./mesh.ts";
import { type HalfEdges, NONE } from "./mesh-half-edges.ts";
import type { Plane } from "./plane.ts";
import { SKIN } from "./solid-types.ts";
import { EPSILON } from "./tolerance.ts";

const EMPTY: CutMesh = {
  positions: new Float64Array(),
  skinNormals: new Float64Array(),
  triangles: new Uint32Array(),
  trianglePlanes: new Int32Array(),
  facets: [],
  vanished: true,
};

/** Triangles in one array with room for all of them: growing a list of so many costs more than finding them. */
interface Triangles {
  readonly corners: Uint32Array;
  count: number;
}

/** Room for every triangle: no polygon is parted into more than it has edges. */
function roomForTriangles(m: HalfEdges): Triangles {
  let most = 0;
  for (let h = 0; h < m.halfEdgeCount; h++) if (m.face[h] >= 0) most++;
  return { corners: new Uint32Array(3 * most), count: 0 };
}

function addTriangle(into: Triangles, a: number, b: number, c: number): void {
  const i = 3 * into.count++;
  into.corners[i] = a;
  into.corners[i + 1] = b;
  into.corners[i + 2] = c;
}

/**
 * @param liveVertices how many vertices are left, 0 when the piece has vanished
 * @param isRound skin polygons of a ball are parted in the central projection, where their great-circle edges are straight
 * @param planes that cut, by the ids of their faces
 */
export function extractMesh(
  m: HalfEdges,
  liveVertices: number,
  isRound: boolean,
  planes: readonly Plane[],
): CutMesh {
  if (liveVertices === 0) return EMPTY;
  // beyond the centre, skin within the circle is parted by chords of it too: such a facet is parted from its middle
  const isFanned = (plane: number): boolean => isRound && plane !== SKIN && planes[plane].h < EPSILON;
  const most = 3 * (liveVertices + planes.length);
  const positions = new Float64Array(most);
  const skinNormals = new Float64Array(most);
  const number = new Int32Array(m.vertexCount).fill(NONE);
  let count = 0;
  const numberOf = (v: number): number => {
    if (number[v] === NONE) {
      number[v] = count++;
      for (let k = 0; k < 3; k++) {
        positions[3 * number[v] + k] = m.at[3 * v + k];
        skinNormals[3 * number[v] + k] = m.normal[3 * v + k];
      }
    }
    return number[v];
  };
  const ringOf = (f: number): number[] => {
    const ring: number[] = [];
    let h = m.first[f];
    do {
      ring.push(numberOf(m.start[h]));
      h = m.next[h];
    } while (h !== m.first[f]);
    return ring;
  };

  const triangles = roomForTriangles(m);
  const trianglePlanes = new Int32Array(triangles.corners.length / 3);
  const facets: FacetPolygon[] = [];
  // faces stand in the order they were made, so the skin comes first and facets follow by ascending plane
  const bySkin = (wantsSkin: boolean): void => {
    for (let f = 0; f < m.faceCount; f++) {
      if (m.first[f] === NONE || (m.plane[f] === SKIN) !== wantsSkin) continue;
      const ring = ringOf(f);
      const made = triangles.count;
      if (isFanned(m.plane[f])) fanFromMiddle(positions, ring, count++, triangles);
      else if (ring.length === 3) addTriangle(triangles, ring[0], ring[1], ring[2]);
      else if (wantsSkin && isRound) partRoundPolygon(positions, ring, triangles);
      else partConvexPolygon(ring, triangles);
      trianglePlanes.fill(m.plane[f], made, triangles.count);
      if (!wantsSkin) facets.push({ plane: m.plane[f], ring: Uint32Array.from(ring) });
    }
  };
  bySkin(true);
  bySkin(false);
  return {
    positions: positions.subarray(0, 3 * count),
    skinNormals: skinNormals.subarray(0, 3 * count),
    triangles: triangles.corners.slice(0, 3 * triangles.count),
    trianglePlanes: trianglePlanes.slice(0, triangles.count),
    facets,
    vanished: false,
  };
}

/** Parts a convex ring into a ladder of triangles: better shaped than a fan where the ring is a circle of many vertices. */
function partConvexPolygon(ring: readonly number[], triangles: Triangles): void {
  let low = 0;
  let high = ring.length - 1;
  for (let takeLow = true; high - low >= 2; takeLow = !takeLow) {
    if (takeLow) addTriangle(triangles, ring[low], ring[low + 1], ring[high]);
    else addTriangle(triangles, ring[low], ring[high - 1], ring[high]);
    if (takeLow) low++;
    else high--;
  }
}

/** Parts a convex ring into triangles about a new vertex, the mean of its corners. */
function fanFromMiddle(p: Float64Array, ring: readonly number[], middle: number, triangles: Triangles): void {
  ring.forEach((v, i) => {
    for (let k = 0; k < 3; k++) p[3 * middle + k] += p[3 * v + k] / ring.length;
    addTriangle(triangles, v, ring[(i + 1) % ring.length], middle);
  });
}

/** Parts a polygon on the unit sphere, which may bulge inwards where it borders facets, by cutting off ears. */
function partRoundPolygon(p: Float64Array, ring: number[], triangles: Triangles): void {
  const left = ring.slice();
  const turn = (a: number, b: number, c: number): number =>
    p[3 * a] * (p[3 * b + 1] * p[3 * c + 2] - p[3 * b + 2] * p[3 * c + 1]) +
    p[3 * a + 1] * (p[3 * b + 2] * p[3 * c] - p[3 * b] * p[3 * c + 2]) +
    p[3 * a + 2] * (p[3 * b] * p[3 * c + 1] - p[3 * b + 1] * p[3 * c]);
  // every corner of a convex polygon is an ear, and stays one
  const isConvex = left.every(
    (b, i) => turn(left.at(i - 1) as number, b, left[(i + 1) % left.length]) > EPSILON,
  );
  while (left.length > 3) {
    const i = bestEar(left, turn, isConvex);
    const n = left.length;
    addTriangle(triangles, left[(i + n - 1) % n], left[i], left[(i + 1) % n]);
    left.splice(i, 1);
  }
  addTriangle(triangles, left[0], left[1], left[2]);
}

/** The ear that leaves the roundest triangle; where rounding hides every ear, the corner that turns most. */
function bestEar(
  ring: readonly number[],
  turn: (a: number, b: number, c: number) => number,
  isConvex: boolean,
): number {
  const n = ring.length;
  let best = 0;
  let bestTurn = Number.NEGATIVE_INFINITY;
  let bestIsEar = false;
  for (let i = 0; i < n; i++) {
    const a = ring[(i + n - 1) % n];
    const b = ring[i];
    const c = ring[(i + 1) % n];
    const size = turn(a, b, c);
    if (bestIsEar && size <= bestTurn) continue;
    // a vertex on the rim of the triangle blocks it too: what is left must not be flat
    const isEar =
      isConvex ||
      (size > 0 &&
        ring.every(
          (q) =>
            q === a ||
            q === b ||
            q === c ||
            turn(a, b, q) < -EPSILON ||
            turn(b, c, q) < -EPSILON ||
            turn(c, a, q) < -EPSILON,
        ));
    if ((isEar && !bestIsEar) || (isEar === bestIsEar && size > bestTurn)) {
      best = i;
      bestTurn = size;
      bestIsEar = isEar;
    }
  }
  return best;
}
