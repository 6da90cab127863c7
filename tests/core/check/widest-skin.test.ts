import { expect, it } from "vitest";
import { widthOfPatch } from "../../../src/core/check/widest-skin.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, tier } from "../plan/sample.ts";

it("finds the circle round the pole inside a ring, worked by hand", () => {
  // Facets at arm angle 40 that just touch: their upper rims stand 50 deg - rho from the pole.
  const { planes } = solvePlan(plan([tier("a", 40, 12, { rule: "touch" })]));
  const rho = Math.acos(planes[0].h);
  const [patch] = cutBall(planes).patches;
  const lower = 2 * ((130 * Math.PI) / 180 - rho);
  // The ring only touches, so the skin below it is the same patch and holds the larger circle, round the other pole.
  expect(widthOfPatch(patch, planes)).toBeCloseTo(lower, 9);
});

it("finds the circle between the eight corners of a cube, where three facets leave a triangle of skin", () => {
  const p = plan([
    tier("sides", 0, 4, { rule: "depth", mm: 5.2 }),
    tier("top", 90, 1, { rule: "depth", mm: 5.2 }),
    tier("bottom", 90, 1, { rule: "depth", mm: 5.2 }, 0, "back"),
  ]);
  const { planes } = solvePlan(p);
  const { patches } = cutBall(planes);
  expect(patches).toHaveLength(8);
  // The corner direction stands acos(1 / sqrt 3) from each normal.
  const expected = 2 * (Math.acos(1 / Math.sqrt(3)) - Math.acos(planes[0].h));
  for (const patch of patches) expect(widthOfPatch(patch, planes)).toBeCloseTo(expected, 9);
});

it("says nothing of skin that fewer than three facets border", () => {
  const { planes } = solvePlan(plan([tier("a", 90, 1, { rule: "depth", mm: 2 })]));
  expect(widthOfPatch(cutBall(planes).patches[0], planes)).toBeNull();
});
