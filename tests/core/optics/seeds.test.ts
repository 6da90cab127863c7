import { describe, expect, it } from "vitest";
import { dot, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { alongCubes, grainCentre } from "../../../src/core/inside/hit-grains.ts";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { makeScene, type Scene } from "../../../src/core/optics/scene.ts";
import { nextSeed, type Seeds } from "../../../src/core/optics/seeds.ts";
import type { Piece } from "../../../src/core/plan/document.ts";
import { chance, clearPiece, randomDirection, tieredPlanes } from "./helpers.ts";

const seedy = (count: number, diameterMm: number): Piece => ({
  ...clearPiece(),
  seeds: { count, diameterMm, seed: 5 },
});
const sceneOf = (piece: Piece, planes = tieredPlanes(8)): Scene & { readonly seeds: Seeds } => {
  const scene = makeScene({ piece, planes, light: { kind: "uniform" } });
  if (!scene.seeds) throw new Error("no seeds");
  return { ...scene, seeds: scene.seeds };
};

/** Every seed that lies in the body whole, by asking every cube. */
function allSeeds({ seeds, planes, planeCount }: ReturnType<typeof sceneOf>): Vec3[] {
  const most = Math.ceil(1 / seeds.cell);
  const all: Vec3[] = [];
  for (let x = -most; x < most; x++)
    for (let y = -most; y < most; y++)
      for (let z = -most; z < most; z++) {
        const g = grainCentre(seeds.radius, seeds.cell, seeds.seed, x, y, z);
        const within = Array.from({ length: planeCount }, (_, i) => planes.subarray(4 * i, 4 * i + 4)).every(
          ([a, b, c, h]) => a * g[0] + b * g[1] + c * g[2] <= h - seeds.radius,
        );
        if (within && Math.hypot(...g) <= 1 - seeds.radius) all.push(g);
      }
  return all;
}

describe("seeds in the glass", () => {
  it("are as many as asked for in the uncut ball, but for those at the skin", () => {
    for (const count of [100, 1000]) {
      const found = allSeeds(sceneOf(seedy(count, 0.2), [])).length;
      expect(found).toBeGreaterThan(0.75 * count);
      expect(found).toBeLessThan(1.1 * count);
    }
  });

  it("are met where the nearest of all of them is", () => {
    const scene = sceneOf(seedy(300, 0.9));
    const all = allSeeds(scene);
    const random = chance(3);
    const r = scene.seeds.radius;
    let met = 0;
    for (let i = 0; i < 1500; i++) {
      const o = randomDirection(random).map((v) => 0.7 * nextRandom(random) * v) as unknown as Vec3;
      const d = randomDirection(random);
      const tMax = 1.2 * nextRandom(random);
      let nearest = Number.POSITIVE_INFINITY;
      for (const g of all) {
        const q: Vec3 = [o[0] - g[0], o[1] - g[1], o[2] - g[2]];
        const b = dot(q, d);
        const disc = b * b - dot(q, q) + r * r;
        const t = -b - Math.sqrt(disc);
        if (disc > 0 && t >= 0 && t < tMax) nearest = Math.min(nearest, t);
      }
      const hit = nextSeed(scene, scene.seeds, o, d, tMax);
      if (hit) met++;
      if (hit || nearest < tMax) expect(hit?.t).toBeCloseTo(nearest, 9);
    }
    expect(met).toBeGreaterThan(50);
  });

  it("neither make nor lose light: in even light clear glass with them is seen as that light", () => {
    const scene = sceneOf(seedy(800, 0.8));
    const settings = { size: 12, samples: 6, seed: 1, dispersion: true, bounces: null };
    for (const v of renderRows(scene, cameraFrom(20, 50, 10, 14), settings, 0, 12, { lost: 0, meetings: 0 }))
      expect(Math.abs(v - 1)).toBeLessThan(1e-6);
  });

  it("are none in a plan without them, or with none of them", () => {
    for (const piece of [clearPiece(), seedy(0, 0.2)])
      expect(makeScene({ piece, planes: [], light: { kind: "uniform" } }).seeds).toBeNull();
  });
});

it("walks from cube to cube without leaving one out or coming to one twice", () => {
  const random = chance(8);
  for (let i = 0; i < 200; i++) {
    const o = randomDirection(random);
    const d = randomDirection(random);
    const visited: string[] = [];
    alongCubes(o, d, 0, 1.5, 0.13, (x, y, z) => {
      visited.push(`${x} ${y} ${z}`);
      return null;
    });
    expect(new Set(visited).size).toBe(visited.length);
    const known = new Set(visited);
    const crossed = Array.from({ length: 300 }, (_, k) =>
      o.map((v, a) => Math.floor((v + ((1.5 * k) / 300) * d[a]) / 0.13)).join(" "),
    );
    expect(crossed.filter((cube) => !known.has(cube))).toEqual([]);
  }
});
