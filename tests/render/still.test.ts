import { describe, expect, it } from "vitest";
import { areaAt, mapPassesDue, mapSide } from "../../src/render/light-map.ts";
import {
  ALL_COLOURS,
  COLOURED_SKETCHES,
  halfOfPass,
  passAt,
  samplesAfter,
  samplesOfHalves,
  shuffled,
  WAVES_A_RAY,
} from "../../src/render/pass.ts";
import { stillPaths, tilesOf, withMargin } from "../../src/render/still.ts";

describe("the tiles of a still picture", () => {
  it.each([
    [1, 1],
    [1024, 1024],
    [2500, 1030],
  ])("cover %i x %i pixels exactly once", (width, height) => {
    const tiles = tilesOf(width, height);
    const area = tiles.reduce((sum, tile) => sum + tile.width * tile.height, 0);
    expect(area).toBe(width * height);
    expect(tiles.every((tile) => tile.x + tile.width <= width && tile.y + tile.height <= height)).toBe(true);
    const corners = new Set(tiles.map((tile) => `${tile.x},${tile.y}`));
    expect(corners.size).toBe(tiles.length);
  });
});

describe("what a still picture's time is told by", () => {
  it.each([
    // as measured, 1.69 and 1.2, and room for what a map of its own passes adds
    ["card", 1.6, 1.8],
    ["software", 1.1, 1.3],
  ] as const)(
    "counts the sketch and every pass over the light map as well, and that its paths are longer than the living picture's: %s",
    (by, least, most) => {
      const pixels = 700 * 700;
      for (const samples of [8, 64, 256]) {
        let [map, paths] = [0, 0];
        for (let pass = 0; pass < samples + 1; pass++) {
          const due = mapPassesDue(map, pass, by);
          paths += pixels;
          for (let k = 0; k < due; k++) paths += areaAt(map++, 1, mapSide(pixels)).width ** 2;
        }
        const longer = stillPaths(pixels, samples, true, by) / paths;
        expect(longer).toBeGreaterThan(least);
        expect(longer).toBeLessThan(most);
        expect(stillPaths(pixels, samples, false, by) / (pixels * (samples + 1))).toBeCloseTo(longer, 1);
      }
    },
  );
});

describe("the margin of a tile", () => {
  it("holds what its pixels are smoothed by, as far as the picture goes", () => {
    const [width, height] = [2500, 1030];
    for (const tile of tilesOf(width, height)) {
      const traced = withMargin(tile, width, height);
      expect(traced.x).toBe(Math.max(0, tile.x - 2));
      expect(traced.y).toBe(Math.max(0, tile.y - 2));
      expect(traced.x + traced.width).toBe(Math.min(width, tile.x + tile.width + 2));
      expect(traced.y + traced.height).toBe(Math.min(height, tile.y + tile.height + 2));
    }
  });
});

const guided = { sketches: 1, maxMeetings: 16, seed: 1 };
const plain = { ...guided, sketches: 0 };

