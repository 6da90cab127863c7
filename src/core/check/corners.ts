/** Corners a person sees: true vertices of the solid, those within tolerance of each other taken as one. Unit sphere. */
import type { Plane } from "../geometry/plane.ts";
import type { SolidVertex } from "../geometry/solid-types.ts";
import { add, distance, dot, scale, type Vec3 } from "../geometry/vec.ts";

export interface MeetCorner {
  readonly at: Vec3;
  readonly facets: readonly number[];
  /** Greatest distance of the corner's planes from `at`. */
  readonly miss: number;
}

/** Vertices taken as one, at the middle of them. */
interface MeetingPoint {
  readonly at: Vec3;
  readonly members: readonly SolidVertex[];
}

function placeOf(members: readonly SolidVertex[]): MeetingPoint {
  const sum = members.reduce<Vec3>((s, v) => add(s, v.at), [0, 0, 0]);
  return { at: scale(sum, 1 / members.length), members };
}

/** Takes places joined by steps no longer than the tolerance as one. */
function joinNear(places: readonly MeetingPoint[], tolerance: number): MeetingPoint[] {
  const order = [...places].sort((u, v) => u.at[0] - v.at[0]);
  const group = order.map((_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i]));
  order.forEach((v, i) => {
    for (let j = i - 1; j >= 0 && v.at[0] - order[j].at[0] <= tolerance; j--)
      if (distance(v.at, order[j].at) <= tolerance) group[root(i)] = root(j);
  });
  const byRoot = new Map<number, SolidVertex[]>();
  for (const [i, { members }] of order.entries()) {
    const own = byRoot.get(root(i));
    if (own) own.push(...members);
    else byRoot.set(root(i), [...members]);
  }
  return [...byRoot.values()].map(placeOf);
}

/** Joins until no two places lie within the tolerance: the middle of many can come near another. */
function placesOf(vertices: readonly SolidVertex[], tolerance: number): MeetingPoint[] {
  let places = vertices.map((v) => placeOf([v]));
  for (let before = -1; before !== places.length; ) {
    before = places.length;
    places = joinNear(places, tolerance);
  }
  return places;
}

/** @param tolerance as a fraction of the radius; corners come in the order of their facets */
export function meetCorners(
  vertices: readonly SolidVertex[],
  planes: readonly Plane[],
  tolerance: number,
): MeetCorner[] {
  const corners = placesOf(vertices, tolerance).map(({ at, members }): MeetCorner => {
    const facets = [...new Set(members.flatMap((v) => v.facets))].sort((a, b) => a - b);
    const miss = Math.max(...facets.map((i) => Math.abs(dot(planes[i].n, at) - planes[i].h)));
    return { at, facets, miss };
  });
  const compare = (u: MeetCorner, v: MeetCorner) => {
    for (let i = 0; i < Math.min(u.facets.length, v.facets.length); i++)
      if (u.facets[i] !== v.facets[i]) return u.facets[i] - v.facets[i];
    return u.facets.length - v.facets.length || u.at[2] - v.at[2];
  };
  return corners.sort(compare);
}
