/** Coloured glass melted into the piece: what it takes of the light, where it is, what a seed does. */
import { describe, expect, it } from "vitest";
import { dot, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { placeIn } from "../../../src/core/inside/media.ts";
import { REACHES } from "../../../src/core/inside/records.ts";
import { BUBBLE, PETALS, RIBBON, type SceneDesign } from "../../../src/core/inside/scene-design.ts";
import { enterBody } from "../../../src/core/optics/body.ts";
import { hitDesign, packDesign } from "../../../src/core/optics/inside.ts";
import { absorptionBesideScattering, passMediaBy } from "../../../src/core/optics/pass-media.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { tracePath } from "../../../src/core/optics/tracer.ts";
import { colourOfChannels } from "../../../src/core/optics/walker.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { chance, clearPiece, randomDirection } from "./helpers.ts";

const RGB = [0.2, 0.5, 0.8] as const;
const pack = (design: InsideDesign): SceneDesign => packDesign(clearPiece(), design, 1.5)[0];

const BAND = {
  kind: "ribbon",
  widthMm: 12,
  lengthMm: 20,
  thicknessMm: 3,
  turns: 0,
  rgb: RGB,
  fadeMm: 0,
} as const;
const MELTED: readonly InsideDesign[] = [
  {
    kind: "twist",
    strands: 4,
    strandMm: 2,
    diameterMm: 10,
    lengthMm: 20,
    pitchMm: 10,
    taper: 0.5,
    veil: 10,
    rgb: RGB,
  },
  { ...BAND, turns: 1.5, fadeMm: 0.4 },
  { kind: "petals", count: 7, diameterMm: 20, depthMm: 6, vein: 0.5, rgb: RGB },
  { kind: "swirl", arms: 5, turns: 0.8, diameterMm: 20, depthMm: 8, thicknessMm: 1.5, rgb: RGB },
];
const shaken = MELTED.map(
  (design): InsideDesign => ({ ...design, irregularity: 1, seed: 5 }) as InsideDesign,
);

describe("coloured glass melted into the piece", () => {
  it("takes of a straight ray through its thickness what its colour says (Bouguer-Lambert)", () => {
    const s = pack({ ...BAND, thicknessMm: 9, milky: 0 });
    // The walk's places stand in steps; where the first one stands is chance, and the mean of all is the chord.
    const starts = Array.from({ length: 32 }, (_, k) => (k + 0.5) / 32);
    const depths = (x: number) =>
      starts
        .map((first) =>
          passMediaBy([s], [x, 0.9, 0], [0, -1, 0], 1.8, Number.POSITIVE_INFINITY, first, (rgb) => rgb),
        )
        .reduce((sum, { left }) => sum.map((v, c) => v - Math.log(left[c]) / starts.length), [0, 0, 0]);
    // an ellipse's chord at its middle and at half its half axis; the edge falls off over a little of it
    for (const [x, share] of [
      [0, 1],
      [0.2, Math.sqrt(1 - 0.5 ** 2)],
      [0.41, 0],
    ])
      depths(x).forEach((depth, c) => {
        expect(Math.abs(depth + share * Math.log(RGB[c]))).toBeLessThan(-0.03 * Math.log(RGB[c]));
      });
  });

  it("scatters the share that a slab of its depth scatters, by one chance", () => {
    const s = pack({ ...BAND, milky: 0.5 });
    // 8 * 0.5 ^ 2 scatterings straight through the middle, but for the soft edge
    const scattered = (depth: number) =>
      passMediaBy([s], [0, 0.9, 0], [0, -1, 0], 1.8, depth, 0.5, (rgb) => rgb).scattered;
    expect(scattered(1.85)).toBe(true);
    expect(scattered(2.1)).toBe(false);
  });

  it("looks, deep and milky, as the albedo of a half space says (van de Hulst 1980)", () => {
    for (const colour of [0.05, 0.2, 0.5, 0.8, 0.95]) {
      const albedo = 1 / (1 + absorptionBesideScattering(colour));
      const s = Math.sqrt(1 - albedo);
      expect(((1 - s) * (1 - 0.139 * s)) / (1 + 1.17 * s)).toBeCloseTo(colour, 6);
    }
  });

  it("loses nothing when it is white: in even light everything is 1", () => {
    const white = [1, 1, 1] as const;
    const inside = MELTED.map((design) => ({ ...design, rgb: white, milky: 0.6 }) as InsideDesign);
    const scene = makeScene({ piece: { ...clearPiece(), inside }, planes: [], light: { kind: "uniform" } });
    const random = chance(4);
    const [sum, tally] = [[0, 0, 0] as [number, number, number], { lost: 0, meetings: 0 }];
    const rays = 60;
    for (let i = 0; i < rays; i++) {
      const o: Vec3 = [0.8 * (nextRandom(random) - 0.5), 0.8 * (nextRandom(random) - 0.5), 3];
      const d: Vec3 = [0, 0, -1];
      const entry = enterBody(scene, o, d);
      if (!entry) throw new Error("the ray misses the ball");
      const colour = colourOfChannels(scene);
      tracePath({ scene, colour, cap: 10_000, random, tally, sum, behind: null }, o, d, entry);
    }
    for (const one of sum) expect(one / rays).toBeCloseTo(1, 9);
  });

  it.each([...MELTED, ...shaken].map((design) => [design.kind, design] as const))(
    "lies within its reach, and nothing of it within the free distance: %s",
    (_, design) => {
      const s = pack(design);
      const random = chance(9);
      let [dense, overstepped, free] = [0, 0, 0];
      for (let i = 0; i < 6000; i++) {
        const r = 0.95 * Math.cbrt(nextRandom(random));
        const p = randomDirection(random).map((v) => r * v) as unknown as Vec3;
        const { density, distance } = placeIn(s, p);
        const n = randomDirection(random);
        if (density > 0) {
          dense++;
          expect(dot(n, p)).toBeLessThanOrEqual(REACHES[s.kind](s, ...n) + 0.5 * s.size[2]);
        } else if (distance > 0) {
          free++;
          const next = p.map((v, c) => v + 0.8 * distance * n[c]) as unknown as Vec3;
          if (placeIn(s, next).density > 0.02) overstepped++;
        }
      }
      expect(dense).toBeGreaterThan(30);
      expect(overstepped / free).toBeLessThan(0.005);
    },
  );

  it("is exact without irregularity, and another one with another seed", () => {
    const exact = pack(MELTED[0]);
    const quarter = (p: Vec3): Vec3 => [-p[1], p[0], p[2]];
    const random = chance(3);
    const one = pack(shaken[0]);
    const other = pack({ ...shaken[0], seed: 6 } as InsideDesign);
    let differ = 0;
    for (let i = 0; i < 2000; i++) {
      const p = randomDirection(random).map((v, c) => (c < 2 ? 0.35 : 0.6) * v) as unknown as Vec3;
      // four strands, ten threads: half a turn keeps both
      const turned = quarter(quarter(p));
      expect(placeIn(exact, turned).density).toBeCloseTo(placeIn(exact, p).density, 6);
      if (Math.abs(placeIn(one, p).density - placeIn(other, p).density) > 0.1) differ++;
    }
    expect(differ).toBeGreaterThan(100);
  });

  it("is met by straight rays where it is half dense, and by light nowhere: that goes through", () => {
    const s = pack(BAND);
    expect(hitDesign(s, [0, 0.9, 0], [0, -1, 0], 1.8, -1)?.t).toBeCloseTo(0.8, 1.5);
    expect(hitDesign(s, [0, 0.9, 0], [0, -1, 0], 1.8, -1, chance(1))).toBeNull();
  });
});

describe("what was there before", () => {
  it("stays as it was without a field of the new ones", () => {
    const { fadeMm: _, ...band } = BAND;
    expect(pack(band).kind).toBe(RIBBON);
    expect(pack({ kind: "petals", count: 6, diameterMm: 18, depthMm: 5, rgb: RGB }).kind).toBe(PETALS);
  });
});

describe("bubbles in a row", () => {
  const row = { kind: "bubbles", shape: "ring", count: 6, bubbleMm: 1.5, spanMm: 15 } as const;
  it("stand even in a ring or a chain, each a ball of air", () => {
    const ring = packDesign(clearPiece(), row, 1.5);
    expect(ring.map(({ kind }) => kind)).toEqual(new Array(6).fill(BUBBLE));
    for (const { centre, size } of ring) {
      expect(Math.hypot(centre[0], centre[1])).toBeCloseTo(0.5, 12);
      expect(size[0]).toBeCloseTo(0.05, 12);
    }
    const chain = packDesign(clearPiece(), { ...row, shape: "chain" }, 1.5);
    expect(chain.map(({ centre }) => centre[2])[0]).toBeCloseTo(-0.5, 12);
    expect(chain.map(({ centre }) => centre[2])[5]).toBeCloseTo(0.5, 12);
  });

  it("stray by their seed, as far as they are irregular", () => {
    const strays = packDesign(clearPiece(), { ...row, irregularity: 1, seed: 3 }, 1.5);
    const sizes = strays.map(({ size }) => size[0]);
    expect(Math.max(...sizes) / Math.min(...sizes)).toBeGreaterThan(1.1);
    expect(strays.some(({ centre }) => Math.abs(centre[2]) > 0.005)).toBe(true);
  });
});
