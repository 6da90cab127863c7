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

/** Centre of a cube's grain, wholly within its cube, in the design's frame. */
function grainCentre(s: SceneDesign, x: number, y: number, z: number): Vec3 {
  const [r, , cell] = s.size;
  const h0 = hash((cubeNumber(x, y, z) + hash(s.extra)) >>> 0);
  const h1 = hash(h0);
  const h2 = hash(h1);
  const room = cell - 2 * r;
  return [
    x * cell + r + room * unitOf(h0),
    y * cell + r + room * unitOf(h1),
    z * cell + r + room * unitOf(h2),
  ];
}

/** Cubes a ray may cross before a speckle counts as missed; more than a ball of 5000 grains ever needs. */
const MOST_CUBES = 64;

/**
 * Meets the grains of a speckle: space is cut into cubes with one grain each, somewhere in its cube; those with their centre in
 * the ball are there. Walks from cube to cube (J. Amanatides and A. Woo, A Fast Voxel Traversal Algorithm, Eurographics 1987).
 */
export const hitGrains: Hit = (s, o, d, tMax, skip) => {
  const [r, ball, cell] = s.size;
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const around = crossEllipsoid([ball + r, ball + r, ball + r], p, v);
  if (!around || around[1] <= 0) return null;
  const start = Math.max(0, around[0]);
  const end = Math.min(tMax, around[1]);
  const cube = [0, 1, 2].map((k) => Math.floor((p[k] + start * v[k]) / cell));
  // Distance along the ray at which it next leaves its cube along each axis, and between such walls.
  const wall = [0, 1, 2].map((k) =>
    v[k] === 0 ? Number.POSITIVE_INFINITY : ((cube[k] + (v[k] > 0 ? 1 : 0)) * cell - p[k]) / v[k],
  );
  for (let step = 0; step < MOST_CUBES; step++) {
    const grain = cubeNumber(cube[0], cube[1], cube[2]);
    const g = grainCentre(s, cube[0], cube[1], cube[2]);
    if (grain !== skip && dot(g, g) < ball * ball) {
      const hit = hitGrain(s, g, p, v, end);
      if (hit) return { ...hit, grain };
    }
    const k = wall[0] < wall[1] ? (wall[0] < wall[2] ? 0 : 2) : wall[1] < wall[2] ? 1 : 2;
    if (wall[k] >= end) return null;
    cube[k] += v[k] > 0 ? 1 : -1;
    wall[k] += cell / Math.abs(v[k]);
  }
  return null;
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
