import { describe, expect, it } from "vitest";
import { FEATURES } from "../../../src/core/ideas/taste.ts";
import { NUMERIC_MEASURES, scoreOf } from "../../../src/core/ideas/wish.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { draftOf, gaveWay, gaveWayFrom, WANTS, wishNear, wishOf } from "../../../src/ui/ideas/draft.ts";
import { marksFrom } from "../../../src/ui/ideas/taste-store.ts";
import { createStudio } from "../../../src/ui/studio.ts";

const plan: Plan = {
  format: "glintwright-plan",
  version: 1,
  name: "x",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [1, 2, 3].map((k) => ({
    id: `t${k}`,
    name: "",
    side: "front",
    armAngleDeg: 20 * k,
    count: 8,
    startDeg: 0,
    depth: { rule: "touch" },
    ...(k === 2 ? { asCut: { widthMm: 9 } } : {}),
  })),
  pictures: { p: "data:image/png;base64,AAAA" },
};
const own = draftOf(createStudio({ plan })).getState();

describe("a wish as said on screen", () => {
  it("keeps what is cut and what is pinned, and the pictures inside", () => {
    expect(wishOf(plan, own, 100).keep).toEqual(plan.tiers.slice(0, 2));
    expect(wishOf(plan, { ...own, keep: 3 }, 100).keep).toEqual(plan.tiers);
    expect(wishOf(plan, own, null).pictures).toBe(plan.pictures);
    expect(wishOf(plan, { ...own, leastTiers: 9, mostTiers: 4 }, null).tiers).toEqual([4, 4]);
  });

  it("begins its columns of time with what the least pattern takes, and leaves room for any", () => {
    expect(wishOf(plan, own, 200).limits?.minutes).toEqual([200, 480]);
    expect(wishOf(plan, { ...own, mostHours: 5 }, 200).limits?.minutes).toEqual([150, 300]);
    expect(wishOf(plan, own, null).limits?.minutes).toEqual([0, 480]);
  });

  it.each(Object.keys(WANTS) as (keyof typeof WANTS)[])(
    "%s is worth more than what is wished besides",
    (want) => {
      const wish = wishOf(plan, { ...own, want, also: want === "quick" ? "covered" : "quick" }, null);
      for (const weight of Object.values(wish.want)) expect(Math.abs(weight)).toBeLessThanOrEqual(1);
      const best = Object.fromEntries(
        NUMERIC_MEASURES.map((name) => [
          name,
          ((WANTS[want] as Record<string, number>)[name] ?? 0) > 0 ? 1e9 : 0,
        ]),
      );
      const other = Object.fromEntries(NUMERIC_MEASURES.map((name) => [name, best[name] > 0 ? 0 : 1e9]));
      expect(scoreOf(wish, best)).toBeGreaterThan(scoreOf(wish, { ...other, minutes: 0 }));
    },
  );
});

it("no wish counts images of the inside, which blind eyes did not follow", () => {
  for (const weights of Object.values(WANTS)) expect(weights).not.toHaveProperty("images");
});

describe("a wish near given plans", () => {
  const wish = wishOf(plan, { ...own, mostTiers: 4, mostFacets: 30, mostHours: 2 }, 30);
  const ring = (side: "front" | "back", count: number) => ({
    ...plan.tiers[0],
    id: `${side}${count}`,
    side,
    count,
  });

  it("gives way as far as they need, and asks for no side that none has", () => {
    const near = wishNear(wish, [[1, 2, 3, 4, 5].map((k) => ring("front", 8 + k))], [200]);
    expect(near.sides).toBe("front");
    expect(near.tiers).toEqual([2, 6]);
    expect(near.facets[1]).toBeGreaterThanOrEqual(55);
    expect(near.limits?.minutes).toEqual([30, 250]);
    expect(
      wishNear({ ...wish, sides: "front" }, [[ring("back", 8)], [ring("front", 8)]], [null, 20]),
    ).toMatchObject({
      sides: "both",
      tiers: [1, 4],
      limits: { minutes: [20, 120] },
    });
  });

  it("is the wish itself where they keep it", () => {
    expect(wishNear(wish, [[ring("front", 8), ring("back", 6)]], [90])).toEqual(wish);
    expect(gaveWay(wish, wishNear(wish, [[ring("front", 8), ring("back", 6)]], [90]))).toBeNull();
  });

  it("sets no bound that the wish leaves open", () => {
    const { limits: _, ...open } = wish;
    expect(wishNear(open, [[ring("front", 8)]], [200])).not.toHaveProperty("limits");
    expect(wishNear({ ...wish, limits: { back: [0, 1] } }, [[ring("front", 8)]], [200]).limits).toEqual({
      back: [0, 1],
    });
  });

  it("tells each bound that gave way, what was asked and what held instead, and keeps telling it", () => {
    const asked = { ...wish, facets: [20, 30] as const };
    const told = gaveWay(asked, wishNear(asked, [[ring("front", 12)], [ring("front", 40)]], [20, 200]));
    expect(told).toEqual({
      sides: "front",
      leastTiers: [2, 1],
      leastFacets: [20, 12],
      mostFacets: [30, 50],
      leastTime: [30, 20],
      mostTime: [120, 250],
    });
    expect(gaveWayFrom(JSON.parse(JSON.stringify(told)))).toEqual(told);
    const spoilt = { ...told, sides: "left", mostFacets: [30], mostTime: "x" };
    const { sides: _, mostFacets: __, mostTime: ___, ...rest } = told ?? {};
    expect(gaveWayFrom(spoilt)).toEqual(rest);
    for (const none of [null, 7, "x", {}]) expect(gaveWayFrom(none)).toBeNull();
  });
});

describe("marks that this device kept", () => {
  const good = { features: Array.from({ length: FEATURES }, () => 0.5), isLiked: true };
  it.each([null, "", "{", "7", '"x"', "{}"])("%s are none", (text) => {
    expect(marksFrom(text)).toEqual([]);
  });
  it("are read, and what is none is left out", () => {
    const list = [
      good,
      null,
      { ...good, features: [1] },
      { ...good, isLiked: 1 },
      { ...good, isLiked: false },
    ];
    expect(marksFrom(JSON.stringify(list))).toEqual([good, { ...good, isLiked: false }]);
  });
});
