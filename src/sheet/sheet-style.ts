/** The sheet's look: black on white, large type, true sizes in mm. Its own file so that the page is only structure. */
import { SHEET_FACE } from "./sheet-face.ts";

export type Paper = "a4" | "letter";

const PAPER_MM: Readonly<Record<Paper, { readonly wide: number; readonly high: number }>> = {
  a4: { wide: 210, high: 297 },
  letter: { wide: 215.9, high: 279.4 },
};

export const MM_PER_POINT = 25.4 / 72;

/** The two sizes of type on a sheet. */
export interface SheetType {
  /** What the hands need at the wet lap, points: sentences, angles, pivot heights, stops, widths, strokes. */
  readonly lapPt: number;
  /** What is read before or after: cautions, gauges' lengths, notes, points. */
  readonly restPt: number;
  /** With less white around everything. */
  readonly isClose: boolean;
}

const close = (lapPt: number, restPt = 8.5): SheetType => ({ lapPt, restPt, isClose: true });
/** The largest first; below 12 points only what two pages don't hold otherwise, and below 9 nothing is read at arm's length. */
export const SIZES: readonly SheetType[] = [
  { lapPt: 14, restPt: 10.5, isClose: false },
  { lapPt: 13, restPt: 10, isClose: false },
  { lapPt: 12.5, restPt: 9.5, isClose: false },
  { lapPt: 12, restPt: 9, isClose: false },
  close(12.5, 9),
  close(12, 9),
  ...[12, 11.4, 10.8, 10.2, 9.6, 9].map((lapPt) => close(lapPt)),
];

const SIDE_MM = 10;
export const lineMm = (paper: Paper): number => PAPER_MM[paper].wide - 2 * SIDE_MM;

/** White above and below: a full sheet goes as near to the edge as common printers do. */
const marginMm = (type: SheetType): number => (type.isClose ? 8 : 10);

/** Height of a page without its margins, mm. */
export const pageMm = (paper: Paper, type: SheetType): number => PAPER_MM[paper].high - 2 * marginMm(type);

/** Lines, boxes and gauges of a sheet, mm where not said otherwise; what fits on a page is reckoned from the same numbers. */
export const measuresAt = ({ isClose }: SheetType) =>
  isClose
    ? { lineHeight: 1.12, paragraphMm: 0.4, boxMm: 4, gaugeMm: 4.5, tierMm: 0.8, headingMm: 0.5 }
    : { lineHeight: 1.25, paragraphMm: 0.8, boxMm: 5, gaugeMm: 6, tierMm: 1.5, headingMm: 1.2 };

/** A tier's sentence and its stops stand out from what is said beside them, in sizes of that. */
export const SAY = 1.15;
export const SAY_LINE = 1.15;
export const stopPt = ({ isClose }: SheetType): number => (isClose ? 14 : 14.5);
export const STOP_LINE = 1.05;
export const TITLE = 1.5;
export const HEADING = 1.15;
/** Lines of boxes to tick before the first cut, in sizes of their type. */
export const CHECK_LINE = 1.45;
/** The mark before a warning with the room behind it, in sizes of its type. */
export const WEDGE = 0.8;
/** Lines between parts of the sheet, mm. */
export const RULE_MM = 0.5;
/** The place of a stage in the list of abrasives, before its words, in sizes of the type. */
export const PLACE = 1.4;
/** Room between two stages beside each other, mm. */
export const STAGE_GAP_MM = 4;
export const PICTURE_MM = { least: 24, most: 64, gap: 4 } as const;
/** Between two tables beside each other, mm. */
export const TABLE_GAP_MM = 5;
/** Blanks for what was measured are as high as a hand writes. */
export const MEASURE_HIGH_MM = 5.4;
const BLANK_MM = 6;
/** The four words before them, in sizes of the type, in either language. */
const MEASURE_WORDS = 9.5;
/** As wide as the four blanks with their words need, mm. */
export const measureMm = ({ restPt }: SheetType): number =>
  MEASURE_WORDS * restPt * MM_PER_POINT + 4 * BLANK_MM + 10;

/** A table of stops: how wide its words are and each stop. */
export interface Columns {
  readonly wordsMm: number;
  readonly stopMm: number;
}

const columnRules = (tables: readonly Columns[]): string =>
  tables
    .map(
      ({ wordsMm, stopMm }, i) =>
        `.t${i} .w { width: ${wordsMm.toFixed(2)}mm; }\n.t${i} .s { width: ${stopMm.toFixed(2)}mm; }`,
    )
    .join("\n");

