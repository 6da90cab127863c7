import { describe, expect, it } from "vitest";
import { dot, length, normalize, sub, type Vec3 } from "../../../src/core/geometry/vec.ts";
import {
  type DesignHit,
  hitDesign,
  lengthWithin,
  packDesign,
  type SceneDesign,
} from "../../../src/core/optics/inside.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { chance, clearPiece, randomDirection } from "./helpers.ts";

const RGB = [0.5, 0.4, 0.3] as const;
const pack = (design: InsideDesign, inkMarkDeg = 0): SceneDesign =>
  packDesign({ ...clearPiece(), inkMarkDeg }, design, 1.5)[0];
const hit = (s: SceneDesign, o: Vec3, d: Vec3): DesignHit | null => hitDesign(s, o, d, 3, -1);

describe("designs inside the glass", () => {
  it("stand where they were put, in mm of the piece", () => {
    const core = pack({ kind: "core", diameterMm: 6, rgb: RGB, opaque: true, atMm: [0, 3, -4.5] });
    const met = hit(core, [0, 0.2, 1], [0, 0, -1]);
    // 3 mm up and 4.5 mm back of the centre, radius 3 mm, in radii of 15 mm.
    expect(met?.t).toBeCloseTo(1 + 0.3 - 0.2, 12);
    expect(met?.n[2]).toBeCloseTo(1, 12);
    expect(hit(core, [0, 0.41, 1], [0, 0, -1])).toBeNull();
  });

  it("are tilted from +z towards their azimuth, counted from the ink mark", () => {
    // A long core tilted by 90 degrees lies along the azimuth of ink mark + turn.
    const core = pack(
      { kind: "core", diameterMm: 2, lengthMm: 24, rgb: RGB, opaque: true, tiltDeg: 90, turnDeg: 30 },
      60,
    );
    expect(hit(core, [0, 0.7, 1], [0, 0, -1])).not.toBeNull();
    expect(hit(core, [0.7, 0, 1], [0, 0, -1])).toBeNull();
  });

  it("tell how much of a ray runs through a tinted core", () => {
    const core = pack({ kind: "core", diameterMm: 9, rgb: RGB, opaque: false });
    expect(lengthWithin(core, [0, 0, 1], [0, 0, -1], 2)).toBeCloseTo(0.6, 12);
    expect(lengthWithin(core, [0, 0, 0], [0, 0, -1], 2)).toBeCloseTo(0.3, 12);
    expect(lengthWithin(core, [0, 0, 1], [0, 0, -1], 0.8)).toBeCloseTo(0.1, 12);
    expect(lengthWithin(core, [0, 0.31, 1], [0, 0, -1], 2)).toBe(0);
  });

  it("have their backing on the dop's side", () => {
    const design = { kind: "backing", heightMm: 6, rgb: RGB } as const;
    expect(hit(pack(design), [0, 0, 0.5], [0, 0, -1])?.t).toBeCloseTo(0.5 + 0.6, 12);
    const [front] = packDesign({ ...clearPiece(), dop: { side: "front", diameterMm: 10 } }, design, 1.5);
    expect(hit(front, [0, 0, -0.5], [0, 0, 1])?.t).toBeCloseTo(1.1, 12);
  });

  it("show a ribbon's two colours on its two sides, turned along its length", () => {
    const ribbon = pack({
      kind: "ribbon",
      widthMm: 10,
      lengthMm: 20,
      thicknessMm: 0.6,
      turns: 0.5,
      rgb: [1, 0, 0],
      rgb2: [0, 0, 1],
    });
    // At mid length the ribbon lies in its own x-z plane; a quarter of its length on it is turned by 45 degrees.
    expect(hit(ribbon, [0, 0.9, 0], [0, -1, 0])?.rgb).toEqual([1, 0, 0]);
    expect(hit(ribbon, [0, -0.9, 0], [0, 1, 0])?.rgb).toEqual([0, 0, 1]);
    const turned = hit(ribbon, [0.2, 0.9, 1 / 3], [0, -1, 0]);
    expect(turned && 0.9 - turned.t).toBeCloseTo(0.2 + 0.02 * Math.SQRT2, 2);
  });

  it("fade petals from one colour at the heart to the other at the tips", () => {
    const petals = pack({
      kind: "petals",
      count: 5,
      diameterMm: 24,
      depthMm: 0.01,
      rgb: [1, 0, 0],
      rgb2: [0, 1, 0],
    });
    expect(hit(petals, [0, 0, 0.9], [0, 0, -1])?.rgb[0]).toBeCloseTo(1, 6);
    // A tip lies on the design's own x axis.
    expect(hit(petals, [0.76, 0, 0.9], [0, 0, -1])?.rgb[1]).toBeCloseTo(0.95, 6);
    expect(hit(petals, [-0.76, 0, 0.9], [0, 0, -1])).toBeNull();
  });

  it("are met where a march in tiny steps meets them too", () => {
    const random = chance(8);
    const sheets: readonly InsideDesign[] = [
      {
        kind: "ribbon",
        widthMm: 12,
        lengthMm: 22,
        thicknessMm: 0.8,
        turns: 2,
        rgb: RGB,
        tiltDeg: 25,
        turnDeg: 70,
      },
      { kind: "petals", count: 8, diameterMm: 22, depthMm: 8, rgb: RGB, tiltDeg: -20 },
    ];
    for (const design of sheets) {
      const s = pack(design);
      let [met, differs] = [0, 0];
      for (let i = 0; i < 400; i++) {
        const o = randomDirection(random);
        const d = normalize(sub(randomDirection(random).map((v) => 0.7 * v) as unknown as Vec3, o));
        // Short pieces of the ray, one after the other: the marcher has no room to step over anything.
        let tiny: number | null = null;
        for (let t = 0; t < 2 && tiny === null; t += 0.01) {
          const at: Vec3 = [o[0] + t * d[0], o[1] + t * d[1], o[2] + t * d[2]];
          const near = hitDesign(s, at, d, 0.01, -1);
          if (near) tiny = t + near.t;
        }
        const whole = hit(s, o, d);
        if (whole) met++;
        if (
          (whole === null) !== (tiny === null) ||
          (whole && tiny !== null && Math.abs(whole.t - tiny) > 0.01)
        )
          differs++;
      }
      expect(met).toBeGreaterThan(100);
      expect(differs).toBeLessThanOrEqual(2);
    }
  });

  it("have about as many grains in a speckle as asked for, all of them met by rays aimed at them", () => {
    const s = pack({ kind: "speckle", count: 500, grainMm: 0.3, diameterMm: 20, rgb: RGB, seed: 3 });
    const random = chance(2);
    const grains = new Set<number>();
    for (let i = 0; i < 60_000; i++) {
      const o = randomDirection(random);
      const d = normalize(
        sub(
          randomDirection(random).map((v) => 0.65 * Math.cbrt(nextRandom(random)) * v) as unknown as Vec3,
          o,
        ),
      );
      const met = hit(s, o, d);
      if (!met) continue;
      grains.add(met.grain);
      const at: Vec3 = [o[0] + met.t * d[0], o[1] + met.t * d[1], o[2] + met.t * d[2]];
      // Within the ball of 10 mm and a grain's radius.
      if (length(at) > 2 / 3 + 0.011 || dot(met.n, d) > 0) throw new Error("a grain strays or faces away");
    }
    expect(grains.size).toBeGreaterThan(430);
    expect(grains.size).toBeLessThan(570);
  });
});
