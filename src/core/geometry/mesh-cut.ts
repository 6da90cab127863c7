/**
 * The mesh of a cut ball, built on the exact solid: the facets' corners are the exact outlines' own, arcs are parted into
 * chords once for facet and skin, facets are convex polygons, and only the skin between them is triangulated.
 * Every loop here runs over what is given, so making a mesh can fail but never hang.
 */
import { BrokenMesh } from "./broken-mesh.ts";
import type { CutMesh, FacetPolygon } from "./mesh.ts";
import { borderOf } from "./mesh-border.ts";
import { spherePoints } from "./mesh-points.ts";
import { skinMesh } from "./mesh-skin.ts";
import { SKIN, type Solid } from "./solid-types.ts";
import type { Vec3 } from "./vec.ts";

/** A convex polygon as triangles by halving it again and again: far fewer slivers than a fan has. */
function halve(ring: readonly number[], first: number, last: number, into: number[]): void {
  if (last - first < 2) return;
  const middle = (first + last) >> 1;
  into.push(ring[first], ring[middle], ring[last]);
  halve(ring, first, middle, into);
  halve(ring, middle, last, into);
}

const NOTHING: CutMesh = {
  positions: new Float64Array(),
  skinNormals: new Float64Array(),
  triangles: new Uint32Array(),
  trianglePlanes: new Int32Array(),
  facets: [],
  vanished: true,
};

/** Places named anew in the order of their first use, so that none stands idle. */
class Corners {
  readonly at: Vec3[] = [];
  readonly names = new Map<Vec3, number>();
  nameOf(place: Vec3): number {
    const old = this.names.get(place);
    if (old !== undefined) return old;
    this.names.set(place, this.at.length);
    return this.at.push(place) - 1;
  }
}

/**
 * @param solid a ball that planes have cut
 * @param segments edges round a great circle of the skin; the mesh stands off the exact solid by the square of 1 / segments
 * @throws BrokenMesh when the skin is too narrow for doubles
 */
export function meshOf(solid: Solid, segments: number): CutMesh {
  if (solid.vanished) return NOTHING;
  const edge = (2 * Math.PI) / segments;
  const border = borderOf(solid, edge);
  const corners = new Corners();
  const triangles: number[] = [];
  const planes: number[] = [];
  const left = solid.facets.filter((facet) => facet.outline.length > 0).map((facet) => facet.plane);
  if (border.chords.length > 0 || left.length === 0) {
    const skin = skinMesh(border, left, spherePoints(segments), edge);
    for (const point of skin.triangles) triangles.push(corners.nameOf(skin.points[point]));
  }
  for (let i = 0; i < triangles.length; i += 3) planes.push(SKIN);
  const facets: FacetPolygon[] = [];
  border.rings.forEach((places, plane) => {
    // two corners are an edge between its neighbours, not a face
    if (places.length < 3) return;
    const ring = places.map((place) => corners.nameOf(border.places[place]));
    halve(ring, 0, ring.length - 1, triangles);
    for (let i = 2; i < ring.length; i++) planes.push(plane);
    facets.push({ plane, ring: Uint32Array.from(ring) });
  });
  if (triangles.length === 0) throw new BrokenMesh("open");
  const positions = Float64Array.from(corners.at.flat());
  return {
    positions,
    skinNormals: outward(positions),
    triangles: Uint32Array.from(triangles),
    trianglePlanes: Int32Array.from(planes),
    facets,
    vanished: false,
  };
}

function outward(positions: Float64Array): Float64Array {
  const normals = positions.slice();
  for (let i = 0; i < normals.length; i += 3) {
    const l = Math.hypot(normals[i], normals[i + 1], normals[i + 2]) || 1;
    for (let k = i; k < i + 3; k++) normals[k] /= l;
  }
  return normals;
}
