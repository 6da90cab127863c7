/**
 * Seeds: tiny bubbles that melting left all through the glass. Space is cut into cubes with one seed each, as for a speckle; those
 * that lie in the body whole are there (one that a facet opens is a pit, which grinding and polishing take). Unit sphere.
 */
import { dot, type Vec3 } from "../geometry/vec.ts";
import { alongCubes, grainCentre } from "../inside/hit-grains.ts";
import type { Piece } from "../plan/document.ts";

export interface Seeds {
  readonly radius: number;
  /** Edge of the cubes. */
  readonly cell: number;
  readonly seed: number;
}

/** So many seeds in the whole ball, on average; none is wider than half a cube, so that they keep apart. */
export function seedsOf({ seeds, diameterMm }: Piece): Seeds | null {
  if (!seeds || seeds.count === 0) return null;
  const cell = Math.cbrt((4 / 3) * (Math.PI / seeds.count));
  return { radius: Math.min(seeds.diameterMm / diameterMm, cell / 4), cell, seed: seeds.seed ?? 1 };
}

export interface SeedHit {
  readonly t: number;
  readonly centre: Vec3;
}

interface Body {
  readonly planes: Float64Array;
  readonly planeCount: number;
}

function liesWhole({ planes, planeCount }: Body, g: Vec3, r: number): boolean {
  if (dot(g, g) > (1 - r) * (1 - r)) return false;
  for (let k = 0; k < 4 * planeCount; k += 4)
    if (planes[k] * g[0] + planes[k + 1] * g[1] + planes[k + 2] * g[2] > planes[k + 3] - r) return false;
  return true;
}

/** The first seed that a ray in the glass comes to within 0 <= t < tMax; one that it leaves or stands in is none. */
export function nextSeed(body: Body, seeds: Seeds, o: Vec3, d: Vec3, tMax: number): SeedHit | null {
  const { radius: r, cell, seed } = seeds;
  return alongCubes(o, d, 0, tMax, cell, (x, y, z) => {
    const g = grainCentre(r, cell, seed, x, y, z);
    const q: Vec3 = [o[0] - g[0], o[1] - g[1], o[2] - g[2]];
    const b = dot(q, d);
    const off = dot(q, q) - b * b;
    if (b >= 0 || off >= r * r) return null;
    const t = -b - Math.sqrt(r * r - off);
    return t >= 0 && t < tMax && liesWhole(body, g, r) ? { t, centre: g } : null;
  });
}
