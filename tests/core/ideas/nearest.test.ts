/** A search that begins with a plan begins near it, also where the plan itself is none that the wish takes. */
import { describe, expect, it } from "vitest";
import { fits, genesOf, groundOf } from "../../../src/core/ideas/genes.ts";
import { nearestGenes } from "../../../src/core/ideas/nearest.ts";
import type { IdeaWish } from "../../../src/core/ideas/wish.ts";
import type { DepthRule, Side, Tier } from "../../../src/core/plan/document.ts";

const wish: IdeaWish = {
  format: "glintwright-wish",
  version: 1,
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  sides: "front",
  tiers: [1, 3],
  facets: [1, 30],
  want: { back: 1 },
  across: "minutes",
  up: "back",
};
const tier = (count: number, armAngleDeg: number, depth: DepthRule, side: Side = "front"): Tier => ({
  id: `${side}-${armAngleDeg}-${count}`,
  name: "",
  side,
  armAngleDeg,
  count,
  startDeg: 0,
  depth,
});
const touch: DepthRule = { rule: "touch" };
const ring = tier(8, 40, touch);
const near = (tiers: readonly Tier[], own: Partial<IdeaWish> = {}) => {
  const ground = groundOf({ ...wish, ...own });
  const genes = nearestGenes(ground, tiers);
  if (genes) expect(fits(ground, genes)).toBe(true);
  return genes?.map(({ side, count, halfDegs, rule }) => [side, count, halfDegs / 2, rule.rule]);
};

describe("the candidate nearest to a plan", () => {
  it("is the plan itself where the wish takes it", () => {
    const tiers = [ring, tier(1, 90, { rule: "close", to: ring.id })];
    const ground = groundOf(wish);
    expect(nearestGenes(ground, tiers)).toEqual(genesOf(ground, tiers));
  });

  it("has a count that the wheel has", () => {
    expect(near([tier(7, 40, touch)])).toEqual([["front", 6, 40, "touch"]]);
    expect(near([tier(1, 40, touch)])).toEqual([["front", 3, 40, "touch"]]);
  });

  it("gives a pole that was to touch a width of its own, and has one a side", () => {
    expect(near([ring, tier(1, 90, touch), tier(1, 90, { rule: "depth", mm: 2 })])).toEqual([
      ["front", 8, 40, "touch"],
      ["front", 1, 90, "width"],
    ]);
  });

  it("leaves out what the wish has no room for, and names no tier that is not there", () => {
    const pole = tier(1, 90, { rule: "width", mm: 4 });
    const left = { ...tier(1, 90, { rule: "depth", mm: 2 }), id: "left" };
    const after = tier(6, 60, { rule: "close", to: left.id });
    expect(near([pole, left, after])).toEqual([
      ["front", 1, 90, "width"],
      ["front", 6, 60, "close"],
    ]);
    expect(near([tier(24, 20, touch), ring], { facets: [1, 16] })).toEqual([["front", 16, 20, "touch"]]);
    expect(near([tier(8, 20, touch, "back"), ring])).toEqual([["front", 8, 40, "touch"]]);
    expect(near([ring, ring, ring, ring, ring])?.length).toBe(3);
  });

  it("is none where the wish has none", () => {
    expect(near([tier(8, 20, touch, "back")])).toBeUndefined();
    expect(near([ring], { tiers: [2, 3] })).toBeUndefined();
  });
});
