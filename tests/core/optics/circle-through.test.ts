import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { circleThrough, pointsOn, turnsOf } from "../../../src/core/optics/circle-through.ts";

describe("the circle through three points", () => {
  it("is the one that they were taken from", () => {
    const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        within(-2000, 2000),
        within(-2000, 2000),
        within(8, 1500),
        within(0, 6),
        (x, y, r, turn) => {
          const circle = { x, y, r };
          const points = pointsOn(circle, [turn, turn + 1.1, turn + 3.9]);
          const found = circleThrough(points, 1e5);
          expect(found?.x).toBeCloseTo(x, 6);
          expect(found?.y).toBeCloseTo(y, 6);
          expect(found?.r).toBeCloseTo(r, 6);
          turnsOf(circle, points).forEach((direction, k) => {
            expect(Math.cos(direction - turn - [0, 1.1, 3.9][k])).toBeCloseTo(1, 9);
          });
        },
      ),
      { numRuns: 300, seed: 4 },
    );
  });

  it("is none where they lie on a line, or on one another, or nearly so", () => {
    expect(
      circleThrough(
        [
          [0, 0],
          [10, 10],
          [25, 25],
        ],
        1e4,
      ),
    ).toBeNull();
    expect(
      circleThrough(
        [
          [3, 4],
          [3, 4],
          [9, 1],
        ],
        1e4,
      ),
    ).toBeNull();
    expect(
      circleThrough(
        [
          [3, 4],
          [3, 4],
          [3, 4],
        ],
        1e4,
      ),
    ).toBeNull();
    expect(
      circleThrough(
        [
          [0, 0],
          [100, 0.01],
          [200, 0],
        ],
        1e4,
      ),
    ).toBeNull();
  });
});
