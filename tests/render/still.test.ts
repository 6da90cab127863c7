import { describe, expect, it } from "vitest";
import { passAt, samplesAfter, shuffled } from "../../src/render/pass.ts";
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

describe("the passes of a picture", () => {
  it("sketches first where wavelengths part, and does not count the sketch", () => {
    expect([0, 1, 2].map((k) => passAt(k, true).channels)).toEqual([3, 1, 1]);
    expect([1, 2, 3].map((passes) => samplesAfter(passes, true))).toEqual([1, 1, 2]);
    expect(passAt(1, true).uniforms.keep.value).toBe(0);
    expect(passAt(2, true).uniforms.keep.value).toBe(1);
  });

  it("counts every pass where there is no dispersion", () => {
    expect([0, 5].map((k) => passAt(k, false).channels)).toEqual([3, 3]);
    expect(samplesAfter(7, false)).toBe(7);
  });

  it("gives the second Sobol number of a sample bit-reversed: Pascal's triangle modulo 2", () => {
    const numbers = [0, 1, 2, 3, 4].map((k) => passAt(k, false).uniforms.sampleSobol.value);
    expect(numbers).toEqual([0, 1, 3, 2, 5]);
  });

  it("takes the wavelengths in another order that still has every one of 64 once", () => {
    const order = Array.from({ length: 64 }, (_, k) => shuffled(k) & 63);
    expect(new Set(order).size).toBe(64);
    // Neither forwards nor backwards, nor tied to whether the sample is even.
    const evenStays = order.filter((place, k) => place % 2 === k % 2).length;
    expect(evenStays).toBeGreaterThan(16);
    expect(evenStays).toBeLessThan(48);
  });
});
