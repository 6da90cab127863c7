import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import { crossRoughFacet } from "../../../src/core/optics/finish.ts";
import { fresnel } from "../../../src/core/optics/fresnel.ts";
import {
  ggxDistribution,
  sampleVisibleNormal,
  smithLambda,
  walkMicrosurface,
} from "../../../src/core/optics/microfacet.ts";
import { nextRandom, type Random } from "../../../src/core/optics/random.ts";
import { chance } from "./helpers.ts";

const ALPHAS = [0.1, 0.394, 1];

/** Integral over the upper half-sphere by midpoints in theta^2-like steps, fine near the pole where a smooth surface peaks. */
function overHemisphere(f: (m: Vec3) => number): number {
  const [rings, sectors] = [2000, 64];
  let sum = 0;
  for (let i = 0; i < rings; i++) {
    const [a, b] = [i, i + 1].map((k) => (Math.PI / 2) * (k / rings) ** 2);
    const theta = 0.5 * (a + b);
    const area = ((Math.cos(a) - Math.cos(b)) * 2 * Math.PI) / sectors;
    for (let j = 0; j < sectors; j++) {
      const phi = (2 * Math.PI * (j + 0.5)) / sectors;
      sum += area * f([Math.sin(theta) * Math.cos(phi), Math.sin(theta) * Math.sin(phi), Math.cos(theta)]);
    }
  }
  return sum;
}

const towards = (deg: number): Vec3 => [Math.sin((deg * Math.PI) / 180), 0, Math.cos((deg * Math.PI) / 180)];
const facing = (v: Vec3, m: Vec3): number => Math.max(0, v[0] * m[0] + v[1] * m[1] + v[2] * m[2]);

describe("micro-facets", () => {
  it("cover the flat surface exactly once (Walter et al. 2007: the integral of D cos is 1)", () => {
    for (const alpha of ALPHAS)
      expect(overHemisphere((m) => ggxDistribution(m, alpha) * m[2])).toBeCloseTo(1, 4);
  });

  it("show a viewer exactly the area of the flat surface (Heitz 2014, weak white furnace)", () => {
    for (const alpha of ALPHAS)
      for (const deg of [0, 30, 60, 80]) {
        const v = towards(deg);
        const unmasked = 1 / (1 + smithLambda(v[2], alpha));
        const seen = overHemisphere((m) => unmasked * facing(v, m) * ggxDistribution(m, alpha));
        expect(seen / v[2], `alpha ${alpha}, ${deg} deg`).toBeCloseTo(1, 2);
      }
  });

  it("are drawn in proportion to how much of them is seen, from above and from below the horizon", () => {
    const random = chance(5);
    const count = 60_000;
    for (const alpha of ALPHAS)
      for (const deg of [20, 60, 85, 110, 150]) {
        const v = towards(deg);
        const density = (m: Vec3) => facing(v, m) * ggxDistribution(m, alpha);
        const total = overHemisphere(density);
        const mean: [number, number] = [0, 0];
        for (let i = 0; i < count; i++) {
          const m = sampleVisibleNormal(v, alpha, nextRandom(random), nextRandom(random));
          mean[0] += m[0] / count;
          mean[1] += m[2] / count;
        }
        expect(mean[0]).toBeCloseTo(overHemisphere((m) => density(m) * m[0]) / total, 1.7);
        expect(mean[1]).toBeCloseTo(overHemisphere((m) => density(m) * m[2]) / total, 1.7);
      }
  });

  it("of an almost smooth surface reflect what Fresnel says and refract where Snell says", () => {
    const random = chance(9);
    for (const [outside, eta, deg] of [
      [true, 1 / 1.5, 50],
      [false, 1 / 1.5, 30],
    ] as const) {
      const d: Vec3 = [
        Math.sin((deg * Math.PI) / 180),
        0,
        (outside ? -1 : 1) * Math.cos((deg * Math.PI) / 180),
      ];
      const here = outside ? eta : 1 / eta;
      const expected = fresnel(Math.abs(d[2]), here);
      let [mirrored, bent] = [0, 0];
      const count = 40_000;
      for (let i = 0; i < count; i++) {
        const crossing = walkMicrosurface(d, outside, 1e-3, eta, random);
        if (crossing.outside === outside) mirrored++;
        else if (Math.abs(crossing.d[0] - here * d[0]) < 0.01) bent++;
      }
      // GGX has long tails: a share alpha^2 / slope^2 of its facets is steeper than any slope.
      expect(bent).toBeGreaterThan(0.995 * (count - mirrored));
      // Four standard deviations of a count.
      expect(Math.abs(mirrored / count - expected)).toBeLessThan(4 * Math.sqrt(expected / count));
    }
  });

  it("always let a ray go on the side that it says", () => {
    const random = chance(12);
    let wrong = 0;
    for (const alpha of ALPHAS)
      for (const wet of [false, true])
        for (let i = 0; i < 20_000; i++) {
          const outside = nextRandom(random) < 0.5;
          const cos = Math.max(1e-3, nextRandom(random));
          const d: Vec3 = [Math.sqrt(1 - cos * cos), 0, outside ? -cos : cos];
          const crossing = crossRoughFacet(d, outside, alpha, 1.5, wet, random);
          const isUnit = Math.abs(Math.hypot(...crossing.d) - 1) < 1e-9;
          if (crossing.d[2] > 0 !== crossing.outside || !isUnit) wrong++;
        }
    expect(wrong).toBe(0);
  });
});

