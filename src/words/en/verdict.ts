/** The verdict in one line. */
import type { VerdictWords } from "../verdict.ts";
import { causes } from "./findings.ts";

const COUNTS = ["", "One", "Two", "Three", "Four", "Five", "Six"];
const counted = (count: number): string => COUNTS[count] ?? String(count);

export const verdict: VerdictWords = {
  uncut: "Nothing is cut yet",
  meets: "All facets meet",
  alone: "No facet has a neighbour to meet",
  apart: (tiers, tier, by) =>
    tier === null
      ? `${counted(tiers)} tiers stay apart by up to ${by}`
      : `Facets of ${tier} stay apart by up to ${by}`,
  misses: (tiers, tier, by) =>
    tier === null
      ? `${counted(tiers)} tiers miss their meets by up to ${by}`
      : `${tier} misses its meets by up to ${by}`,
  stops: (cause) => `Can't be ground: ${cause}`,
  look: (cause) => `Look at this: ${cause}`,
  causes,
};
