/**
 * How large the sheet's type may be so that everything stands on two pages. The heights of its parts are reckoned from the
 * text and the measures of the style, without a browser: a part that can't be broken goes to the next page whole.
 */
import { CHECK_BAR_MM, type Gauge } from "./sheet-drawings.ts";
import { inColumns, layoutOf, type TierLayout } from "./sheet-layout.ts";
import { BOLD, linesOf, textEm } from "./sheet-letters.ts";
import {
  CHECK_LINE,
  HEADING,
  lineMm,
  MM_PER_POINT,
  measuresAt,
  type Paper,
  pageMm,
  RULE_MM,
  type SheetType,
  SIZES,
  TITLE,
  WEDGE,
} from "./sheet-style.ts";
import type { TierText } from "./sheet-tier.ts";

export interface SheetText {
  readonly name: string;
  readonly about: string;
  /** Whether the piece meets; null where it can't be ground. */
  readonly verdict: string | null;
  /** Why it can't be ground as planned; null where it can. */
  readonly stop: string | null;
  readonly before: string;
  readonly preparations: readonly string[];
  readonly cautionsTitle: string;
  readonly cautions: readonly string[];
  /** What holds at the lap for all tiers. */
  readonly rules: string;
  /** What signs on the sheet mean. */
  readonly legend: string;
  readonly tiers: readonly {
    readonly text: TierText;
    /** Said before the tier when the piece is turned over for it. */
    readonly turn: { readonly title: string; readonly text: string; readonly care: string } | null;
  }[];
  readonly gaugesTitle: string;
  readonly gauges: readonly Gauge[];
  /** What stands beside the bar to check with a ruler. */
  readonly checkBar: string;
  readonly notes: string;
}

/** The sheet's text with how it is set. */
export interface SheetFit {
  readonly type: SheetType;
  readonly tiers: readonly TierLayout[];
  /** False when the smallest type that can be read at arm's length needs more than two pages. */
  readonly fits: boolean;
}

const MOST_PAGES = 2;

/** Heights of text in both sizes, mm. */
function ruler(type: SheetType) {
  const { lineHeight, paragraphMm, headingMm } = measuresAt(type);
  const em = { lap: type.lapPt * MM_PER_POINT, rest: type.restPt * MM_PER_POINT };
  const paragraph = (size: number) => (text: string, widthMm: number) =>
    linesOf(text, widthMm / size) * size * lineHeight + paragraphMm;
  return {
    em,
    rest: paragraph(em.rest),
    lap: paragraph(em.lap),
    /** The line above a part, and the white around its words. */
    runIn: RULE_MM + headingMm + paragraphMm,
    heading: (size: number) => RULE_MM + headingMm + HEADING * size * lineHeight + paragraphMm,
  };
}

/** Rows that things of these widths take when they are set one after the other. */
function rowsOf(widths: readonly number[], line: number): number {
  let [rows, used] = [1, 0];
  for (const width of widths) {
    if (used > 0 && used + width > line) {
      rows++;
      used = 0;
    }
    used += width;
  }
  return rows;
}

function headMm(text: SheetText, line: number, type: SheetType): number {
  const { em, rest, lap, runIn } = ruler(type);
  const { paragraphMm } = measuresAt(type);
  /** With its wedge before it. */
  const lapBold = (said: string) => lap(said, (line - WEDGE * em.lap) / BOLD);
  const name = textEm(text.name, BOLD) * TITLE * em.lap;
  const about = textEm(text.about) * em.lap;
  const title =
    linesOf(text.name, line / (TITLE * em.lap), BOLD) * TITLE * em.lap * 1.1 +
    (name + 5 + about > line ? lap(text.about, line) - paragraphMm : 0) +
    paragraphMm;
  return (
    title +
    (text.stop ? lapBold(text.stop) : 0) +
    runIn +
    checksHigh(text, line, type) +
    runIn +
    rest([text.cautionsTitle, ...text.cautions].join(" \u2022  "), line) +
    rest(text.verdict ? `${text.verdict} ${text.legend}` : text.legend, line) +
    lap(text.rules, line)
  );
}

/** Boxes to tick before the first cut, after their heading. */
function checksHigh(text: SheetText, line: number, type: SheetType): number {
  const { em } = ruler(type);
  const heading = textEm(text.before, BOLD) * HEADING * em.rest + 1.5 + 0.3 * em.rest;
  const checks = text.preparations.map((what) => (textEm(what) + 1.4) * em.rest + 4.7);
  return rowsOf([heading, ...checks], line + 3.5) * em.rest * CHECK_LINE;
}

function gaugeRows(text: SheetText, line: number, type: SheetType): readonly number[] {
  const { em, runIn } = ruler(type);
  const { gaugeMm } = measuresAt(type);
  const heading = textEm(text.gaugesTitle, BOLD) * HEADING * em.rest + 1.5 + 0.3 * em.rest;
  const bars = [{ mm: CHECK_BAR_MM, caption: text.checkBar }, ...text.gauges];
  // A space stands between two.
  const widths = bars.map(({ mm, caption }) => mm + 3.5 + (textEm(caption) + 0.3) * em.rest);
  const rows = Array.from({ length: rowsOf([heading, ...widths], line) }, () => gaugeMm + 0.8);
  return [runIn + rows[0], ...rows.slice(1)];
}

/** Heights of the sheet's parts in order, mm; each stays whole on a page. */
function partsMm(text: SheetText, paper: Paper, type: SheetType): readonly number[] {
  const line = lineMm(paper);
  const { em, rest, lap, runIn, heading } = ruler(type);
  const { paragraphMm } = measuresAt(type);
  const tiers = text.tiers.map(({ text: tier, turn }) => {
    const own = layoutOf(tier, line, type).heightMm;
    const over = turn ? heading(em.lap) + lap(turn.text, line) + rest(turn.care, line) : 0;
    return over + own;
  });
  const notes = text.notes
    ? runIn + text.notes.split("\n").reduce((sum, own) => sum + rest(own, line) - paragraphMm, 0)
    : 0;
  return [headMm(text, line, type), ...tiers, ...gaugeRows(text, line, type), notes];
}

/** Pages that parts of these heights take, in order. */
export function pagesOf(heights: readonly number[], highMm: number): number {
  let [pages, used] = [1, 0];
  for (const height of heights) {
    if (used > 0 && used + height > highMm) {
      pages++;
      used = 0;
    }
    used += height;
    // What is higher than a page runs on over the next.
    pages += Math.max(0, Math.ceil(used / highMm) - 1);
    used %= highMm;
  }
  return pages;
}

/** The largest type with which the text stands on two pages, and how each tier stands on them. */
export function fitPages(text: SheetText, paper: Paper): SheetFit {
  const own = SIZES.find((type) => pagesOf(partsMm(text, paper, type), pageMm(paper, type)) <= MOST_PAGES);
  const type = own ?? SIZES[SIZES.length - 1];
  return {
    type,
    tiers: inColumns(text.tiers.map((tier) => layoutOf(tier.text, lineMm(paper), type))),
    fits: own !== undefined,
  };
}
