import { describe, expect, it } from "vitest";
import { makeTimeLeft } from "../../../src/ui/look/time-left.ts";

/** What is told of a job at shares, each with the second at which it is told. */
function told(steps: readonly (readonly [share: number, second: number])[]): (number | null)[] {
  let ms = 0;
  const left = makeTimeLeft(() => ms);
  return steps.map(([share, second]) => {
    ms = 1000 * second;
    return left(share);
  });
}

describe("the time that a job under way still takes", () => {
  it("goes by what was done since it first told a share: what came before is no part of its pace", () => {
    // nine seconds of making ready, then a hundredth in each
    const left = told([
      [0.01, 9],
      [0.11, 19],
      [0.51, 59],
      [1, 108],
    ]);
    expect(left[0]).toBeNull();
    for (const [k, seconds] of [89, 49, 0].entries()) expect(left[k + 1]).toBeCloseTo(1000 * seconds, 6);
  });

  it("gets longer where the device is slower than it was", () => {
    const [, , before, after] = told([
      [0, 0],
      [0.1, 10],
      [0.2, 20],
      [0.3, 60],
    ]);
    expect(before).toBeCloseTo(80_000, 6);
    expect(after).toBeCloseTo(140_000, 6);
  });

  it("says nothing by too little: a hundredth done, or half a second gone", () => {
    expect(
      told([
        [0, 0],
        [0.01, 8],
      ]),
    ).toEqual([null, null]);
    expect(
      told([
        [0, 0],
        [0.4, 0.5],
      ]),
    ).toEqual([null, null]);
  });
});
