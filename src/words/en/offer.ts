/** What is said of a price, in English. */
import type { OfferWords } from "../offer.ts";

export const offerWordsEn: OfferWords = {
  locale: "en",
  labour: (time, hourly) => `Labour, ${time} at ${hourly} an hour`,
  glass: (grams, perKg) => `Glass, ${grams} g at ${perKg} a kilogram`,
  consumables: "Consumables",
  blank: "Blank",
  overhead: (share) => `Overhead, ${share}`,
  sum: "Sum",
  rounding: "Rounding",
  tax: (share) => `Tax, ${share}`,
  price: (step) => `Price, rounded up to ${step}`,
  unknown: "can't be reckoned",
  time: (hours, minutes) => (hours > 0 ? `${hours} h ${minutes} min` : `${minutes} min`),
  strokesNotCalibrated: (stages) =>
    `The minutes are a guess: no test facet says what a stroke takes with ${stages}.`,
  pieceVanishes:
    "The minutes can't be reckoned, so there is no price: this plan leaves nothing of the piece.",
  workNeverEnds:
    "The minutes can't be reckoned, so there is no price: where the piece meets the lap, a stage takes no glass.",
  usualHabits:
    "Minutes for tasks that the plan gives none for are the usual ones (common practice, no source).",
};
