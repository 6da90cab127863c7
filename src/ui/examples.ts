/**
 * Plans of our own to begin with, from a first ring to a full pattern on both sides. Each meets: tests/ui/examples.test.ts
 * holds them to a report without anything that stands against grinding.
 */
import type { Plan } from "../core/plan/document.ts";
import { FIRST_EXAMPLE, plan, tier } from "./first-example.ts";

export { FIRST_EXAMPLE, freshPlan } from "./first-example.ts";

const firstRing = plan(
  "First ring",
  "One ring of twelve. Good for learning how hard to lean and when to stop.",
  { diameterMm: 28, glass: "soda-lime" },
  [tier("ring", "Ring", "front", 12, 30, 0, { rule: "touch" })],
);

const skylight = plan(
  "Skylight",
  "A window on top to look in through, and eight facets that lean against it.",
  {
    diameterMm: 34,
    glass: "borosilicate",
    inside: [{ kind: "core", diameterMm: 9, rgb: [0.05, 0.18, 0.32], opaque: true, atMm: [0, 0, -3] }],
  },
  [
    tier("window", "Window", "front", 1, 90, 0, { rule: "width", mm: 17 }),
    tier("lean", "Leaning ring", "front", 8, 47, 0, { rule: "close", to: "window" }),
  ],
);

const barrel = plan(
  "Rain barrel",
  "Staves around the waist that share edges, the two ends left round to roll the light.",
  { diameterMm: 32, glass: "borosilicate", dop: { side: "back", diameterMm: 12 } },
  [tier("staves", "Staves", "front", 12, 0, 0, { rule: "edge", mm: 9 })],
);

const coffer = plan(
  "Coffer",
  "Six windows, square to each other: four around, one on top, one below.",
  {
    diameterMm: 36,
    glass: "soda-lime",
    inside: [{ kind: "bubble", diameterMm: 6, atMm: [0, 0, 1] }],
  },
  [
    tier("walls", "Walls", "front", 4, 0, 0, { rule: "touch" }),
    tier("lid", "Lid", "front", 1, 90, 0, { rule: "depth", mm: 5.27 }),
    tier("floor", "Floor", "back", 1, 90, 0, { rule: "depth", mm: 5.27 }),
  ],
);

const threeSteps = plan(
  "Three steps up",
  "Three rings of sixteen, each to the corners of the one below, and a top that closes them.",
  { diameterMm: 40, glass: "borosilicate", dop: { side: "back", diameterMm: 14 }, inkMarkDeg: 0 },
  [
    tier("low", "Low ring", "front", 16, 14, 0, { rule: "edge", mm: 3 }),
    tier("middle", "Middle ring", "front", 16, 34, 3, { rule: "corners", of: "low" }),
    tier("high", "High ring", "front", 16, 54, 0, { rule: "corners", of: "middle" }),
    tier("top", "Top", "front", 1, 90, 0, { rule: "close", to: "high" }),
  ],
);

const dew = plan(
  "Dew on a dome",
  "Round mirrors that never meet: rings set apart on purpose, skin left between them like a net.",
  { diameterMm: 30, glass: "soda-lime", inkMarkDeg: 0 },
  [
    tier("row1", "Lowest row", "front", 12, 6, 0, { rule: "gap", mm: 0.8 }),
    tier("row2", "Middle row", "front", 12, 31, 4, { rule: "gap", mm: 0.8 }),
    tier("row3", "Upper row", "front", 6, 57, 0, { rule: "gap", mm: 0.8 }),
    tier("cap", "Cap", "front", 1, 90, 0, { rule: "width", mm: 7.5 }),
  ],
);

/** In order of skill; `first` is what a new person sees. */
export const EXAMPLES: readonly Plan[] = [
  firstRing,
  dew,
  barrel,
  skylight,
  coffer,
  threeSteps,
  FIRST_EXAMPLE,
];
/** What the way round is played on: whatever angle one types, its facets go on touching. */
export const GUIDE_EXAMPLE: Plan = firstRing;
