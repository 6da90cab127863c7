/** What a quote says: the table that a language fills. Amounts, sizes and dates come already written. */
import type { Language } from "./language.ts";

export interface QuoteWords {
  readonly language: Language;
  readonly title: (name: string) => string;
  readonly date: (day: string) => string;
  readonly size: (mm: string, inch: string) => string;
  readonly glass: (name: string) => string;
  readonly tax: (amount: string, share: string) => string;
  readonly validUntil: (day: string) => string;
  readonly picture: (name: string) => string;
  readonly traced: string;
  readonly planned: string;
}
