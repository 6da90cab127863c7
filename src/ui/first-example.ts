/** What the page opens on when nothing is kept yet, and what a new plan begins with. The other examples come when they are asked for. */
import type { Plan, Tier } from "../core/plan/document.ts";

const WHEEL = 96;
export const tier = (
  id: string,
  name: string,
  side: Tier["side"],
  count: number,
  armAngleDeg: number,
  startStop: number,
  depth: Tier["depth"],
): Tier => ({ id, name, side, armAngleDeg, count, startDeg: (360 * startStop) / WHEEL, depth });

export const plan = (name: string, notes: string, piece: Plan["piece"], tiers: readonly Tier[]): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name,
  notes,
  piece,
  rig: { wheelStops: WHEEL },
  tiers,
});

export const FIRST_EXAMPLE: Plan = plan(
  "Both banks",
  "The same river from two sides: rings that meet at the waist, a table in front, a foot behind.",
  {
    diameterMm: 38,
    glass: "borosilicate",
    inkMarkDeg: 0,
    inside: [
      {
        kind: "ribbon",
        widthMm: 8,
        lengthMm: 18,
        thicknessMm: 1.6,
        turns: 1.25,
        rgb: [0.02, 0.2, 0.26],
        rgb2: [0.75, 0.55, 0.2],
        fadeMm: 0.35,
        milky: 1,
        irregularity: 0.35,
      },
    ],
  },
  [
    tier("waist", "Waist", "front", 12, 0, 0, { rule: "edge", mm: 5 }),
    tier("shoulder", "Shoulder", "front", 12, 24, 4, { rule: "corners", of: "waist" }),
    tier("collar", "Collar", "front", 12, 47, 0, { rule: "corners", of: "shoulder" }),
    tier("crown", "Crown", "front", 12, 66, 4, { rule: "corners", of: "collar" }),
    tier("table", "Table", "front", 1, 90, 0, { rule: "corners", of: "crown" }),
    tier("hip", "Hip", "back", 12, 26, 4, { rule: "corners", of: "waist" }),
    tier("keel", "Keel", "back", 12, 56, 0, { rule: "corners", of: "hip" }),
    tier("foot", "Foot", "back", 1, 90, 0, { rule: "corners", of: "keel" }),
  ],
);

/** A plan to begin with: an uncut marble. */
export const freshPlan = (name: string): Plan =>
  plan(name, "", { diameterMm: 30, glass: "borosilicate", inkMarkDeg: 0 }, []);
