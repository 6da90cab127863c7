/** What is said of a price: the table that a language fills, and the sentences made with it. */
import { ballKg, type Guess, type Priced, usesUsualHabits } from "../core/offer/offer.ts";
import type { Plan, Stage } from "../core/plan/document.ts";
import type { Language } from "./language.ts";
import { stagesIn } from "./stages.ts";

export interface OfferWords {
  /** BCP 47, for numbers and money. */
  readonly locale: Language;
  readonly labour: (time: string, hourly: string) => string;
  readonly glass: (grams: string, perKg: string) => string;
  readonly consumables: string;
  readonly blank: string;
  readonly overhead: (share: string) => string;
  readonly sum: string;
  readonly tax: (share: string) => string;
  readonly price: (step: string) => string;
  readonly unknown: string;
  readonly time: (hours: number, minutes: number) => string;
  readonly strokesNotCalibrated: (stages: string) => string;
  readonly pieceVanishes: string;
  readonly workNeverEnds: string;
  readonly usualHabits: string;
}

/** A guess as a sentence that begins with what is guessed. */
export function guessInWords({ code, data }: Guess, stages: readonly Stage[], words: OfferWords): string {
  if (code === "piece-vanishes") return words.pieceVanishes;
  if (code === "work-never-ends") return words.workNeverEnds;
  const names = stages.filter(({ id }) => data.stages.includes(id)).map(({ name }) => name);
  return words.strokesNotCalibrated(names.join(", "));
}

/** Names and amounts side by side, line by line. */
function table(rows: readonly (readonly [string, string])[]): string[] {
  const [name, amount] = [0, 1].map((k) => Math.max(...rows.map((row) => row[k].length)));
  return rows.map(([what, much]) => `  ${what.padEnd(name)}  ${much.padStart(amount)}`);
}

/** Amounts that are nothing are left out, but for labour. */
export function offerText({ name, piece, offer, rig }: Plan, priced: Priced, words: OfferWords): string {
  if (!offer) throw new RangeError("the plan names no offer");
  const { locale } = words;
  const format = new Intl.NumberFormat(locale, { style: "currency", currency: offer.currency });
  const money = (amount: number | null): string => (amount === null ? words.unknown : format.format(amount));
  const share = (of = 0): string =>
    new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 2 }).format(of);
  const grams = new Intl.NumberFormat(locale, { maximumSignificantDigits: 3 }).format(1000 * ballKg(piece));
  const minutes = Math.round(priced.minutes ?? 0);
  const time = priced.minutes === null ? words.unknown : words.time(Math.floor(minutes / 60), minutes % 60);
  const rows: (readonly [string, string, boolean])[] = [
    [words.labour(time, money(offer.hourly)), money(priced.labour), true],
    [words.glass(grams, money(offer.glassPerKg ?? 0)), money(priced.glass), priced.glass > 0],
    [words.consumables, money(priced.consumables), priced.consumables > 0],
    [words.blank, money(priced.blank), priced.blank > 0],
    [words.overhead(share(offer.overheadShare)), money(priced.overhead), (offer.overheadShare ?? 0) > 0],
    [words.sum, money(priced.sum), true],
    [words.tax(share(offer.taxShare)), money(priced.tax), (offer.taxShare ?? 0) > 0],
    [words.price(money(offer.roundTo ?? 1)), money(priced.price), true],
  ];
  const lines = rows.filter(([, , shown]) => shown).map(([what, much]) => [what, much] as const);
  const said = priced.guesses.map((guess) => guessInWords(guess, stagesIn(rig, locale), words));
  if (usesUsualHabits(rig)) said.push(words.usualHabits);
  return [name, ...table(lines), ...said].join("\n");
}
