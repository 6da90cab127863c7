/** The plans of 300 seeds against brute force, as tests; in several files, so that no core waits for one that has them all. */
import { describe, expect, it } from "vitest";
import { planOf } from "./generator.ts";
import { judge } from "./judge.ts";

const PLANS = 300;
const CHUNKS = 3;
/** One plan in so many is also carried to the bench and meshed. */
const SLOW_EVERY = 60;
/** And of one in so many what the wheel costs is reckoned, a second solution and cut, to see that it can be. */
const WHEEL_EVERY = 4;

/** @param firstSeed the first of 300 */
export function judgeSeedsFrom(firstSeed: number): void {
  const chunks = Array.from({ length: CHUNKS }, (_, k) => firstSeed + (k * PLANS) / CHUNKS);
  describe("plans as people make them agree with brute force in edges, areas, volume and skin", () => {
    it.each(chunks)("from seed %i", (first) => {
      const wrong = Array.from({ length: PLANS / CHUNKS }, (_, k) => first + k).flatMap((seed) => {
        const { refused, faults } = judge(planOf(seed), seed % SLOW_EVERY === 0, seed % WHEEL_EVERY === 0);
        return refused ? [`${seed}: refused`] : faults.map((fault) => `${seed}: ${fault}`);
      });
      expect(wrong).toEqual([]);
    });
  });
}
