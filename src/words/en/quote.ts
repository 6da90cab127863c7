/** What a quote says, in English. */
import type { QuoteWords } from "../quote.ts";

export const quoteWordsEn: QuoteWords = {
  language: "en",
  title: (name) => `Quote: ${name}`,
  date: (day) => day,
  size: (mm, inch) => `${mm} mm (${inch} in) across before it is cut`,
  glass: (name) => `Glass: ${name}`,
  tax: (amount, share) => `Includes ${amount} of tax at ${share}.`,
  validUntil: (day) => `Valid until ${day}.`,
  picture: (name) => `${name}, as planned`,
  traced: "The piece is not ground yet. The picture is traced from its plan.",
  planned: "The piece is not ground yet.",
};
