/** Bodies, rays and chance for tests of the optics. */
import { facetFrame, type Plane } from "../../../src/core/geometry/plane.ts";
import { dot, normalize, scale, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { bodyNormal, enterBody, nextOnBody, pointOnBody } from "../../../src/core/optics/body.ts";
import { fresnel, reflectRay, refractRay } from "../../../src/core/optics/fresnel.ts";
import type { OpticalGlass } from "../../../src/core/optics/glasses.ts";
import { nextRandom, type Random, streamOf } from "../../../src/core/optics/random.ts";
import { makeScene, type Scene } from "../../../src/core/optics/scene.ts";
import type { Piece } from "../../../src/core/plan/document.ts";

export const chance = (seed: number): Random => streamOf(0, 0, seed, seed);

export function randomDirection(random: Random): Vec3 {
  const z = 2 * nextRandom(random) - 1;
  const phi = 2 * Math.PI * nextRandom(random);
  const level = Math.sqrt(1 - z * z);
  return [level * Math.cos(phi), level * Math.sin(phi), z];
}

/** A ball of 30 mm in a clear glass of index n_d. */
export const clearPiece = (nd = 1.5, vd = 60): Piece => ({
  diameterMm: 30,
  glass: { name: "clear", nd, vd, densityGcm3: 2.5 },
});

/** `count` planes in random directions, distances between `least` and 1. */
export function randomPlanes(count: number, seed: number, least = 0.55): Plane[] {
  const random = chance(seed);
  return Array.from({ length: count }, () => ({
    n: randomDirection(random),
    h: least + (1 - least) * nextRandom(random),
  }));
}

/** Two tiers in front, one behind, a table: the kind of cut that people make. */
export function tieredPlanes(perTier: number): Plane[] {
  const tier = (deg: number, h: number, side: "front" | "back", turn: number): Plane[] =>
    Array.from({ length: perTier }, (_, i) => ({
      n: facetFrame(deg, (360 * (i + turn)) / perTier, side).n,
      h,
    }));
  return [
    ...tier(38, 0.87, "front", 0),
    ...tier(8, 0.93, "front", 0.5),
    ...tier(42, 0.85, "back", 0),
    { n: [0, 0, 1], h: 0.83 },
  ];
}

export const smoothScene = (planes: readonly Plane[], nd = 1.5, glass?: OpticalGlass): Scene =>
  makeScene({ piece: clearPiece(nd), planes, light: { kind: "uniform" }, ...(glass ? { glass } : {}) });

export interface Ray {
  readonly p: Vec3;
  readonly d: Vec3;
}

/**
 * Follows the strongest way through a smooth piece: in, total reflections as they come, out at the first surface that lets
 * light through. Null when the ray misses or is caught.
 */
export function passThrough(scene: Scene, o: Vec3, d: Vec3, index: number): Ray | null {
  const entry = enterBody(scene, o, d);
  if (!entry) return null;
  let p = pointOnBody(scene, o, d, entry.t, entry.surface);
  const first = bodyNormal(scene, entry.surface, p);
  let w = refractRay(d, first, -dot(d, first), 1 / index);
  let surface = entry.surface;
  for (let i = 0; i < 1000; i++) {
    const hit = nextOnBody(scene, p, w, surface);
    p = pointOnBody(scene, p, w, hit.t, hit.surface);
    surface = hit.surface;
    const n = scale(bodyNormal(scene, surface, p), -1);
    const cosI = -dot(w, n);
    if (fresnel(cosI, index) < 1) return { p, d: refractRay(w, n, cosI, index) };
    w = normalize(reflectRay(w, n, cosI));
  }
  return null;
}

export function passThroughBall(o: Vec3, d: Vec3, index: number): Ray {
  const through = passThrough(smoothScene([], index), o, d, index);
  if (!through) throw new Error("the ray misses the ball");
  return through;
}
