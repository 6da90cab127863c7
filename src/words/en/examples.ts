import { firstExample } from "./first-example.ts";

/** Names and notes of the example plans; the keys are what stands in `../../examples.ts`. */
export const examples = {
  ...firstExample,
  "First ring": "First ring",
  "One ring of twelve. Good for learning how hard to lean and when to stop.":
    "One ring of twelve. Good for learning how hard to lean and when to stop.",
  Ring: "Ring",
  Skylight: "Skylight",
  "A window on top to look in through, and eight facets that lean against it.":
    "A window on top to look in through, and eight facets that lean against it.",
  Window: "Window",
  "Leaning ring": "Leaning ring",
  "Rain barrel": "Rain barrel",
  "Staves around the waist that share edges, the two ends left round to roll the light.":
    "Staves around the waist that share edges, the two ends left round to roll the light.",
  Staves: "Staves",
  Coffer: "Coffer",
  "Six windows, square to each other: four around, one on top, one below.":
    "Six windows, square to each other: four around, one on top, one below.",
  Walls: "Walls",
  Lid: "Lid",
  Floor: "Floor",
  "Three steps up": "Three steps up",
  "Three rings of sixteen, each to the corners of the one below, and a top that closes them.":
    "Three rings of sixteen, each to the corners of the one below, and a top that closes them.",
  "Low ring": "Low ring",
  "Middle ring": "Middle ring",
  "High ring": "High ring",
  Top: "Top",
  "Dew on a dome": "Dew on a dome",
  "Round mirrors that never meet: rings set apart on purpose, skin left between them like a net.":
    "Round mirrors that never meet: rings set apart on purpose, skin left between them like a net.",
  "Lowest row": "Lowest row",
  "Middle row": "Middle row",
  "Upper row": "Upper row",
  Cap: "Cap",
} as const;
