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

  const triangles: number[] = [];
  const trianglePlanes: number[] = [];
  const facets: FacetPolygon[] = [];
  // faces stand in the order they were made, so the skin comes first and facets follow by ascending plane
  const bySkin = (wantsSkin: boolean): void => {
    for (let f = 0; f < m.faceCount; f++) {
      if (m.first[f] === NONE || (m.plane[f] === SKIN) !== wantsSkin) continue;
      const ring = ringOf(f);
      if (isFanned(m.plane[f])) fanFromMiddle(positions, ring, count++, triangles);
      else if (ring.length === 3) triangles.push(ring[0], ring[1], ring[2]);
      else if (wantsSkin && isRound) partRoundPolygon(positions, ring, triangles);
      else partConvexPolygon(ring, triangles);
      while (trianglePlanes.length < triangles.length / 3) trianglePlanes.push(m.plane[f]);
      if (!wantsSkin) facets.push({ plane: m.plane[f], ring: Uint32Array.from(ring) });
    }
  };
  bySkin(true);
  bySkin(false);
  return {
    positions: positions.subarray(0, 3 * count),
    skinNormals: skinNormals.subarray(0, 3 * count),
    triangles: Uint32Array.from(triangles),
    trianglePlanes: Int32Array.from(trianglePlanes),
    facets,
    vanished: false,
  };
}

/** Parts a convex ring into a ladder of triangles: better shaped than a fan where the ring is a circle of many vertices. */
function partConvexPolygon(ring: readonly number[], triangles: number[]): void {
  let low = 0;
  let high = ring.length - 1;
  for (let takeLow = true; high - low >= 2; takeLow = !takeLow) {
    if (takeLow) triangles.push(ring[low], ring[low + 1], ring[high]);
    else triangles.push(ring[low], ring[high - 1], ring[high]);
    if (takeLow) low++;
    else high--;
  }
}

/** Parts a convex ring into triangles about a new vertex, the mean of its corners. */
function fanFromMiddle(p: Float64Array, ring: readonly number[], middle: number, triangles: number[]): void {
  ring.forEach((v, i) => {
    for (let k = 0; k < 3; k++) p[3 * middle + k] += p[3 * v + k] / ring.length;
    triangles.push(v, ring[(i + 1) % ring.length], middle);
  });
}

/** Parts a polygon on the unit sphere, which may bulge inwards where it borders facets, by cutting off ears. */
function partRoundPolygon(p: Float64Array, ring: number[], triangles: number[]): void {
  const left = ring.slice();
  const turn = (a: number, b: number, c: number): number =>
    p[3 * a] * (p[3 * b + 1] * p[3 * c + 2] - p[3 * b + 2] * p[3 * c + 1]) +
    p[3 * a + 1] * (p[3 * b + 2] * p[3 * c] - p[3 * b] * p[3 * c + 2]) +
    p[3 * a + 2] * (p[3 * b] * p[3 * c + 1] - p[3 * b + 1] * p[3 * c]);
  while (left.length > 3) {
    const i = bestEar(left, turn);
    const n = left.length;
    triangles.push(left[(i + n - 1) % n], left[i], left[(i + 1) % n]);
    left.splice(i, 1);
  }
  triangles.push(left[0], left[1], left[2]);
}

/** The ear that leaves the roundest triangle; where rounding hides every ear, the corner that turns most. */
function bestEar(ring: readonly number[], turn: (a: number, b: number, c: number) => number): number {
  const n = ring.length;
  let best = 0;
  let bestTurn = Number.NEGATIVE_INFINITY;
  let bestIsEar = false;
  for (let i = 0; i < n; i++) {
    const [a, b, c] = [ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]];
    const size = turn(a, b, c);
    if (bestIsEar && size <= bestTurn) continue;
    // a vertex on the rim of the triangle blocks it too: what is left must not be flat
    const isEar =
      size > 0 &&
      ring.every(
        (q) =>
          q === a ||
          q === b ||
          q === c ||
          turn(a, b, q) < -EPSILON ||
          turn(b, c, q) < -EPSILON ||
          turn(c, a, q) < -EPSILON,
      );
    if ((isEar && !bestIsEar) || (isEar === bestIsEar && size > bestTurn)) {
      best = i;
      bestTurn = size;
      bestIsEar = isEar;
    }
  }
  return best;
}
