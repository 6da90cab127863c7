import { describe, expect, it } from "vitest";
import {
  CARD,
  isRayWhole,
  PROCESSOR,
  passAt,
  reachOf,
  samplesAfter,
  shuffled,
  WAVES_A_RAY,
} from "../../src/render/pass.ts";
import { tilesOf } from "../../src/render/still.ts";

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

const guided = { hasDispersion: true, maxMeetings: 256, seed: 1 };
const plain = { ...guided, hasDispersion: false };

describe("the passes of a picture", () => {
  it("sketches first where wavelengths part, and does not count the sketch", () => {
    expect([0, 1, 2].map((k) => passAt(k, guided, CARD).channels)).toEqual([3, 1, 1]);
    expect([1, 2, 3].map((passes) => samplesAfter(passes, true))).toEqual([1, 1, 2]);
    expect(passAt(1, guided, CARD).uniforms.keep.value).toBe(0);
    expect(passAt(2, guided, CARD).uniforms.keep.value).toBe(1);
  });

  it("counts every pass where there is no dispersion", () => {
    expect([0, 5].map((k) => passAt(k, plain, CARD).channels)).toEqual([3, 3]);
    expect(samplesAfter(7, false)).toBe(7);
  });

  it("gives the second Sobol number of a sample bit-reversed: Pascal's triangle modulo 2", () => {
    const numbers = [0, 1, 2, 3, 4].map((k) => passAt(k, plain, CARD).uniforms.sampleSobol.value);
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
      const passes = [0, 1, 2, 3].map((k) => passAt(first + k, guided, CARD).uniforms);
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
      expect([0, 1, 2, 3].map((k) => isRayWhole(first + k + 1, true))).toEqual([false, false, false, true]);
    }
  });

  it("ends weak paths evenly over any 16 rays that belong together, in an order that their places in the pixel don't share", () => {
    const plain = { ...guided, hasDispersion: false };
    const orderOf = (first: number) =>
      Array.from({ length: 16 }, (_, k) =>
        Number(passAt(first + k, plain, CARD).uniforms.rouletteIndex.value),
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

  it("follows long paths in the share of samples that the weights make up for", () => {
    const count = 4096;
    for (const [seed, following] of [
      [1, CARD],
      [2, PROCESSOR],
      [77, CARD],
    ] as const) {
      const reaches = Array.from({ length: count }, (_, k) => reachOf(k, seed, following));
      for (const further of [0, 1, 5, 12, 20]) {
        const share = reaches.filter((reach) => reach > following.surely + further).length / count;
        expect(Math.abs(share - following.survival ** further)).toBeLessThanOrEqual(2 / count);
      }
    }
  });

  it("spreads long and short samples evenly over any 16 in a row that belong together", () => {
    for (let first = 0; first < 256; first += 16) {
      const long = Array.from({ length: 16 }, (_, k) => reachOf(first + k, 1, CARD)).filter(
        (reach) => reach > CARD.surely + 4,
      );
      // 0.85^4 of 16 are 8.4.
      expect(long.length).toBeGreaterThanOrEqual(7);
      expect(long.length).toBeLessThanOrEqual(10);
    }
  });

  it("never goes beyond the cap, and sketches no farther than it need", () => {
    expect(passAt(1, { ...guided, maxMeetings: 5 }, CARD).uniforms.reach.value).toBe(5);
    expect(passAt(0, guided, CARD).uniforms.reach.value).toBeLessThan(64);
    expect(passAt(0, guided, CARD).uniforms.longSurvival.value).toBe(1);
  });
});
