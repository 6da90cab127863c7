/** Things by their number, as sentences and screens count them. */
import { pluralIn } from "../language.ts";

/** The form of a word that goes with a number. */
export const plural = pluralIn("en");
const each = (one: string, other: string) => (count: number) =>
  plural(count, { one: `1 ${one}`, other: `${count} ${other}` });

/** Things with their number before them. */
export const counted = {
  facets: each("facet", "facets"),
  pairs: each("pair", "pairs"),
  corners: each("corner", "corners"),
  edges: each("edge", "edges"),
  tiers: each("tier", "tiers"),
  samples: each("sample", "samples"),
  minutes: each("minute", "minutes"),
  hours: each("hour", "hours"),
  strokes: each("stroke", "strokes"),
  discChanges: each("disc change", "disc changes"),
};

/** What is said of pairs that are lost. */
export const lostPairs = (count: number): string =>
  plural(count, { one: "1 pair that met no longer does.", other: `${count} pairs that met no longer do.` });