/** Directions of a cell: cosine to the normal within [low, high], any azimuth; drawn as diffuse light fills it. */
interface Cell {
  readonly outside: boolean;
  readonly low: number;
  readonly high: number;
}
const etendue = (cell: Cell, index: number): number =>
  (cell.outside ? 1 : index * index) * Math.PI * (cell.high ** 2 - cell.low ** 2);

const RAYS = 150_000;

/** How many of RAYS rays from cell a end in cell b. */
function carried(a: Cell, b: Cell, wet: boolean, random: Random): number {
  let arrived = 0;
  for (let i = 0; i < RAYS; i++) {
    const cos = Math.sqrt(a.low ** 2 + (a.high ** 2 - a.low ** 2) * nextRandom(random));
    const d: Vec3 = [Math.sqrt(1 - cos * cos), 0, a.outside ? -cos : cos];
    const crossing = crossRoughFacet(d, a.outside, 0.394, 1.5, wet, random);
    const out = Math.abs(crossing.d[2]);
    if (crossing.outside === b.outside && out >= b.low && out < b.high) arrived++;
  }
  return arrived;
}

describe("a rough facet", () => {
  const steep: Cell = { outside: true, low: 0.7, high: 0.9 };
  const wide: Cell = { outside: true, low: 0.1, high: 0.7 };
  const grazing: Cell = { outside: true, low: 0.2, high: 0.4 };
  const within: Cell = { outside: false, low: 0.75, high: 0.9 };
  const shallow: Cell = { outside: false, low: 0.4, high: 0.6 };
  for (const wet of [false, true])
    it(`carries as much light one way as back (reciprocity), ${wet ? "wet" : "dry"}`, () => {
      const random = chance(21);
      for (const [a, b] of [
        [steep, wide],
        [steep, within],
        [grazing, within],
        [within, shallow],
      ] as const) {
        const [there, back] = [carried(a, b, wet, random), carried(b, a, wet, random)];
        // Five standard deviations of the two counts.
        const deviation = Math.sqrt(1 / there + 1 / back);
        const ratio = (there * etendue(a, 1.5)) / (back * etendue(b, 1.5));
        expect(Math.abs(ratio - 1), `${there} there, ${back} back`).toBeLessThan(5 * deviation);
      }
    });

  it("lets more light straight through when wet than dry", () => {
    const random = chance(22);
    const narrow: Cell = { outside: true, low: 0.98, high: 1 };
    const ahead: Cell = { outside: false, low: 0.95, high: 1.0001 };
    const astray = (wet: boolean) => RAYS - carried(narrow, ahead, wet, random);
    expect(astray(true)).toBeLessThan(0.5 * astray(false));
  });
});
