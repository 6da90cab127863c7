import fc from "fast-check";
import { expect, it } from "vitest";
import { evenCounts, nearestStop, placeFacets, wrapDeg } from "../../../src/core/plan/place.ts";
import { plan, tier } from "./sample.ts";

it("puts facets of a count that divides the wheel exactly evenly", () => {
  const facets = placeFacets(plan([tier("a", 30, 8, { rule: "touch" })]));
  expect(facets.map((f) => f.wheelStop)).toEqual([0, 12, 24, 36, 48, 60, 72, 84]);
  expect(facets.map((f) => f.azimuthDeg)).toEqual([0, 45, 90, 135, 180, 225, 270, 315]);
  expect(facets.map((f) => f.id)).toEqual([1, 2, 3, 4, 5, 6, 7, 8].map((k) => `a/${k}`));
});

it("takes the nearest stop, half-way going up", () => {
  // Worked by hand: 7 facets on 96 stops ask for 0, 13.71, 27.43, 41.14, 54.86, 68.57, 82.29 stops.
  const facets = placeFacets(plan([tier("a", 30, 7, { rule: "touch" })]));
  expect(facets.map((f) => f.wheelStop)).toEqual([0, 14, 27, 41, 55, 69, 82]);
  expect(nearestStop(1.875, 96)).toBe(1);
  expect(nearestStop(359.9, 96)).toBe(0);
  expect(nearestStop(-1.8, 96)).toBe(0);
  expect(nearestStop(-2, 96)).toBe(95);
});

it("keeps every stop and azimuth in range for any start a file admits", () => {
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: 2, max: 400 }),
      fc.integer({ min: 1, max: 120 }),
      (startDeg, stops, count) => {
        for (const f of placeFacets(
          plan([tier("a", 20, count, { rule: "touch" }, startDeg)], {}, { wheelStops: stops }),
        )) {
          expect(Number.isInteger(f.wheelStop) && f.wheelStop! >= 0 && f.wheelStop! < stops).toBe(true);
          expect(f.azimuthDeg >= 0 && f.azimuthDeg < 360).toBe(true);
          expect(f.azimuthDeg).toBeCloseTo((360 * f.wheelStop!) / stops, 9);
        }
      },
    ),
    { seed: 11, numRuns: 300 },
  );
});

it("places exactly with a free protractor", () => {
  const facets = placeFacets(plan([tier("a", 30, 7, { rule: "touch" }, -10)], {}, { wheelStops: null }));
  facets.forEach((f, k) => {
    expect(f.wheelStop).toBeNull();
    expect(f.azimuthDeg).toBeCloseTo(wrapDeg(-10 + (360 * k) / 7), 10);
  });
});

it("mirrors the normal of a back facet and counts its azimuth as seen from the front", () => {
  const [front] = placeFacets(plan([tier("a", 25, 1, { rule: "depth", mm: 1 }, 60)]));
  const [back] = placeFacets(plan([tier("a", 25, 1, { rule: "depth", mm: 1 }, 60, "back")]));
  expect(back.frame.n).toEqual([front.frame.n[0], front.frame.n[1], -front.frame.n[2]]);
  expect(back.frame.across).toEqual(front.frame.across);
});

it("takes across as +y at the pole whatever the azimuth", () => {
  const [pole] = placeFacets(plan([tier("a", 90, 1, { rule: "depth", mm: 1 }, 45)]));
  expect(pole.frame.n).toEqual([0, 0, 1]);
  expect(pole.frame.across[1]).toBe(1);
  expect(pole.azimuthDeg).toBe(45);
});

it("puts stops where a set-up's own zero stands", () => {
  const [f] = placeFacets(
    plan([tier("a", 30, 4, { rule: "touch" }, 0)], {}, { setUps: { front: { zeroDeg: 1 } } }),
  );
  expect(f.wheelStop).toBe(0);
  expect(f.azimuthDeg).toBe(1);
});

it("knows the counts a wheel divides", () => {
  expect(evenCounts(96)).toEqual([1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 96]);
});
