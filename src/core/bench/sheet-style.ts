/** The sheet's look: black on white, large type, true sizes in mm. Its own file so that the page is only structure. */
export type Paper = "a4" | "letter";

const PAGE: Readonly<Record<Paper, string>> = {
  a4: "210mm 297mm",
  letter: "8.5in 11in",
};

const PAPER_MM: Readonly<Record<Paper, number>> = { a4: 297, letter: 279.4 };

/** Points of the running text, the largest first; smaller is not read at arm's length. */
export const SIZES = [12.5, 11.6, 10.6, 9.8, 9.2, 8.8, 8.3] as const;

/** Text so small goes with everything else closer too. */
const CLOSE_POINTS = 9.4;
export const isClose = (pt: number): boolean => pt < CLOSE_POINTS;

/** White above and below: a full sheet goes as near to the edge as common printers do. */
const marginMm = (pt: number): number => (isClose(pt) ? 8 : 10);

/** Height of a page without its margins, mm. */
export const pageMm = (paper: Paper, pt: number): number => PAPER_MM[paper] - 2 * marginMm(pt);

/** Stops beside each other: two figures of the stop's number, large, need 7.5 mm. */
export const MOST_STOPS_A_ROW = 24;
const LONG_LABELS = 15;
const WITH_WIDTHS = 15;

/** How many stops stand in a row: rows of a tier are equally long, and long labels or widths have their room. */
export function stopRows(count: number, longestLabel: number, hasWidths: boolean): number {
  const most = hasWidths ? WITH_WIDTHS : longestLabel > 2 ? LONG_LABELS : MOST_STOPS_A_ROW;
  const rows = Math.max(1, Math.ceil(count / most));
  return Math.max(1, Math.ceil(count / rows));
}

/** Columns are no wider than this, so that few stops stay together. */
export const WIDEST_STOP_MM = 10;
/** Width of the text on A4; Letter's is wider. */
export const LINE_MM = 186;
/** Where each stop has its own width, written under it, in inch too. */
const STOP_WITH_WIDTH_MM = LINE_MM / WITH_WIDTHS;
const CLOSE_STOP_MM = LINE_MM / MOST_STOPS_A_ROW;

/** Width of one stop's column where `perRow` stand beside each other. */
export const stopWidthMm = (perRow: number, hasWidths: boolean, pt: number): number =>
  hasWidths ? STOP_WITH_WIDTH_MM : Math.min(isClose(pt) ? CLOSE_STOP_MM : WIDEST_STOP_MM, LINE_MM / perRow);

const columns = (pt: number): string =>
  Array.from({ length: MOST_STOPS_A_ROW }, (_, i) => i + 1)
    .flatMap((n) =>
      [["row", stopWidthMm(n, false, pt)] as const, ["wide", stopWidthMm(n, true, pt)] as const].map(
        ([name, mm]) => `.${name}${n} { grid-template-columns: repeat(${n}, ${mm.toFixed(2)}mm); }`,
      ),
    )
    .join("\n");

/** How wide a letter is on average, as a part of the text's size. */
export const LETTER_WIDTH = 0.5;
export const MM_PER_POINT = 25.4 / 72;

/** Room between two stages beside each other, mm, and before each for its number, in sizes of the text. */
const STAGE_GAP_MM = 4;
const STAGE_NUMBER = 1.6;

/** Characters of a stage's text that leave room for another stage beside it, where the words are so wide. */
export function shortLine(pt: number, widthMm: number): number {
  const em = pt * MM_PER_POINT;
  return Math.floor(((widthMm - STAGE_GAP_MM) / 2 - STAGE_NUMBER * em) / (LETTER_WIDTH * em));
}

/** Lines, boxes and gauges of a sheet, mm where not said otherwise; what fits on a page is reckoned from the same numbers. */
export const measuresAt = (pt: number) =>
  isClose(pt)
    ? { lineHeight: 1.2, paragraphMm: 0.5, boxMm: 3.3, gaugeMm: 4.5 }
    : { lineHeight: 1.3, paragraphMm: 0.8, boxMm: 4.2, gaugeMm: 7 };
export const STOP_POINTS = 14.5;
export const STOP_WIDTH_POINTS = 7.5;
/** Below a width, so that the first box does not touch it. */
export const STOP_WIDTH_GAP_MM = 0.2;
export const PICTURE_MM = { least: 24, most: 64, gap: 5 } as const;
export const MEASURE_MM = 54;

/** On a full sheet a gauge's length stands beside it. */
const CLOSE_GAUGES = `.gauge { display: inline-flex; align-items: flex-end; gap: 1mm; margin: 0.3mm 3mm 0.3mm 0; }
.check { max-width: none; }
h2 { font-size: 1.15em; margin: 0 0 0.5mm; padding-top: 0.8mm; }
.tier { padding: 0.8mm 0 1mm; }`;

