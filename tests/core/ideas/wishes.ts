/** Wishes as people make them, from a number. */

import { seeded } from "../../../src/core/bench/chances/chance.ts";
import type { IdeaWish, MeasureName } from "../../../src/core/ideas/wish.ts";

/** Measures that cost no rays, or few. */
const AXES = ["minutes", "skinShare", "facets", "leastFacetMm", "back", "images"] as const;

export function wishOf(seed: number): IdeaWish {
  const random = seeded(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const across: MeasureName = pick(AXES);
  const up = pick(AXES.filter((name) => name !== across));
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
