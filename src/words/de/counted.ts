import { pluralIn } from "../language.ts";

export const plural = pluralIn("de");
const each = (one: string, other: string) => (count: number) =>
  plural(count, { one: `1 ${one}`, other: `${count} ${other}` });

/** Things with their number before them. */
export const counted = {
  facets: each("Facette", "Facetten"),
  pairs: each("Paar", "Paare"),
  corners: each("Ecke", "Ecken"),
  edges: each("Kante", "Kanten"),
  tiers: each("Reihe", "Reihen"),
  samples: each("Probe", "Proben"),
  minutes: each("Minute", "Minuten"),
  hours: each("Stunde", "Stunden"),
  strokes: each("Hub", "Hübe"),
  discChanges: each("Scheibenwechsel", "Scheibenwechsel"),
};

export const lostPairs = (count: number): string =>
  plural(count, {
    one: "1 Paar, das sich traf, trifft sich nicht mehr.",
    other: `${count} Paare, die sich trafen, treffen sich nicht mehr.`,
  });
