/** A quote on one page: the piece with its picture, size, glass and price, the artist's own terms, date and how long it holds. */

import { taxWithin } from "../core/offer/offer.ts";
import type { Maker, Offer, Piece } from "../core/plan/document.ts";
import { moneyIn } from "../words/currency.ts";
import { formatNumber, MM_PER_INCH } from "../words/format.ts";
import type { OfferRow } from "../words/offer.ts";
import type { QuoteWords } from "../words/quote.ts";
import { html, type Markup } from "./markup.ts";
import { type FacePart, faceRules, SHEET_FACE } from "./sheet-face.ts";
import type { Paper } from "./sheet-style.ts";

export interface QuoteMatter {
  readonly name: string;
  readonly piece: Pick<Piece, "diameterMm">;
  readonly glass: string;
  readonly maker: Maker | undefined;
  readonly offer: Offer;
  /** With tax. */
  readonly price: number;
  /** How the price comes about; empty where the customer isn't to read it. */
  readonly rows: readonly OfferRow[];
  /** A traced picture as its own address; null where none could be made. */
  readonly picture: string | null;
  /** Today, milliseconds since 1970. */
  readonly today: number;
  readonly words: QuoteWords;
  /** For numbers, money and dates. */
  readonly locale: string;
  readonly paper: Paper;
  readonly face: readonly FacePart[];
}

const PAPER_SIZE: Readonly<Record<Paper, string>> = { a4: "210mm 297mm", letter: "215.9mm 279.4mm" };
const DAY_MS = 86_400_000;
/** A quote without days of its own holds for so many. */
export const USUAL_VALID_DAYS = 30;

const style = (paper: Paper, face: readonly FacePart[]): string => `${faceRules(face)}
@page { size: ${PAPER_SIZE[paper]}; margin: 18mm; }
html { font: 11pt/1.45 "${SHEET_FACE}", sans-serif; color: #000; }
body { margin: 0; }
.quote { display: flex; flex-direction: column; gap: 6mm; overflow-wrap: anywhere; }
.quote > * { margin: 0; }
.quote header { display: flex; justify-content: space-between; align-items: start; gap: 8mm; }
.quote header p { margin: 0; }
.quote .mark { max-width: 45mm; max-height: 24mm; }
.quote .maker { font-size: 14pt; font-weight: 600; }
.quote h1 { font-size: 22pt; font-weight: 600; line-height: 1.15; }
.quote .piece { display: flex; gap: 8mm; align-items: center; }
.quote .piece img { width: 84mm; height: 84mm; flex: none; }
.quote .piece p { margin: 0 0 3mm; }
.quote .price { font-size: 20pt; font-weight: 600; font-variant-numeric: tabular-nums; }
.quote .what { font-size: 12pt; }
.quote table { border-collapse: collapse; width: 100%; }
.quote td { padding: 1mm 0; border-top: 0.3mm solid #888; }
.quote td + td { text-align: right; white-space: nowrap; padding-left: 6mm; font-variant-numeric: tabular-nums; }
.quote .terms { white-space: pre-line; }
.quote .soft { font-size: 9.5pt; color: #333; }`;

const tableOf = (rows: readonly OfferRow[]): Markup | null =>
  rows.length === 0
    ? null
    : html`<table>${rows.map(({ what, much }) => html`<tr><td>${what}</td><td>${much}</td></tr>`)}</table>`;

export function quoteHtml(matter: QuoteMatter): string {
  const { name, piece, glass, maker, offer, price, rows, picture, today, words, locale, paper, face } =
    matter;
  const money = moneyIn(locale, offer.currency);
  const day = (at: number) => new Intl.DateTimeFormat(locale, { dateStyle: "long" }).format(at);
  const mm = formatNumber(piece.diameterMm, locale, piece.diameterMm % 1 === 0 ? 0 : 1);
  const inch = formatNumber(piece.diameterMm / MM_PER_INCH, locale, 2);
  const { taxShare = 0, validDays = USUAL_VALID_DAYS, terms = "" } = offer;
  const percent = new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 2 }).format(
    taxShare,
  );
  const tax = taxShare > 0 ? words.tax(money(taxWithin(price, taxShare)), percent) : "";
  const body = html`<article class="quote">
<header><div>${maker?.name ? html`<p class="maker">${maker.name}</p>` : null}<p>${words.date(day(today))}</p></div>${
    maker?.mark ? html`<img class="mark" src="${maker.mark}" alt="">` : null
  }</header>
<h1>${words.title(name)}</h1>
<div class="piece">${picture ? html`<img src="${picture}" alt="${words.picture(name)}">` : null}<div>
<p class="what">${words.size(mm, inch)}</p><p class="what">${words.glass(glass)}</p>
<p class="price">${money(price)}</p>${tax ? html`<p>${tax}</p>` : null}
<p>${words.validUntil(day(today + validDays * DAY_MS))}</p></div></div>
${tableOf(rows)}
${terms ? html`<p class="terms">${terms}</p>` : null}
<p class="soft">${picture ? words.traced : words.planned}</p>
</article>`;
  return `<!doctype html>
${html`<html lang="${words.language}"><head><meta charset="utf-8"><title>${words.title(name)}</title>`.markup}
<style>${style(paper, face)}</style></head><body>
${body.markup}
</body></html>
`;
}
