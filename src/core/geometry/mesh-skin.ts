/**
 * The skin between given borders as triangles. Points on a sphere are all corners of their convex hull, and the hull is
 * their Delaunay triangulation (Brown 1979, Voronoi diagrams from convex hulls). No point lies in the cap that a facet
 * takes, so neighbours along an arc are always joined: the borders need no forcing, and one triangulation serves every
 * patch, however near circles come, touch or run together. It is made in stereographic projection from one of its own
 * points: that is a point of the skin, so every cap is a disc in the plane, and chords of different discs never cross.
 * What belongs to the skin is then told by going from triangle to triangle without crossing a border, never by lengths.
 */
import Delaunator from "delaunator";
import { BrokenMesh } from "./broken-mesh.ts";
import type { Border } from "./mesh-border.ts";
import { frameOf, type Plane } from "./plane.ts";
import { addScaled, cross, dot, mix, normalize, sub, type Vec3 } from "./vec.ts";

export interface SkinMesh {
  /** The border's places as far as they are on the skin, then points between them. */
  readonly points: readonly Vec3[];
  /** Three points a triangle, counter-clockwise seen from outside. */
  readonly triangles: readonly number[];
}

/** How far from every border a point within the skin stands, in edges: nearer ones would only make slivers. */
const CLEARANCE = 0.4;
/** Halvings tried in the search for a point in skin that is narrower than the edge. */
const HALVINGS = 32;
/** A point nearer to a border than this is not known to be on the skin. */
const LEAST_SLACK = 1e-13;

/** The points of the sphere that stand well within the skin, the one farthest from every border first. */
function pointsWithin(points: Float64Array, planes: readonly Plane[], margin: number): Vec3[] {
  const count = planes.length;
  const [nx, ny, nz] = [0, 1, 2].map((k) => Float64Array.from(planes, ({ n }) => n[k]));
  const most = Float64Array.from(planes, ({ h }) => {
    const reach = Math.acos(Math.max(-1, Math.min(1, h))) + margin;
    return reach < Math.PI ? Math.cos(reach) : -2;
  });
  const within: Vec3[] = [];
  let best = { slack: -1, at: 0 };
  // neighbours in the list are neighbours on the sphere: most often the same plane takes both
  let last = 0;
  for (let p = 0; p < points.length; p += 3) {
    const [x, y, z] = [points[p], points[p + 1], points[p + 2]];
    let slack = Number.POSITIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      const k = (last + i) % count;
      const left = most[k] - (nx[k] * x + ny[k] * y + nz[k] * z);
      if (left < slack) {
        slack = left;
        if (left < 0) {
          last = k;
          break;
        }
      }
    }
    if (slack < 0) continue;
    if (slack > best.slack) best = { slack, at: within.length };
    within.push([x, y, z]);
  }
  if (within.length > 0) [within[0], within[best.at]] = [within[best.at], within[0]];
  return within;
}

/** A point of skin that is too narrow for any of the sphere's: off the middle of a chord, as far from all borders as may be. */
function pointBetween({ places, chords }: Border, planes: readonly Plane[], edge: number): Vec3 {
  let best: { slack: number; at: Vec3 } = { slack: LEAST_SLACK, at: [0, 0, 0] };
  for (const [a, b] of chords) {
    const middle = normalize(mix(places[a], places[b], 0.5));
    // the skin lies on the chord's left
    const aside = normalize(cross(middle, sub(places[b], places[a])));
    for (let k = 0, step = edge; k < HALVINGS; k++, step /= 2) {
      const at = normalize(addScaled(middle, aside, step));
      let slack = Number.POSITIVE_INFINITY;
      for (const { n, h } of planes) slack = Math.min(slack, h - dot(n, at));
      if (slack > best.slack) best = { slack, at };
    }
  }
  if (best.slack === LEAST_SLACK) throw new BrokenMesh("skin");
  return best.at;
}

/** Half-edges of a closed triangulation: three starts a triangle, and for each the one that runs back along it. */
interface Triangulation {
  readonly start: Uint32Array;
  readonly twin: Int32Array;
}

const next = (e: number): number => (e % 3 === 2 ? e - 2 : e + 1);