export function sheetStyle(paper: Paper, pt: number): string {
  const { lineHeight, paragraphMm, boxMm } = measuresAt(pt);
  const close = isClose(pt);
  return `
@page { size: ${PAGE[paper]}; margin: ${marginMm(pt)}mm 12mm; }
* { box-sizing: border-box; }
html { background: #fff; color: #000; }
body { margin: 0 auto; max-width: 186mm; font: ${pt}pt/${lineHeight} "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", Arial, Helvetica, "Liberation Sans", sans-serif; font-variant-numeric: tabular-nums; }
@media screen { body { padding: 8mm 4mm; } }
h1 { font-size: 1.7em; line-height: 1.1; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: 1.25em; margin: 0 0 1mm; border-top: 0.6mm solid #000; padding-top: 1.5mm; }
p { margin: ${paragraphMm}mm 0; overflow-wrap: anywhere; }
ul { list-style: none; margin: 0; padding: 0; }
.about { margin-bottom: 2mm; }
.before { display: flex; flex-wrap: wrap; gap: 0.8mm 5mm; margin-bottom: 2.5mm; }
.box { display: inline-block; width: 1em; height: 1em; border: 0.35mm solid #000; vertical-align: -0.12em; margin-right: 1.2mm; }
.tier { border-top: 0.6mm solid #000; padding: 1.2mm 0 1.4mm; break-inside: ${close ? "auto" : "avoid"}; }
.facet-and-words, .ticking { break-inside: avoid; }
.long .ticking { break-inside: auto; }
.tier.long { break-inside: auto; }
.facet-and-words { display: flex; gap: ${PICTURE_MM.gap}mm; align-items: flex-start; }
.facet-and-words > div:nth-child(2) { flex: 1; }
.facet-and-words > .stops { flex: none; margin-top: 0; }
.picture > p:only-child { max-width: 24mm; }
.facet-and-words:has(.wide) { display: block; }
.picture { flex: 0 0 auto; min-width: ${PICTURE_MM.least}mm; max-width: ${PICTURE_MM.most}mm; text-align: center; font-size: 0.75em; padding-top: 1mm; }
.say { font-size: 1.3em; font-weight: 700; line-height: 1.18; margin-top: 0; }
.stages li { margin: 0.2mm 0; padding-left: ${STAGE_NUMBER}em; text-indent: -${STAGE_NUMBER}em; }
.stages { display: grid; grid-template-columns: 1fr 1fr; gap: 0 ${STAGE_GAP_MM}mm; }
.stages .long { grid-column: 1 / -1; }
.stages b { display: inline-block; width: ${STAGE_NUMBER}em; text-indent: 0; }
.note { font-weight: 700; }
.stop .none { border: 0; }
.stop small + i { margin-top: ${STOP_WIDTH_GAP_MM}mm; }
.note::before { content: "\\25B6\\00a0"; }
.stages .note::before { display: inline-block; width: ${STAGE_NUMBER}em; text-indent: 0; }
.stops { display: grid; gap: 1.2mm 0; margin-top: 1mm; }
${columns(pt)}
.stop { text-align: center; break-inside: avoid; margin-right: -0.3mm; }
.stop strong { display: block; font-size: ${STOP_POINTS}pt; line-height: 1.05; }
.stop small { display: block; font-size: ${STOP_WIDTH_POINTS}pt; line-height: 1.1; white-space: nowrap; }
.stop i { display: block; height: ${boxMm}mm; margin-top: -0.3mm; border: 0.3mm solid #000; font: 6.5pt/3mm Arial, sans-serif; color: #555; }
.ticking { display: flex; flex-wrap: wrap; gap: 0 5mm; align-items: flex-end; }
.measure { flex: 1 1 ${MEASURE_MM}mm; font-size: 0.9em; margin-top: 1mm; }
.measure span { white-space: nowrap; margin-right: 2mm; }
.legend { font-size: 0.9em; }
.facet path { fill: none; stroke: #000; stroke-width: 0.45; stroke-linecap: round; stroke-linejoin: round; }
.facet .skin { stroke-dasharray: 0.01 0.9; }
.bar { fill: #000; }
.gauges { break-inside: ${close ? "auto" : "avoid"}; }
.gauge { display: inline-block; margin: 0.6mm 4mm 0.6mm 0; vertical-align: bottom; }
.gauge svg, .facet { display: block; margin: 0 auto; overflow: visible; }
.gauge svg { margin: 0; }
figcaption { font-size: 0.8em; }
.check { max-width: 80mm; }
${close ? CLOSE_GAUGES : ""}
.full-care { break-inside: avoid; }
.cautions { columns: 3; column-gap: 5mm; font-size: 0.8em; }
.care { font-size: 0.8em; }
.cautions li { break-inside: avoid; margin: 0.4mm 0; }
.notes { white-space: pre-wrap; }
`;
}
