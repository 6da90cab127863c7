import { describe, expect, it } from "vitest";
import { dot, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { facingNormal, wavinessOf, wavyNormal } from "../../../src/core/optics/waviness.ts";
import type { Piece } from "../../../src/core/plan/document.ts";
import { chance, clearPiece, randomDirection, tieredPlanes } from "./helpers.ts";

const wavy = (slopeDeg: number, acrossMm = 4, seed = 1): Piece => ({
  ...clearPiece(),
  waviness: { slopeDeg, acrossMm, seed },
});
const made = (piece: Piece) => {
  const waviness = wavinessOf(piece);
  if (!waviness) throw new Error("no waviness");
  return waviness;
};

describe("the waviness of a fire-polished skin", () => {
  it("has the slope asked for, root mean square over the ball, whatever the seed", () => {
    for (const seed of [1, 2, 77]) {
      const waviness = made(wavy(2, 3, seed));
      const random = chance(seed);
      let sum = 0;
      const count = 20_000;
      for (let i = 0; i < count; i++) {
        const p = randomDirection(random);
        const cos = dot(wavyNormal(waviness, p), p);
        sum += 1 / (cos * cos) - 1;
      }
      const rms = (Math.atan(Math.sqrt(sum / count)) * 180) / Math.PI;
      expect(Math.abs(rms / 2 - 1)).toBeLessThan(0.1);
    }
  });

  it("is the slope of one height: round any closed way on the skin it goes up as far as down", () => {
    const waviness = made(wavy(3, 8));
    const steps = 4000;
    let climbed = 0;
    const at = (i: number): Vec3 => {
      const t = (2 * Math.PI * i) / steps;
      return [0.6 * Math.cos(t), 0.6 * Math.sin(t), 0.8];
    };
    for (let i = 0; i < steps; i++) {
      const [p, q] = [at(i), at(i + 1)];
      const middle = at(i + 0.5);
      const n = wavyNormal(waviness, middle);
      const upright = dot(n, middle);
      climbed -= (dot(n, q) - dot(n, p)) / upright;
    }
    expect(Math.abs(climbed)).toBeLessThan(1e-5);
  });

  it("never turns a ray away from where it is or through the skin", () => {
    const waviness = made(wavy(5, 2));
    const random = chance(9);
    let swayed = 0;
    for (let i = 0; i < 20_000; i++) {
      const p = randomDirection(random);
      const d = randomDirection(random);
      const n = facingNormal(waviness, p, p, d);
      if (n !== p) swayed++;
      const back = d.map((v, k) => v - 2 * dot(d, n) * n[k]) as unknown as Vec3;
      expect(dot(d, n) * dot(d, p)).toBeGreaterThanOrEqual(0);
      expect(dot(back, p) * dot(d, p)).toBeLessThanOrEqual(1e-12);
    }
    expect(swayed).toBeGreaterThan(18_000);
  });

  it("neither makes nor loses light: in even light a clear piece is seen as that light", () => {
    for (const planes of [[], tieredPlanes(8)]) {
      const scene = makeScene({ piece: wavy(4, 3), planes, light: { kind: "uniform" } });
      const settings = { size: 12, samples: 6, seed: 1, dispersion: true, bounces: null };
      for (const v of renderRows(scene, cameraFrom(20, 50, 10, 14), settings, 0, 12, {
        lost: 0,
        meetings: 0,
      }))
        expect(Math.abs(v - 1)).toBeLessThan(1e-6);
    }
  });

  it("of slope 0 is the round skin, and of a plan without it there is none", () => {
    const p: Vec3 = [0.48, 0.6, 0.64];
    wavyNormal(made(wavy(0)), p).forEach((v, k) => {
      expect(v).toBeCloseTo(p[k], 12);
    });
    expect(wavinessOf(clearPiece())).toBeNull();
  });
});