/** @param tables of the tiers in order; a tier's table is found by its class `t0`, `t1`, ... */
export function sheetStyle(paper: Paper, type: SheetType, tables: readonly Columns[]): string {
  const { lapPt, restPt } = type;
  const { lineHeight, paragraphMm, boxMm, tierMm, headingMm } = measuresAt(type);
  const { wide, high } = PAPER_MM[paper];
  return `
@page { size: ${wide}mm ${high}mm; margin: ${marginMm(type)}mm ${SIDE_MM}mm; }
* { box-sizing: border-box; }
/* A printer makes the whole page smaller when something stands out of it, and true sizes with it. */
html, body { overflow-x: clip; }
html { background: #fff; color: #000; }
body { margin: 0 auto; max-width: ${lineMm(paper)}mm; font: ${lapPt}pt/${lineHeight} "${SHEET_FACE}", Arial, Helvetica, sans-serif; font-variant-numeric: tabular-nums; }
@media screen { body { padding: 8mm 0; } }
h1 { font-size: ${TITLE}em; line-height: 1.1; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: ${HEADING}em; margin: 0; }
p { margin: 0 0 ${paragraphMm}mm; overflow-wrap: anywhere; }
ul { list-style: none; margin: 0; padding: 0; }
.run-in h2, .run-in ul, .run-in li { display: inline; margin-right: 1.5mm; }
.title { display: flex; flex-wrap: wrap; gap: 0 5mm; align-items: baseline; margin-bottom: ${paragraphMm}mm; }
.title p { margin: 0; }
.run-in, .care, .legend, .picture p, .measure { font-size: ${restPt}pt; }
.run-in, .turn, .tier { border-top: ${RULE_MM}mm solid #000; padding: ${headingMm}mm 0 ${paragraphMm}mm; }
.before, .full-care, .turn { break-inside: avoid; }
.before li { white-space: nowrap; margin-right: 3.5mm; line-height: ${CHECK_LINE}; }
.cautions li + li::before { content: "\\2022\\00a0"; }
.box { display: inline-block; width: 1.1em; height: 1.1em; border: 0.35mm solid #000; vertical-align: -0.15em; margin-right: 1.2mm; }
.turn { break-after: avoid; }
.tier { padding: ${tierMm}mm 0; break-inside: avoid; }
.tier.long { break-inside: auto; }
.facet-and-words { display: flex; gap: ${PICTURE_MM.gap}mm; align-items: flex-start; break-inside: avoid; }
.facet-and-words > div:nth-child(2) { flex: 1; min-width: 0; }
.facet-and-words:has(.wide) { display: block; }
.picture { flex: 0 0 auto; min-width: ${PICTURE_MM.least}mm; max-width: ${PICTURE_MM.most}mm; text-align: center; }
.picture p { margin: 0; }
.picture.wide { max-width: 100%; overflow-x: clip; }
.picture > p:only-child { max-width: ${PICTURE_MM.least}mm; }
.say { font-size: ${SAY}em; font-weight: 700; line-height: ${SAY_LINE}; }
.note { font-weight: 700; }
.note::before { content: ""; display: inline-block; margin-right: 0.25em; border: solid transparent; border-width: 0.3em 0 0.3em 0.55em; border-left-color: #000; }
.stages { display: grid; grid-template-columns: 1fr 1fr; gap: 0 ${STAGE_GAP_MM}mm; }
.stages .long { grid-column: 1 / -1; }
.stages li, .ticks tbody th { padding-left: ${PLACE}em; text-indent: -${PLACE}em; }
.stages b, .ticks tbody b { display: inline-block; width: ${PLACE}em; text-indent: 0; }
.tables { display: flex; flex-wrap: wrap; gap: 0 ${TABLE_GAP_MM}mm; align-items: flex-start; }
.ticks { max-width: 100%; border-collapse: collapse; break-inside: avoid; }
.ticks th, .ticks td { padding: 0; font-weight: 400; }
.ticks tbody tr { height: ${boxMm}mm; }
.ticks tbody th { text-align: left; padding-right: 1mm; overflow-wrap: anywhere; }
.ticks td { border: 0.3mm solid #000; }
.ticks .none { border: 0; text-align: center; vertical-align: top; }
/* Each number in a box of its own, which grows with it, whatever face it is set in; the words beside give way. Another face is set as large as makes its zero as wide as our own bold one. */
.ticks .stop { vertical-align: bottom; border: 0.3mm solid #000; padding: 0 0.1mm; white-space: nowrap; }
.stop i { font-size: 1pt; font-style: normal; }
.stop strong { display: block; font-size: ${stopPt(type)}pt; line-height: ${STOP_LINE}; font-size-adjust: ch-width 0.65; }
.stop small { display: block; font-size: 1em; line-height: ${STOP_LINE}; }
.measure { display: flex; gap: 1mm; flex-wrap: wrap; min-height: ${MEASURE_HIGH_MM}mm; align-items: flex-end; line-height: 1; padding-right: 2mm; max-width: 110mm; }
.measure i { flex: 1; min-width: ${BLANK_MM}mm; border-bottom: 0.2mm solid #000; }
${columnRules(tables)}
.facet path { fill: none; stroke: #000; stroke-width: 0.45; stroke-linecap: round; stroke-linejoin: round; }
.facet .skin { stroke-dasharray: 0.01 0.9; }
.facet { display: block; margin: 0 auto; overflow: visible; }
.bar { fill: #000; }
.gauge { display: inline-flex; align-items: flex-end; gap: 1mm; margin: 0.4mm 2.5mm 0.4mm 0; line-height: 1; break-inside: avoid; }
.gauge svg { display: block; overflow: visible; }
.notes { white-space: pre-wrap; }
`;
}
