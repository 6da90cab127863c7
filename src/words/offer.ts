/** What is said of a price: the table that a language fills, and the sentences made with it. */
import {
  ballKg,
  type Guess,
  type Priced,
  taxWithin,
  usesUsualHabits,
  type WorkTime,
} from "../core/offer/offer.ts";
import type { Plan, Stage } from "../core/plan/document.ts";
import { coinDigits, moneyIn } from "./currency.ts";
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
  /** Of the price, in the reckoning that a customer reads. */
  readonly rounding: string;
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

/** One line of the reckoning: what it is for, and how much. */
export interface OfferRow {
  readonly id:
    | "labour"
    | "glass"
    | "consumables"
    | "blank"
    | "overhead"
    | "rounding"
    | "sum"
    | "tax"
    | "price";
  readonly what: string;
  readonly much: string;
}

/** Amounts that are nothing are left out, but for labour. @param locale for numbers and money, the words' own where none is given */
export function offerRows(
  { piece, offer }: Pick<Plan, "piece" | "offer">,
  priced: Priced,
  words: OfferWords,
  locale: string = words.locale,
): readonly OfferRow[] {
  if (!offer) throw new RangeError("the plan names no offer");
  const format = moneyIn(locale, offer.currency);
  const money = (amount: number | null): string => (amount === null ? words.unknown : format(amount));
  const share = (of = 0): string =>
    new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 2 }).format(of);
  const grams = new Intl.NumberFormat(locale, { maximumSignificantDigits: 3 }).format(1000 * ballKg(piece));
  const minutes = Math.round(priced.minutes ?? 0);
  const time = priced.minutes === null ? words.unknown : words.time(Math.floor(minutes / 60), minutes % 60);
  const row = (id: OfferRow["id"], what: string, amount: number | null, shown = true): readonly OfferRow[] =>
    shown ? [{ id, what, much: money(amount) }] : [];
  return [
    ...row("labour", words.labour(time, money(offer.hourly)), priced.labour),
    ...row("glass", words.glass(grams, money(offer.glassPerKg ?? 0)), priced.glass, priced.glass > 0),
    ...row("consumables", words.consumables, priced.consumables, priced.consumables > 0),
    ...row("blank", words.blank, priced.blank, priced.blank > 0),
    ...row(
      "overhead",
      words.overhead(share(offer.overheadShare)),
      priced.overhead,
      (offer.overheadShare ?? 0) > 0,
    ),
    ...row("sum", words.sum, priced.sum),
    ...row("tax", words.tax(share(offer.taxShare)), priced.tax, (offer.taxShare ?? 0) > 0),
    ...row("price", words.price(money(offer.roundTo ?? 1)), priced.price),
  ];
}

/**
 * The reckoning as a customer reads it: its column adds up to the coin, since amounts are rounded as they stand there, and sum and tax
 * are those of the price asked for. What rounding up the price adds, less what rounding the lines takes, is a line of its own.
 */
export function quotedRows(
  plan: Pick<Plan, "piece" | "offer">,
  priced: Priced & { readonly price: number },
  words: OfferWords,
  locale: string = words.locale,
): readonly OfferRow[] {
  if (!plan.offer) throw new RangeError("the plan names no offer");
  const { currency, taxShare = 0 } = plan.offer;
  const digits = coinDigits(currency);
  const asRead = (amount: number | null): number => Number((amount ?? 0).toFixed(digits));
  const tax = asRead(taxWithin(priced.price, taxShare));
  const sum = asRead(priced.price - tax);
  const { labour, glass, consumables, blank, overhead } = priced;
  const lines = [labour, glass, consumables, blank, overhead].reduce<number>(
    (all, one) => all + asRead(one),
    0,
  );
  const rounding = asRead(sum - lines);
  const rows = offerRows(plan, { ...priced, sum, tax }, words, locale);
  const line: OfferRow = { id: "rounding", what: words.rounding, much: moneyIn(locale, currency)(rounding) };
  return rows.flatMap((row) => (row.id === "sum" && rounding !== 0 ? [line, row] : [row]));
}

/** What the minutes rest on that nobody has measured, in sentences. */
export function offerSaid({ rig }: Pick<Plan, "rig">, { guesses }: WorkTime, words: OfferWords): string[] {
  const said = guesses.map((guess) => guessInWords(guess, stagesIn(rig, words.locale), words));
  return usesUsualHabits(rig) ? [...said, words.usualHabits] : said;
}

export function offerText(plan: Plan, priced: Priced, words: OfferWords): string {
  const rows = offerRows(plan, priced, words).map(({ what, much }) => [what, much] as const);
  return [plan.name, ...table(rows), ...offerSaid(plan, priced, words)].join("\n");
}
