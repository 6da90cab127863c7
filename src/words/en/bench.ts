/** Words of the bench. Lengths and angles come already formatted. */

import { asCut } from "./bench/as-cut.ts";
import { paper } from "./bench/paper.ts";
import { setUp } from "./bench/set-up.ts";
import { tolerance } from "./bench/tolerance.ts";
import { work } from "./bench/work.ts";
import { cautions } from "./cautions.ts";
import { names } from "./names.ts";

export const bench = {
  partsLabel: "Parts of the bench",
  parts: {
    "set-up": "Set-up",
    work: "Work",
    tolerance: "Tolerance",
    "as-cut": "As cut",
    paper: "On paper",
    price: "Price",
  },
  toLap: "At the lap",
  unnamed: "Unnamed plan",
  tierNumber: names.tier,
  facetOf: (tier: string, k: string) => `${tier}, facet ${k}`,
  noTiers: "There is nothing to grind yet. Add a first tier under Plan.",
  counting: "Working it out",
  failed:
    "The bench could not be worked out. Your plan is safe; change something in it or load the page again.",
  notMeasured: "–",
  anyAngle: "any angle in degrees",
  takeCare: "Take care",
  cautions,
  ...setUp,
  ...work,
  ...tolerance,
  ...asCut,
  ...paper,
} as const;
