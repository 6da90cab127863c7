/** What is said of a price, in German. */
import type { OfferWords } from "../offer.ts";

export const offerWordsDe: OfferWords = {
  locale: "de",
  labour: (time, hourly) => `Arbeit, ${time} zu ${hourly} die Stunde`,
  glass: (grams, perKg) => `Glas, ${grams} g zu ${perKg} das Kilogramm`,
  consumables: "Verbrauch",
  blank: "Rohling",
  overhead: (share) => `Gemeinkosten, ${share}`,
  sum: "Summe",
  rounding: "Rundung",
  tax: (share) => `Steuer, ${share}`,
  price: (step) => `Preis, aufgerundet auf ${step}`,
  unknown: "nicht zu berechnen",
  time: (hours, minutes) => (hours > 0 ? `${hours} Std. ${minutes} Min.` : `${minutes} Min.`),
  strokesNotCalibrated: (stages) =>
    `Die Minuten sind geschätzt: Keine Probefacette sagt, was ein Hub nimmt, mit ${stages}.`,
  pieceVanishes:
    "Die Minuten lassen sich nicht berechnen, also gibt es keinen Preis: Dieser Plan lässt nichts vom Stück übrig.",
  workNeverEnds:
    "Die Minuten lassen sich nicht berechnen, also gibt es keinen Preis: Wo das Stück die Scheibe berührt, nimmt eine Stufe kein Glas.",
  usualHabits:
    "Minuten für Arbeiten, zu denen der Plan nichts sagt, sind die üblichen (gängige Praxis, ohne Quelle).",
};
