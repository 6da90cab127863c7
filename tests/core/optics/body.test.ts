import { describe, expect, it } from "vitest";
import { dot, length, type Vec3 } from "../../../src/core/geometry/vec.ts";
import {
  bodyNormal,
  enterBody,
  NOWHERE,
  nextOnBody,
  pointOnBody,
  SKIN,
} from "../../../src/core/optics/body.ts";
import { reflectRay } from "../../../src/core/optics/fresnel.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import type { Scene } from "../../../src/core/optics/scene.ts";
import { chance, passThrough, randomDirection, randomPlanes, smoothScene, tieredPlanes } from "./helpers.ts";

/** How far p lies outside the body; a hair of rounding is all that is allowed. */
function outsideBy(scene: Scene, p: Vec3): number {
  let most = length(p) - 1;
  for (let i = 0; i < scene.planeCount; i++)
    most = Math.max(most, dot(bodyNormal(scene, i, p), p) - scene.planes[4 * i + 3]);
  return most;
}

/** Distance that roundings of a double may add up to over a path of a few bounces. */
const HAIR = 1e-13;

describe("rays and the body", () => {
  it("lets none of 1e6 random rays from inside get past the body's surface", () => {
    const random = chance(7);
    let [worst, shortest] = [0, 0];
    for (const count of [0, 1, 6, 17, 25, 40, 60, 80, 100, 120]) {
      const scene = smoothScene(randomPlanes(count, count + 1));
      for (let ray = 0; ray < 25_000; ray++) {
        // A start within the body (every plane lies at least 0.55 out), then three mirrorings: four rays in all.
        let p: Vec3 = randomDirection(random);
        const depth = 0.5 * nextRandom(random);
        p = [p[0] * depth, p[1] * depth, p[2] * depth];
        let d = randomDirection(random);
        let surface = NOWHERE;
        for (let bounce = 0; bounce < 4; bounce++) {
          const hit = nextOnBody(scene, p, d, surface);
          p = pointOnBody(scene, p, d, hit.t, hit.surface);
          surface = hit.surface;
          worst = Math.max(worst, outsideBy(scene, p));
          shortest = Math.min(shortest, hit.t);
          const n = bodyNormal(scene, surface, p);
          d = reflectRay(d, [-n[0], -n[1], -n[2]], dot(d, n));
        }
      }
    }
    expect(worst).toBeLessThan(HAIR);
    expect(shortest).toBe(0);
  });

  it("keeps rays that are sent straight at edges and corners inside", () => {
    // A cube within the ball: starts on one face, aims exactly at its edges and corners.
    const h = 0.5;
    const planes = [
      [1, 0, 0],
      [-1, 0, 0],
      [0, 1, 0],
      [0, -1, 0],
      [0, 0, 1],
      [0, 0, -1],
    ].map((n) => ({ n: n as unknown as Vec3, h }));
    const scene = smoothScene(planes);
    for (const at of [-h, -0.25, 0, 0.25, h])
      for (const target of [
        [h, h, at],
        [at, h, h],
        [-h, at, h],
        [h, -h, h],
      ] as Vec3[]) {
        const o: Vec3 = [0.1, -0.2, -h];
        const to: Vec3 = [target[0] - o[0], target[1] - o[1], target[2] - o[2]];
        const l = length(to);
        const d: Vec3 = [to[0] / l, to[1] / l, to[2] / l];
        const hit = nextOnBody(scene, o, d, 5);
        expect(hit.surface).not.toBe(SKIN);
        expect(outsideBy(scene, pointOnBody(scene, o, d, hit.t, hit.surface))).toBeLessThan(HAIR);
      }
  });

  it("meets from outside the surface that a ray back from there leaves by", () => {
    const random = chance(11);
    const scene = smoothScene(tieredPlanes(12));
    let [worst, difference] = [0, 0];
    for (let i = 0; i < 20_000; i++) {
      const from = randomDirection(random);
      const o: Vec3 = [from[0] * 8, from[1] * 8, from[2] * 8];
      const aim = randomDirection(random);
      const to: Vec3 = [aim[0] - o[0], aim[1] - o[1], aim[2] - o[2]];
      const l = length(to);
      const d: Vec3 = [to[0] / l, to[1] / l, to[2] / l];
      const entry = enterBody(scene, o, d);
      if (!entry) continue;
      const p = pointOnBody(scene, o, d, entry.t, entry.surface);
      worst = Math.max(worst, outsideBy(scene, p));
      // Straight on to the far side, then back.
      const far = nextOnBody(scene, p, d, entry.surface);
      const q = pointOnBody(scene, p, d, far.t, far.surface);
      const back = nextOnBody(scene, q, [-d[0], -d[1], -d[2]], far.surface);
      difference = Math.max(difference, Math.abs(back.t - far.t));
    }
    expect(worst).toBeLessThan(HAIR);
    expect(difference).toBeLessThan(1e-12);
  });

  it("misses when the plane that faces the ray hides the body", () => {
    const scene = smoothScene([{ n: [0, 0, 1], h: 0.2 }]);
    expect(enterBody(scene, [0, 0.9, 5], [0, 0, -1])?.surface).toBe(0);
    expect(enterBody(scene, [0, 0.9, 0.3], [1, 0, 0])).toBeNull();
    expect(enterBody(scene, [3, 0, 0.1], [-1, 0, 0])?.surface).toBe(SKIN);
    expect(enterBody(scene, [0, 1.1, 5], [0, 0, -1])).toBeNull();
  });

  it("leads every ray back the way it came (reciprocity of a smooth piece)", () => {
    const random = chance(3);
    let [followed, astray] = [0, 0];
    for (const planes of [[], tieredPlanes(8), randomPlanes(60, 2)]) {
      const scene = smoothScene(planes, 1.62);
      for (let i = 0; i < 2000; i++) {
        const from = randomDirection(random);
        const o: Vec3 = [from[0] * 4, from[1] * 4, from[2] * 4];
        const aim = randomDirection(random);
        const to: Vec3 = [aim[0] * 0.9 - o[0], aim[1] * 0.9 - o[1], aim[2] * 0.9 - o[2]];
        const l = length(to);
        const d: Vec3 = [to[0] / l, to[1] / l, to[2] / l];
        const there = passThrough(scene, o, d, 1.62);
        if (!there) continue;
        const start: Vec3 = [there.p[0] + there.d[0], there.p[1] + there.d[1], there.p[2] + there.d[2]];
        const back = passThrough(scene, start, [-there.d[0], -there.d[1], -there.d[2]], 1.62);
        // Only a path that grazes an edge, or leaves close to the critical angle, may turn off on its way back.
        if (back && Math.abs(dot(back.d, d) + 1) < 1e-9) followed++;
        else astray++;
      }
    }
    expect(followed).toBeGreaterThan(4000);
    expect(astray).toBeLessThan(0.005 * followed);
  });
});