/** The hull of points on the sphere, wound outwards. The first is the pole: seen from it the others lie in a plane. */
function hullOf(points: readonly Vec3[]): Triangulation {
  const pole = points[0];
  const { across, meridian } = frameOf(pole);
  const flat = new Float64Array(2 * (points.length - 1));
  for (let i = 1; i < points.length; i++) {
    const off = sub(points[i], pole);
    const reach = dot(off, off) / 2;
    flat[2 * i - 2] = dot(off, across) / reach;
    flat[2 * i - 1] = dot(off, meridian) / reach;
  }
  const { triangles, halfedges, hull } = new Delaunator(flat);
  const fan = triangles.length;
  const start = new Uint32Array(fan + 3 * hull.length);
  const twin = new Int32Array(fan + 3 * hull.length).fill(-1);
  // what stands outside the hull in the plane is seen from the pole: a fan about it
  const fanAt = new Map<number, number>();
  for (let e = 0, at = fan; e < fan; e++) {
    start[e] = triangles[e] + 1;
    twin[e] = halfedges[e];
    if (halfedges[e] >= 0) continue;
    const [a, b] = [triangles[e] + 1, triangles[next(e)] + 1];
    if (at + 3 > start.length || fanAt.has(b)) throw new BrokenMesh("skin");
    start.set([b, a, 0], at);
    twin[at] = e;
    twin[e] = at;
    fanAt.set(b, at);
    at += 3;
  }
  for (let at = fan; at < start.length; at += 3) {
    const other = fanAt.get(start[at + 1]);
    if (other === undefined) throw new BrokenMesh("skin");
    twin[at + 1] = other + 2;
    twin[other + 2] = at + 1;
  }
  return { start, twin };
}

/** Goes from each border into the skin on its left; a way that leads across a border means that there is no such border. */
function skinOf(
  { start, twin }: Triangulation,
  borders: ReadonlySet<number>,
  key: (a: number, b: number) => number,
  borderPoints: number,
): Uint8Array {
  const count = start.length / 3;
  const isSkin = new Uint8Array(count);
  const isBorder = new Uint8Array(start.length);
  const queue: number[] = [];
  let seen = 0;
  const take = (triangle: number): void => {
    if (isSkin[triangle]) return;
    isSkin[triangle] = 1;
    queue.push(triangle);
  };
  for (let e = 0; e < start.length; e++) {
    const [a, b] = [start[e], start[next(e)]];
    if (a > borderPoints || b > borderPoints || !borders.has(key(a, b))) continue;
    seen++;
    isBorder[e] = 1;
    take(Math.floor(e / 3));
  }
  if (seen !== borders.size) throw new BrokenMesh("skin");
  if (borders.size === 0) take(0);
  for (let triangle = queue.pop(); triangle !== undefined; triangle = queue.pop())
    for (let e = 3 * triangle; e < 3 * triangle + 3; e++) if (!isBorder[e]) take(Math.floor(twin[e] / 3));
  return isSkin;
}

/**
 * @param border of the piece; one without chords means that the whole sphere is skin
 * @param planes those that have a facet
 * @param sphere points to fill the skin with, three coordinates each
 * @param edge how far these stand apart, radians
 * @throws BrokenMesh when the skin is so narrow that doubles can't tell its sides apart
 */
export function skinMesh(
  border: Border,
  planes: readonly Plane[],
  sphere: Float64Array,
  edge: number,
): SkinMesh {
  const within = pointsWithin(sphere, planes, CLEARANCE * edge);
  if (within.length === 0) within.push(pointBetween(border, planes, edge));
  const { places, onSkin, chords } = border;
  // the pole comes first, so the border's points are 1 .. onSkin.length
  const points = [within[0], ...onSkin.map((place) => places[place]), ...within.slice(1)];
  const index = new Map(onSkin.map((place, i) => [place, i + 1]));
  const key = (a: number, b: number): number => a * points.length + b;
  const borders = new Set(chords.map(([a, b]) => key(index.get(a) as number, index.get(b) as number)));
  const hull = hullOf(points);
  const isSkin = skinOf(hull, borders, key, onSkin.length);
  const triangles: number[] = [];
  isSkin.forEach((is, t) => {
    if (is) triangles.push(hull.start[3 * t], hull.start[3 * t + 1], hull.start[3 * t + 2]);
  });
  return { points, triangles };
}
