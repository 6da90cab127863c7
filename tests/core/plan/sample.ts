/** Small plans for tests: a 30 mm marble on a 96-stop wheel unless said otherwise. */
import type { DepthRule, Piece, Plan, Rig, Side, Tier } from "../../../src/core/plan/document.ts";

export const tier = (
  id: string,
  armAngleDeg: number,
  count: number,
  depth: DepthRule,
  startDeg = 0,
  side: Side = "front",
): Tier => ({
  id,
  name: id,
  side,
  armAngleDeg,
  count,
  startDeg,
  depth,
});

export const plan = (tiers: readonly Tier[], piece: Partial<Piece> = {}, rig: Partial<Rig> = {}): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "sample",
  piece: { diameterMm: 30, glass: "borosilicate", ...piece },
  rig: { wheelStops: 96, ...rig },
  tiers,
});
