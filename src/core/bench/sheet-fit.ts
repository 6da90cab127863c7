/**
 * How large the sheet's type may be so that everything stands on two pages. The heights of its parts are reckoned from the
 * text and the measures of the style, without a browser: a part that can't be broken goes to the next page whole.
 */
import { CHECK_BAR_MM, type Gauge } from "./sheet-drawings.ts";
import {
  isClose,
  LETTER_WIDTH,
  LINE_MM,
  MEASURE_MM,
  MM_PER_POINT,
  measuresAt,
  type Paper,
  PICTURE_MM,
  pageMm,
  SIZES,
  STOP_POINTS,
  STOP_WIDTH_GAP_MM,
  STOP_WIDTH_POINTS,
  shortLine,
  stopRows,
  stopWidthMm,
  WIDEST_STOP_MM,
} from "./sheet-style.ts";
import type { SheetStop, TierText } from "./sheet-tier.ts";

export interface SheetText {
  readonly name: string;
  readonly about: string;
  readonly preparations: readonly string[];
  /** Cautions of grinding. */
  readonly care: string;
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
  readonly measure: string;
  readonly notes: string;
  readonly cautions: readonly string[];
}

/** So few stops stand beside the words. */
const FEW_STOPS = 3;
export const isBeside = (stops: readonly SheetStop[]): boolean => stops.length <= FEW_STOPS;

const MOST_PAGES = 2;
/** Running text, with its spaces and thin letters, against the letters that a short line is reckoned with. */
const RUNNING = 0.95;
/** Bold letters are wider. */
const BOLD = 1.1;

/** Heights of text at one size of type, mm. */
function ruler(pt: number) {
  const em = pt * MM_PER_POINT;
  const { lineHeight, paragraphMm } = measuresAt(pt);
  const lines = (text: string, widthMm: number, size = 1, weight = 1): number =>
    Math.max(1, Math.ceil((text.length * em * size * LETTER_WIDTH * weight * RUNNING) / widthMm));
  return {
    em,
    lines,
    /** A paragraph with the room after it. */
    paragraph: (text: string, widthMm: number, size = 1, weight = 1, height = lineHeight): number =>
      lines(text, widthMm, size, weight) * em * size * height + paragraphMm,
    line: em * lineHeight,
    heading: em * 1.25 * lineHeight + (isClose(pt) ? 1.9 : 3.1),
  };
}

/** Rows that things of these widths take when they are set one after the other. */
function rowsOf(widths: readonly number[], lineMm: number): number {
  let [rows, used] = [1, 0];
  for (const width of widths) {
    if (used > 0 && used + width > lineMm) {
      rows++;
      used = 0;
    }
    used += width;
  }
  return rows;
}

/** Rows of a grid of two columns, filled in order, in which some items take both. */
function gridRows(items: readonly { readonly rows: number; readonly isHalf: boolean }[]): number {
  let [rows, isOpen] = [0, false];
  for (const item of items) {
    if (!(item.isHalf && isOpen)) rows += item.rows;
    isOpen = item.isHalf && !isOpen;
  }
  return rows;
}

/** Width of a tier's words beside its picture and, where they are few, its stops, mm. */
export function wordsWidthMm({ picture, stops }: TierText): number {
  const [left, right] = picture?.flat.box ?? [0, 0];
  const pictureMm = Math.min(PICTURE_MM.most, Math.max(PICTURE_MM.least, right - left + 2));
  const besideMm = isBeside(stops) ? PICTURE_MM.gap + stops.length * WIDEST_STOP_MM : 0;
  return LINE_MM - pictureMm - PICTURE_MM.gap - besideMm;
}

/** Sentence, picture, stages and notes of a tier, mm. */
function wordsMm(text: TierText, pt: number): number {
  const { picture, sentence, held, isByHand, stages, notes } = text;
  const { paragraph, line, lines } = ruler(pt);
  const [, , low, high] = picture?.flat.box ?? [0, 0, 0, 0];
  const widthMm = wordsWidthMm(text);
  const captions = isClose(pt) ? 1 : 3;
  const most = shortLine(pt, widthMm);
  const said = [...stages.map((stage) => stage.text), ...notes].map((own) =>
    own.length > most ? { rows: lines(own, widthMm - 5, 1, BOLD), isHalf: false } : { rows: 1, isHalf: true },
  );
  const wordsHigh =
    paragraph(sentence, widthMm, 1.3, BOLD, 1.18) +
    paragraph(held, widthMm, 1, isByHand ? BOLD : 1) +
    gridRows(said) * (line + 0.4);
  return Math.max(wordsHigh, high - low + 3 + captions * line * 0.75);
}

