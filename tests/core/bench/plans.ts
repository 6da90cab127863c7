/** Small plans for the bench's tests. */
import type { Plan, Rig, Tier } from "../../../src/core/plan/document.ts";

export const tier = (own: Partial<Tier> = {}): Tier => ({
  id: "belt",
  name: "Belt",
  side: "front",
  armAngleDeg: 20,
  count: 12,
  startDeg: 0,
  depth: { rule: "depth", mm: 0.5 },
  ...own,
});

export const plan = (tiers: readonly Tier[], rig: Partial<Rig> = {}, diameterMm = 30): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "test piece",
  piece: { diameterMm, glass: "borosilicate" },
  rig: { wheelStops: 96, ...rig },
  tiers,
});

/** A rig with round numbers: arm 150 to 260 mm, pivot 260 mm from the lap's axis, good band 40 to 80 mm. */
export const RIG = {
  arm: { lengthMm: [150, 260], pivotToAxisMm: 260, pivotHeightMm: [0, 250] },
  lap: { diameterMm: 200, bandMm: [40, 80], rpm: 300 },
} as const satisfies Partial<Rig>;
