/** Wishes as people make them, from a number. */

import { seeded } from "../../../src/core/bench/chances/chance.ts";
import type { IdeaWish, MeasureName } from "../../../src/core/ideas/wish.ts";

/** Measures that cost no rays, or few; and all of them. */
const QUICK = ["minutes", "skinShare", "facets", "leastFacetMm", "back", "images"] as const;

/** @param axes what the wall may be spread over */
export function wishOf(seed: number, axes: readonly MeasureName[] = QUICK): IdeaWish {
  const random = seeded(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const across = pick(axes);
  const up = pick(axes.filter((name) => name !== across));
  const keep = random() < 0.3;
  return {
    format: "glintwright-wish",
    version: 1,
    piece: {
      diameterMm: pick([18, 25, 30, 42]),
      glass: pick(["borosilicate", "soda-lime"] as const),
      inside: [{ kind: "core", diameterMm: 5, rgb: [1, 0, 0] }],
      ...(random() < 0.5 ? { dop: { side: "back", diameterMm: 8 } as const } : {}),
    },
    rig: {
      wheelStops: pick([96, 64, 80, 72, null]),
      ...(random() < 0.3 ? { setUps: { back: { zeroDeg: 7.5 } } } : {}),
    },
    sides: pick(["front", "both"] as const),
    tiers: pick([
      [1, 4],
      [2, 5],
      [3, 6],
    ] as const),
    facets: pick([
      [5, 40],
      [12, 70],
      [20, 48],
    ] as const),
    ...(keep
      ? {
          keep: [
            {
              id: "t2",
              name: "kept",
              side: "front",
              armAngleDeg: 21.3,
              count: 8,
              startDeg: 0,
              depth: { rule: "touch" },
            } as const,
          ],
        }
      : {}),
    ...(random() < 0.3 ? { meets: "rings" as const } : {}),
    limits: random() < 0.5 ? { minutes: [0, 700] } : { skinShare: [0.05, 0.9], leastFacetMm: [1, 30] },
    want: { back: pick([1, 0.5]), minutes: pick([-0.4, 0]) },
    across,
    up,
  };
}

/** A wish that nothing can keep, and what stands in its way. */
export interface VainWish {
  readonly wish: IdeaWish;
  readonly limit: string;
}

/** Wishes that contradict themselves, from a number: one bound of an open wish is set where no piece comes. */
export function vainWishOf(seed: number): VainWish {
  const { keep: _, ...wish } = wishOf(seed);
  const diameter = wish.piece.diameterMm;
  const ways: readonly VainWish[] = [
    { wish: { ...wish, limits: { minutes: [0, 1] } }, limit: "minutes" },
    { wish: { ...wish, limits: { minutes: [0, 5000], inside: [0.995, 1] } }, limit: "inside" },
    { wish: { ...wish, limits: { leastFacetMm: [diameter, 2 * diameter] } }, limit: "leastFacetMm" },
    { wish: { ...wish, limits: { skinShare: [0.999, 1], minutes: [0, 9000] } }, limit: "skinShare" },
    { wish: { ...wish, facets: [900, 950] }, limit: "facets" },
    { wish: { ...wish, rig: { wheelStops: 97 } }, limit: "facets" },
    { wish: { ...wish, limits: { facets: [wish.facets[1] + 1, 200] } }, limit: "facets" },
    { wish: { ...wish, limits: { tiers: [wish.tiers[1] + 1, 20] } }, limit: "tiers" },
    { wish: { ...wish, limits: { sparkle: [80, 100] } }, limit: "sparkle" },
  ];
  return ways[seed % ways.length];
}
