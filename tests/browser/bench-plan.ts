/** A plan for the bench's browser tests: four tiers, two of which follow another, arm, lap and three calibrated stages. */
import type { Plan, Side, Tier } from "../../src/core/plan/document.ts";

export const BENCH_PLAN: Plan = {
  format: "glintwright-plan",
  version: 1,
  name: "Harbour lantern",
  piece: { diameterMm: 32, glass: "borosilicate", dop: { side: "back", diameterMm: 13, lengthMm: 30 } },
  rig: {
    wheelStops: 96,
    arm: { lengthMm: [120, 260], pivotToAxisMm: 200, pivotHeightMm: [5, 260] },
    lap: { diameterMm: 200, bandMm: [35, 88], rpm: 280 },
    stages: [
      {
        id: "rough",
        name: "Coarse diamond",
        grainUm: 70,
        calibration: [{ strokes: 30, widthMm: 5, radiusMm: 60 }],
      },
      {
        id: "fine",
        name: "Fine diamond",
        grainUm: 15,
        discMm: 1,
        calibration: [{ strokes: 40, widthMm: 5, fromWidthMm: 4.8 }],
      },
      { id: "polish", name: "Cerium on felt", grainUm: 1.5, discMm: 3 },
    ],
  },
  tiers: [
    {
      id: "walls",
      name: "Walls",
      side: "front",
      armAngleDeg: 8,
      count: 8,
      startDeg: 0,
      depth: { rule: "edge", mm: 4 },
    },
    {
      id: "eaves",
      name: "Eaves",
      side: "front",
      armAngleDeg: 40,
      count: 8,
      startDeg: 22.5,
      depth: { rule: "corners", of: "walls" },
    },
    {
      id: "roof",
      name: "Roof",
      side: "front",
      armAngleDeg: 64,
      count: 4,
      startDeg: 0,
      depth: { rule: "corners", of: "eaves" },
    },
    {
      id: "cap",
      name: "Cap",
      side: "front",
      armAngleDeg: 90,
      count: 1,
      startDeg: 0,
      depth: { rule: "width", mm: 6 },
    },
  ],
};

const ring = (side: Side, name: string, armAngleDeg: number, count: number, startDeg = 0): Tier => ({
  id: `${side}-${name.toLowerCase()}`,
  name: side === "front" ? name : `Back ${name.toLowerCase()}`,
  side,
  armAngleDeg,
  count,
  startDeg,
  depth: { rule: "touch" },
});

/** As much as two pages are to hold: 120 facets in seven tiers on both sides, five abrasives. */
export const LARGE_PLAN: Plan = {
  ...BENCH_PLAN,
  name: "Breakwater",
  piece: { ...BENCH_PLAN.piece, diameterMm: 38 },
  rig: {
    ...BENCH_PLAN.rig,
    stages: [
      ...(BENCH_PLAN.rig.stages ?? []).slice(0, 2),
      { id: "pre", name: "Resin pre-polish", grainUm: 6 },
      { id: "felt", name: "Tin oxide on felt", grainUm: 2 },
      ...(BENCH_PLAN.rig.stages ?? []).slice(2),
    ],
  },
  tiers: [
    ring("front", "Walls", 5, 24),
    ring("front", "Eaves", 20, 24, 7.5),
    ring("front", "Shoulders", 35, 16),
    ring("front", "Ribs", 48, 12, 15),
    ring("back", "Walls", 8, 24),
    ring("back", "Eaves", 23, 12),
    ring("back", "Shoulders", 38, 8),
  ],
};

const next = (
  side: Side,
  id: string,
  armAngleDeg: number,
  count: number,
  startDeg: number,
  to: string,
): Tier => ({
  id,
  name: id.charAt(0).toUpperCase() + id.slice(1),
  side,
  armAngleDeg,
  count,
  startDeg,
  depth: { rule: "close", to },
});

/** Eight tiers that all meet, five before the piece is turned over and three after. */
export const EIGHT_PLAN: Plan = {
  ...BENCH_PLAN,
  name: "Eight ways home",
  piece: { ...BENCH_PLAN.piece, diameterMm: 36 },
  tiers: [
    { ...next("front", "belt", 0, 16, 0, ""), depth: { rule: "edge", mm: 7 } },
    next("front", "eaves", 25, 16, 11.25, "belt"),
    next("front", "shoulder", 44, 16, 0, "eaves"),
    next("front", "crown", 62, 8, 0, "shoulder"),
    next("front", "table", 90, 1, 0, "crown"),
    next("back", "bilge", 27, 16, 11.25, "belt"),
    next("back", "hull", 45, 16, 0, "bilge"),
    next("back", "keel", 60, 8, 0, "hull"),
  ],
};

/** Eight tiers of counts that the wheel can't space evenly: every stop has a width of its own. */
export const UNEVEN_PLAN: Plan = {
  ...BENCH_PLAN,
  name: "Shingle",
  piece: { ...BENCH_PLAN.piece, diameterMm: 40 },
  tiers: [14, 11, 13, 9, 7, 10, 17, 15].map((count, i) => {
    const side = i < 4 ? "front" : "back";
    return ring(side, `Tier ${i + 1}`, 5 + 17 * (i % 4), count, 3 * i);
  }),
};

/** More than two pages hold: ten rings of 24, five abrasives. */
export const TOO_MUCH_PLAN: Plan = {
  ...LARGE_PLAN,
  name: "Flood",
  piece: { ...LARGE_PLAN.piece, diameterMm: 60 },
  tiers: Array.from({ length: 10 }, (_, i) =>
    ring(i < 5 ? "front" : "back", `Ring ${i + 1}`, 4 + 14 * (i % 5), 24),
  ),
};

/**
 * What a rig can say of tiers: the chuck would hit the lap (walls), the pivot can't go so high (roof), a flat at the pole (cap), a
 * shallow back tier that is cut before turning (rim), four of whose facets the walls have taken already.
 */
export const RIG_PLAN: Plan = {
  ...BENCH_PLAN,
  name: "Slipway",
  piece: { ...BENCH_PLAN.piece, dop: { side: "back", diameterMm: 13, lengthMm: 12, chuckDiameterMm: 34 } },
  rig: {
    ...BENCH_PLAN.rig,
    arm: { lengthMm: [120, 260], pivotToAxisMm: 200, pivotHeightMm: [0, 180] },
    setUps: { back: { dop: { diameterMm: 10, lengthMm: 30, chuckDiameterMm: 40 } } },
  },
  tiers: [
    { ...BENCH_PLAN.tiers[0], armAngleDeg: 0 },
    BENCH_PLAN.tiers[1],
    { ...BENCH_PLAN.tiers[2], count: 7, depth: { rule: "touch" } },
    BENCH_PLAN.tiers[3],
    { ...ring("back", "Rim", 5, 12), name: "Rim", depth: { rule: "depth", mm: 0.6 } },
    { ...ring("back", "Keel", 45, 8, 22.5), name: "Keel" },
  ],
};
