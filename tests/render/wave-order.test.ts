import { describe, expect, it } from "vitest";
import { STRATA, strata } from "../../src/core/optics/spectrum.ts";
import { WAVES_A_RAY, waveOrder } from "../../src/render/wave-order.ts";

/** Farthest that the mean weight of any group is from white, over all channels. */
function worstCast(order: readonly number[]): number {
  const all = strata();
  let worst = 0;
  for (let first = 0; first < STRATA; first += WAVES_A_RAY)
    for (let c = 0; c < 3; c++) {
      const group = order.slice(first, first + WAVES_A_RAY);
      const mean = group.reduce((sum, j) => sum + all[j].weight[c], 0) / WAVES_A_RAY;
      worst = Math.max(worst, Math.abs(mean - 1));
    }
  return worst;
}

describe("the order of wavelengths", () => {
  const order = waveOrder(strata());

  it("has every stratum once", () => {
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: STRATA }, (_, j) => j));
  });

  it("puts together what is nearer to white than neighbours of the spectrum are", () => {
    const byLength = Array.from({ length: STRATA }, (_, j) => j);
    expect(worstCast(order)).toBeLessThan(0.6);
    expect(worstCast(order)).toBeLessThan(worstCast(byLength) / 3);
  });

  it("is made once for one spectrum", () => {
    expect(waveOrder(strata())).toBe(order);
  });
});
