/** Das Urteil in einer Zeile. */
import type { VerdictWords } from "../verdict.ts";
import { causes } from "./findings.ts";

const COUNTS = ["", "Ein", "Zwei", "Drei", "Vier", "Fünf", "Sechs"];
const counted = (count: number): string => COUNTS[count] ?? String(count);

export const verdict: VerdictWords = {
  uncut: "Noch ist nichts geschliffen",
  meets: "Alle Facetten treffen sich",
  alone: "Keine Facette hat eine Nachbarin, die sie treffen könnte",
  apart: (tiers, tier, by) =>
    tier === null
      ? `${counted(tiers)} Reihen bleiben bis zu ${by} auseinander`
      : `Facetten von ${tier} bleiben bis zu ${by} auseinander`,
  misses: (tiers, tier, by) =>
    tier === null
      ? `${counted(tiers)} Reihen treffen sich nicht, bis zu ${by} daneben`
      : `${tier} trifft nicht, bis zu ${by} daneben`,
  stops: (cause) => `So nicht zu schleifen: ${cause}`,
  look: (cause) => `Bitte ansehen: ${cause}`,
  causes,
};
