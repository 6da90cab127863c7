/** How light meets the grains of a speckle. */
import { dot, normalize, type Vec3 } from "../geometry/vec.ts";
import { hash, unitOf } from "../optics/hash.ts";
import { crossEllipsoid } from "./hit-ellipsoid.ts";
import {
  type DesignHit,
  type Hit,
  type SceneDesign,
  toLocal,
  turnToLocal,
  turnToWorld,
} from "./scene-design.ts";

/** Number of the cube with whole coordinates x, y, z: the name of its grain. Cubes lie within -512 .. 511 of the centre. */
const cubeNumber = (x: number, y: number, z: number): number =>
  (((x & 1023) << 20) | ((y & 1023) << 10) | (z & 1023)) >>> 0;

/** Centre of a cube's grain of radius r, wholly within its cube. */
export function grainCentre(r: number, cell: number, seed: number, x: number, y: number, z: number): Vec3 {
  const h0 = hash((cubeNumber(x, y, z) + hash(seed)) >>> 0);
  const h1 = hash(h0);
  const h2 = hash(h1);
  const room = cell - 2 * r;
  return [
    x * cell + r + room * unitOf(h0),
    y * cell + r + room * unitOf(h1),
    z * cell + r + room * unitOf(h2),
  ];
}

/** Cubes a ray may cross before it counts as having missed; more than a ball of 5000 grains ever needs. */
const MOST_CUBES = 64;

/**
 * Space is cut into cubes: what is found in the first of those along a ray, from `start` to `end`, that holds something.
 * Walks from cube to cube (J. Amanatides and A. Woo, A Fast Voxel Traversal Algorithm, Eurographics 1987).
 * @param look what a cube with these whole coordinates holds for the ray; null for nothing
 */
export function alongCubes<T>(
  p: Vec3,
  v: Vec3,
  start: number,
  end: number,
  cell: number,
  look: (x: number, y: number, z: number) => T | null,
): T | null {
  const cube = [0, 1, 2].map((k) => Math.floor((p[k] + start * v[k]) / cell));
  // Distance along the ray at which it next leaves its cube along each axis, and between such walls.
  const wall = [0, 1, 2].map((k) =>
    v[k] === 0 ? Number.POSITIVE_INFINITY : ((cube[k] + (v[k] > 0 ? 1 : 0)) * cell - p[k]) / v[k],
  );
  for (let step = 0; step < MOST_CUBES; step++) {
    const found = look(cube[0], cube[1], cube[2]);
    if (found) return found;
    const k = wall[0] < wall[1] ? (wall[0] < wall[2] ? 0 : 2) : wall[1] < wall[2] ? 1 : 2;
    if (wall[k] >= end) return null;
    cube[k] += v[k] > 0 ? 1 : -1;
    wall[k] += cell / Math.abs(v[k]);
  }
  return null;
}

/** Meets the grains of a speckle: one in each cube, somewhere in it; those with their centre in the ball are there. */
export const hitGrains: Hit = (s, o, d, tMax, skip) => {
  const [r, ball, cell] = s.size;
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const around = crossEllipsoid([ball + r, ball + r, ball + r], p, v);
  if (!around || around[1] <= 0) return null;
  const end = Math.min(tMax, around[1]);
  return alongCubes(p, v, Math.max(0, around[0]), end, cell, (x, y, z) => {
    const grain = cubeNumber(x, y, z);
    const g = grainCentre(r, cell, s.extra, x, y, z);
    const hit = grain !== skip && dot(g, g) < ball * ball ? hitGrain(s, g, p, v, end) : null;
    return hit && { ...hit, grain };
  });
};

/** One grain (local centre g) against a local ray. */
function hitGrain(s: SceneDesign, g: Vec3, p: Vec3, v: Vec3, end: number): DesignHit | null {
  const r = s.size[0];
  const q: Vec3 = [p[0] - g[0], p[1] - g[1], p[2] - g[2]];
  const b = dot(q, v);
  const disc = b * b - (dot(q, q) - r * r);
  if (disc <= 0) return null;
  const root = Math.sqrt(disc);
  const t = Math.max(0, -b - root);
  if (-b + root <= 0 || t >= end) return null;
  const n = turnToWorld(s, normalize([q[0] + t * v[0], q[1] + t * v[1], q[2] + t * v[2]]));
  return { t, n, rgb: s.rgb, grain: 0 };
}
