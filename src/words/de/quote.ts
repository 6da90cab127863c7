/** What a quote says, in German. */
import type { QuoteWords } from "../quote.ts";

export const quoteWordsDe: QuoteWords = {
  language: "de",
  title: (name) => `Angebot: ${name}`,
  date: (day) => day,
  size: (mm, inch) => `${mm} mm (${inch} Zoll) im Durchmesser vor dem Schliff`,
  glass: (name) => `Glas: ${name}`,
  tax: (amount, share) => `Darin ${amount} Steuer zu ${share}.`,
  validUntil: (day) => `Gültig bis ${day}.`,
  picture: (name) => `${name}, wie geplant`,
  traced: "Das Stück ist noch nicht geschliffen. Das Bild ist aus seinem Plan berechnet.",
  planned: "Das Stück ist noch nicht geschliffen.",
};