/** Stops with their boxes, and the line for measurements beside or below them, mm. */
function tickingMm({ stops, stages }: TierText, measure: string, pt: number): number {
  const { paragraph } = ruler(pt);
  const { boxMm } = measuresAt(pt);
  const hasWidths = stops.some((stop) => stop.width !== null);
  const perRow = stopRows(stops.length, Math.max(...stops.map((stop) => stop.label.length)), hasWidths);
  const rows = Math.ceil(stops.length / perRow);
  const stopMm =
    (STOP_POINTS * 1.05 + (hasWidths ? STOP_WIDTH_POINTS * 1.1 : 0)) * MM_PER_POINT +
    (hasWidths ? STOP_WIDTH_GAP_MM + 0.3 : 0) +
    stages.length * (boxMm - 0.3);
  const ticks = 1 + rows * stopMm + 1.2 * (rows - 1);
  if (isBeside(stops)) return paragraph(measure, LINE_MM, 0.9);
  const besideMm = LINE_MM - perRow * stopWidthMm(perRow, hasWidths, pt) - 5;
  return besideMm >= MEASURE_MM
    ? Math.max(ticks, paragraph(measure, besideMm, 0.9))
    : ticks + 1 + paragraph(measure, LINE_MM, 0.9);
}

/** Heights of the sheet's parts in order, mm; each stays whole on a page. */
export function partsMm(text: SheetText, pt: number): readonly number[] {
  const { em, paragraph, line, heading } = ruler(pt);
  const { gaugeMm } = measuresAt(pt);
  const letter = em * LETTER_WIDTH * RUNNING;
  const checks = rowsOf(
    text.preparations.map((what) => what.length * letter + em + 6.2),
    LINE_MM,
  );
  const head =
    paragraph(text.name, LINE_MM, 1.7, BOLD, 1.1) +
    paragraph(text.about, LINE_MM) +
    2 +
    heading +
    checks * (line + 0.8) +
    2.5 +
    paragraph(text.care, LINE_MM, 0.8) +
    paragraph(text.legend, LINE_MM, 0.9);
  const tiers = text.tiers.flatMap(({ text: tier, turn }) => [
    ...(turn ? [heading + paragraph(turn.text, LINE_MM) + paragraph(turn.care, LINE_MM, 0.8)] : []),
    (isClose(pt) ? 1.4 : 1.8) + wordsMm(tier, pt),
    tickingMm(tier, text.measure, pt) + (isClose(pt) ? 1 : 1.4),
  ]);
  const labelMm = (label: string) => label.length * letter * 0.8;
  const gauge = isClose(pt)
    ? { width: (g: Gauge) => g.mm + labelMm(g.caption) + 4.7, height: gaugeMm + 0.6 }
    : { width: (g: Gauge) => Math.max(g.mm, labelMm(g.caption)) + 5, height: gaugeMm + line * 0.8 + 1.2 };
  const bars = [
    gauge.width({
      mm: CHECK_BAR_MM,
      label: "",
      caption: isClose(pt) ? text.checkBar : text.checkBar.slice(0, 40),
    }),
    ...text.gauges.map(gauge.width),
  ];
  const gaugeRows = Array.from({ length: rowsOf(bars, LINE_MM) }, () => gauge.height);
  const notes = text.notes
    ? heading + text.notes.split("\n").reduce((sum, own) => sum + paragraph(own, LINE_MM), 0)
    : 0;
  const care = text.cautions.reduce((sum, own) => sum + paragraph(own, LINE_MM / 3 - 4, 0.8), 0) / 3;
  const strip = isClose(pt)
    ? [heading + gaugeRows[0], ...gaugeRows.slice(1)]
    : [heading + gaugeRows.length * gauge.height];
  return [head, ...tiers, ...strip, notes, heading + care];
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

/**
 * The largest type with which the text stands on two pages.
 * @param textOf the text, in few words where it is to be short
 * @returns `fits` false when the smallest type that can be read at arm's length needs more pages
 */
export function fitPages(textOf: (isShort: boolean) => SheetText, paper: Paper) {
  const [long, short] = [textOf(false), textOf(true)];
  const at = (points: number) => (isClose(points) ? short : long);
  const fits = (points: number) => pagesOf(partsMm(at(points), points), pageMm(paper, points)) <= MOST_PAGES;
  const points = SIZES.find(fits);
  const least = SIZES[SIZES.length - 1];
  return { points: points ?? least, text: at(points ?? least), fits: points !== undefined };
}
