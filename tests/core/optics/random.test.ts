import { describe, expect, it } from "vitest";
import { hash, nextRandom, SCATTER_2, sobol } from "../../../src/core/optics/random.ts";
import { chance } from "./helpers.ts";

describe("repeatable chance", () => {
  it("is the published PCG hash (Jarzynski and Olano 2020), computed here in exact integers", () => {
    const M = (1n << 32n) - 1n;
    const exact = (x: bigint): bigint => {
      const state = (x * 747796405n + 2891336453n) & M;
      const word = (((state >> ((state >> 28n) + 4n)) ^ state) * 277803737n) & M;
      return (word >> 22n) ^ word;
    };
    for (const x of [0, 1, 2, 12345, 0x7fffffff, 0x80000000, 0xffffffff])
      expect(BigInt(hash(x))).toBe(exact(BigInt(x)));
  });

  it("gives numbers within 0 <= u < 1 with mean and spread of an even distribution", () => {
    const random = chance(4);
    const values = Array.from({ length: 100_000 }, () => nextRandom(random));
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    const variance = values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length;
    expect(mean).toBeCloseTo(0.5, 2);
    expect(variance).toBeCloseTo(1 / 12, 3);
    expect(Math.min(...values.slice(0, 1000))).toBeGreaterThanOrEqual(0);
    expect(values.every((v) => v < 1)).toBe(true);
  });

  it("puts exactly one of 64 points in a row into each 64th, in every dimension and for every scramble", () => {
    for (let dimension = 0; dimension <= SCATTER_2; dimension++)
      for (const scramble of [0, 1, 99, 0xfffffff0])
        for (const first of [0, 64, 640]) {
          const cells = new Set<number>();
          for (let i = 0; i < 64; i++) cells.add(Math.floor(64 * sobol(first + i, dimension, scramble)));
          expect(cells.size).toBe(64);
        }
  });

  it("fills the pixel's square evenly: one of 16 points in each cell of 4 by 4", () => {
    for (const scramble of [3, 17, 2000]) {
      const cells = new Set<number>();
      for (let i = 0; i < 16; i++)
        cells.add(4 * Math.floor(4 * sobol(i, 0, scramble)) + Math.floor(4 * sobol(i, 1, scramble)));
      expect(cells.size).toBe(16);
    }
  });

  it("leaves wavelength and scattering free of the place in the pixel", () => {
    const count = 4096;
    for (const [a, b] of [
      [0, 2],
      [1, 2],
      [2, 3],
      [2, 4],
      [3, 4],
    ]) {
      let covariance = 0;
      for (let i = 0; i < count; i++) covariance += (sobol(i, a, 5) - 0.5) * (sobol(i, b, 5) - 0.5);
      expect(Math.abs(covariance / count)).toBeLessThan(0.002);
    }
  });
});