describe("the passes of a picture", () => {
  it("sketches first where wavelengths part, and does not count the sketch", () => {
    expect([0, 1, 2].map((k) => passAt(k, guided).channels)).toEqual([3, 1, 1]);
    expect([1, 2, 3].map((passes) => samplesAfter(passes, 1))).toEqual([1, 1, 2]);
    expect(passAt(1, guided).uniforms.keep.value).toBe(0);
    expect(passAt(2, guided).uniforms.keep.value).toBe(1);
  });

  it("sketches by several rays where it is to, taking turns between the halves, and begins each anew after it", () => {
    const sketched = { ...guided, sketches: 4 };
    expect([0, 3, 4, 5].map((k) => passAt(k, sketched).channels)).toEqual([3, 3, 1, 1]);
    expect([0, 1, 2, 3].map((k) => halfOfPass(k, 4))).toEqual([1, 0, 1, 0]);
    const uniforms = Array.from({ length: 16 }, (_, k) => passAt(k, sketched).uniforms);
    expect(uniforms.map(({ keep }) => keep.value)).toEqual([0, 0, 1, 1, 0, 1, 1, 1, 0, 1, 1, 1, 1, 1, 1, 1]);
    // the first ray's guess is what the other half has of the sketch, the second's the first ray
    expect(uniforms.map(({ guessSamples }) => guessSamples.value).slice(4)).toEqual([
      2, 2, 2, 2, 4, 4, 4, 4, 4, 4, 4, 4,
    ]);
    expect(uniforms.map(({ sampleIndex }) => sampleIndex.value)).toEqual([
      0, 0, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1,
    ]);
  });

  it("sketches in colours one ray in each half three times: all at green's index, then blue at its own, then red", () => {
    const sketches = COLOURED_SKETCHES;
    expect(sketches).toBe(6);
    const scene = { ...guided, sketches, sketchIndex: [1.51, 1.52, 1.53] } as const;
    const passes = Array.from({ length: sketches }, (_, k) => passAt(k, scene));
    expect(passes.map(({ channels }) => channels)).toEqual([3, 3, 3, 3, 3, 3]);
    const of = (name: string) => passes.map(({ uniforms }) => uniforms[name].value);
    expect(of("indexD")).toEqual([1.52, 1.52, 1.53, 1.53, 1.51, 1.51]);
    expect(of("onlyColour")).toEqual([ALL_COLOURS, ALL_COLOURS, 2, 2, 0, 0]);
    expect(of("keep")).toEqual([0, 0, 0, 0, 0, 0]);
    for (const name of ["sampleIndex", "sampleSobol", "scatterSobol1", "scatterSobol2", "rouletteIndex"])
      expect(new Set(of(name)).size).toBe(1);
    const [second, first] = of("seed");
    expect(first).not.toBe(second);
    expect(of("seed")).toEqual([second, first, second, first, second, first]);
    // what follows is told that a half of the sketch holds one ray, and has the scene's own index
    expect(passAt(sketches, scene).uniforms.guessSamples.value).toBe(1);
    expect(passAt(sketches, scene).uniforms.indexD).toBeUndefined();
    for (const k of [5, 9, 13]) {
      const [ours, theirs] = [passAt(sketches + k, scene), passAt(1 + k, guided)];
      expect(ours.channels).toBe(1);
      expect(ours.uniforms).toEqual(theirs.uniforms);
    }
  });

  it("counts every pass where there is no dispersion", () => {
    expect([0, 5].map((k) => passAt(k, plain).channels)).toEqual([3, 3]);
    expect(samplesAfter(7, 0)).toBe(7);
  });

  it("gives the second Sobol number of a sample bit-reversed: Pascal's triangle modulo 2", () => {
    const numbers = [0, 2, 4, 6, 8].map((k) => passAt(k, plain).uniforms.sampleSobol.value);
    expect(numbers).toEqual([0, 1, 3, 2, 5]);
  });

  it("takes the wavelengths in another order that still has every one of 64 once", () => {
    const order = Array.from({ length: 64 }, (_, k) => shuffled(k, 0x9e3779b9) & 63);
    expect(new Set(order).size).toBe(64);
    // Neither forwards nor backwards, nor tied to whether the sample is even.
    const evenStays = order.filter((place, k) => place % 2 === k % 2).length;
    expect(evenStays).toBeGreaterThan(16);
    expect(evenStays).toBeLessThan(48);
  });

  it("sends each ray four times on the same chances, at four wavelengths of one group", () => {
    for (let first = 1; first <= 257; first += WAVES_A_RAY) {
      const passes = [0, 1, 2, 3].map((k) => passAt(first + k, guided).uniforms);
      for (const name of [
        "sampleIndex",
        "sampleSobol",
        "scatterSobol1",
        "scatterSobol2",
        "rouletteIndex",
        "reach",
        "guessSamples",
      ])
        expect(new Set(passes.map((one) => one[name].value)).size).toBe(1);
      const places = passes.map(({ waveIndex }) => Number(waveIndex.value));
      expect(new Set(places.map((place) => Math.floor(place / WAVES_A_RAY))).size).toBe(1);
      expect(new Set(places.map((place) => place % WAVES_A_RAY)).size).toBe(WAVES_A_RAY);
      const halves = [0, 1, 2, 3].map((k) => halfOfPass(first + k, 1));
      expect(new Set(halves).size).toBe(1);
    }
  });

  it("ends weak paths evenly over any 16 rays that belong together, in an order that their places in the pixel don't share", () => {
    const plain = { ...guided, sketches: 0 };
    const orderOf = (first: number) =>
      Array.from({ length: 16 }, (_, k) =>
        Number(passAt(2 * (first + k), plain).uniforms.rouletteIndex.value),
      );
    for (let first = 0; first < 256; first += 16) {
      const order = orderOf(first);
      expect(new Set(order.map((place) => place >> 4)).size).toBe(1);
      expect(new Set(order.map((place) => place & 15)).size).toBe(16);
    }
    // In step with the rays, the last bit would always be the ray's own or always the other one.
    const odd = orderOf(0)
      .concat(orderOf(16))
      .filter((place, ray) => ((place ^ ray) & 1) === 1).length;
    expect(odd).toBeGreaterThan(4);
    expect(odd).toBeLessThan(28);
  });

  it.each([0, 1, 4])(
    "gives rays to the halves by turns, and keeps count of each (passes of a sketch: %i)",
    (sketches) => {
      const counted: [number, number] = [0, 0];
      for (let pass = sketches; pass < 70; pass++) {
        expect(samplesOfHalves(pass, sketches)).toEqual(counted);
        counted[halfOfPass(pass, sketches)] += 1;
        const [first, second] = samplesOfHalves(pass + 1, sketches);
        expect(samplesAfter(pass + 1, sketches)).toBe(Math.max(sketches, first + second));
        expect(Math.abs(first - second)).toBeLessThanOrEqual(sketches > 0 ? WAVES_A_RAY : 1);
      }
    },
  );

  it("gives the halves seeds of their own, and the same numbers to the same ray of either", () => {
    for (const scene of [guided, plain]) {
      const seeds: [Set<unknown>, Set<unknown>] = [new Set(), new Set()];
      const rays: [unknown[], unknown[]] = [[], []];
      for (let pass = scene.sketches; pass < 65; pass++) {
        const { seed, sampleIndex, sampleSobol, waveIndex } = passAt(pass, scene).uniforms;
        const half = halfOfPass(pass, scene.sketches);
        seeds[half].add(seed.value);
        rays[half].push([sampleIndex.value, sampleSobol.value, waveIndex.value]);
      }
      expect(seeds.map((each) => each.size)).toEqual([1, 1]);
      expect([...seeds[0]]).not.toEqual([...seeds[1]]);
      expect(rays[1].slice(0, 28)).toEqual(rays[0].slice(0, 28));
    }
  });

  it("guesses from the half that knows nothing of the ray, and starts each half anew", () => {
    for (let pass = 1; pass < 70; pass++) {
      const half = halfOfPass(pass, 1);
      const samples = samplesOfHalves(pass, 1);
      const { guessSamples, keep } = passAt(pass, guided).uniforms;
      expect(guessSamples.value).toBe(Math.max(1, samples[1 - half]));
      expect(keep.value).toBe(samples[half] === 0 ? 0 : 1);
    }
  });

  it("follows every path as far as the scene asks", () => {
    for (const pass of [0, 1, 2, 30])
      expect(passAt(pass, { ...guided, maxMeetings: 5 }).uniforms.reach.value).toBe(5);
  });
});
