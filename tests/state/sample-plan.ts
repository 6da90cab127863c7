import type { Plan } from "../../src/core/plan/document.ts";
import { planFromData } from "../../src/core/plan/file.ts";

/** A bowl-weight of 32 mm: a belt that touches, a crown that closes to it, a last row on the crown's corners. */
export const samplePlan = (): Plan =>
  planFromData({
    format: "glintwright-plan",
    version: 1,
    name: "Harbour lamp",
    piece: { diameterMm: 32, glass: "borosilicate" },
    rig: { wheelStops: 96 },
    tiers: [
      {
        id: "belt",
        name: "Belt",
        side: "front",
        armAngleDeg: 10,
        count: 12,
        startDeg: 0,
        depth: { rule: "touch" },
      },
      {
        id: "crown",
        name: "Crown",
        side: "front",
        armAngleDeg: 40,
        count: 12,
        startDeg: 15,
        depth: { rule: "close", to: "belt" },
      },
      {
        id: "star",
        name: "Star",
        side: "front",
        armAngleDeg: 65,
        count: 6,
        startDeg: 0,
        depth: { rule: "corners", of: "crown" },
      },
    ],
  }).plan;
