/** The sheet's look: black on white, large type, true sizes in mm. Its own file so that the page is only structure. */
export type Paper = "a4" | "letter";

const PAGE: Readonly<Record<Paper, string>> = {
  a4: "210mm 297mm",
  letter: "8.5in 11in",
};

/** A4 is 297 mm high, Letter 279 mm; margins are the same. */
const LETTER_IS_SHORTER = 1.09;

/** Points of the running text, by how many lines have to fit on two pages; the last holds for all that is more. */
const SIZES: readonly (readonly [lines: number, points: number])[] = [
  [36, 12.5],
  [46, 11.6],
  [56, 10.6],
  [72, 9.8],
  [100, 9.2],
  [115, 8.8],
  [Number.POSITIVE_INFINITY, 8.3],
];

/** @param load lines of text that the tiers take */
export function textSize(load: number, paper: Paper): number {
  const lines = load * (paper === "letter" ? LETTER_IS_SHORTER : 1);
  return (SIZES.find(([most]) => lines <= most) ?? SIZES[SIZES.length - 1])[1];
}

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
const WIDEST_STOP_MM = 10;
/** Width of the text on A4; Letter's is wider. */
const LINE_MM = 186;
/** Where each stop has its own width, written under it, in inch too. */
const STOP_WITH_WIDTH_MM = LINE_MM / WITH_WIDTHS;
const CLOSE_STOP_MM = LINE_MM / MOST_STOPS_A_ROW;
const columns = (isClose: boolean): string =>
  Array.from({ length: MOST_STOPS_A_ROW }, (_, i) => i + 1)
    .flatMap((n) =>
      [
        ["row", Math.min(isClose ? CLOSE_STOP_MM : WIDEST_STOP_MM, LINE_MM / n)] as const,
        ["wide", STOP_WITH_WIDTH_MM] as const,
      ].map(([name, mm]) => `.${name}${n} { grid-template-columns: repeat(${n}, ${mm.toFixed(2)}mm); }`),
    )
    .join("\n");

/** Room for half a line beside a facet's picture, and how wide a letter is on average, as a part of the text's size. */
const HALF_LINE_MM = 76;
const LETTER_WIDTH = 0.5;
const MM_PER_POINT = 25.4 / 72;

/** Characters that fit on half a line. */
export const shortLine = (pt: number): number =>
  Math.floor(HALF_LINE_MM / (LETTER_WIDTH * pt * MM_PER_POINT));

/** Text so small goes with everything else closer too. */
const CLOSE_POINTS = 9.4;

export const sheetStyle = (paper: Paper, pt: number): string => `
@page { size: ${PAGE[paper]}; margin: 10mm 12mm; }
* { box-sizing: border-box; }
html { background: #fff; color: #000; }
body { margin: 0 auto; max-width: 186mm; font: ${pt}pt/${pt < CLOSE_POINTS ? 1.2 : 1.3} "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", Verdana, Arial, sans-serif; font-variant-numeric: tabular-nums; }
@media screen { body { padding: 8mm 4mm; } }
h1 { font-size: 1.7em; line-height: 1.1; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: 1.25em; margin: 0 0 1mm; border-top: 0.6mm solid #000; padding-top: 1.5mm; }
p { margin: ${pt < CLOSE_POINTS ? 0.5 : 0.8}mm 0; overflow-wrap: anywhere; }
ul { list-style: none; margin: 0; padding: 0; }
.about { margin-bottom: 2mm; }
.before { display: flex; flex-wrap: wrap; gap: 0.8mm 5mm; margin-bottom: 2.5mm; }
.box { display: inline-block; width: 1em; height: 1em; border: 0.35mm solid #000; vertical-align: -0.12em; margin-right: 1.2mm; }
.tier { border-top: 0.6mm solid #000; padding: 1.2mm 0 1.4mm; break-inside: ${pt < CLOSE_POINTS ? "auto" : "avoid"}; }
.facet-and-words, .ticking { break-inside: avoid; }
.long .ticking { break-inside: auto; }
.tier.long { break-inside: auto; }
.facet-and-words { display: flex; gap: 5mm; align-items: flex-start; }
.facet-and-words > div:nth-child(2) { flex: 1; }
.facet-and-words > .stops { flex: none; margin-top: 0; }
.picture > p:only-child { max-width: 24mm; }
.facet-and-words:has(.wide) { display: block; }
.picture { flex: 0 0 auto; min-width: 24mm; max-width: 64mm; text-align: center; font-size: 0.75em; padding-top: 1mm; }
.say { font-size: 1.3em; font-weight: 700; line-height: 1.18; margin-top: 0; }
.stages li { margin: 0.2mm 0; padding-left: 1.6em; text-indent: -1.6em; }
.stages { display: grid; grid-template-columns: 1fr 1fr; gap: 0 4mm; }
.stages .long { grid-column: 1 / -1; }
.stages b { display: inline-block; width: 1.6em; text-indent: 0; }
.note { font-weight: 700; margin-right: 2mm; }
.note::before { content: "\\25B6\\00a0"; }
.stops { display: grid; gap: 1.2mm 0; margin-top: 1mm; }
${columns(pt < CLOSE_POINTS)}
.stop { text-align: center; break-inside: avoid; margin-right: -0.3mm; }
.stop strong { display: block; font-size: 14.5pt; line-height: 1.05; }
.stop small { display: block; font-size: 7.5pt; line-height: 1.1; white-space: nowrap; }
.stop i { display: block; height: ${pt < CLOSE_POINTS ? 3.6 : 4.2}mm; margin-top: -0.3mm; border: 0.3mm solid #000; font: 6.5pt/3mm Arial, sans-serif; color: #555; }
.ticking { display: flex; flex-wrap: wrap; gap: 0 5mm; align-items: flex-end; }
.measure { flex: 1 1 62mm; font-size: 0.9em; margin-top: 1mm; }
.measure span { white-space: nowrap; margin-right: 2mm; }
.legend { font-size: 0.9em; }
.facet path { fill: none; stroke: #000; stroke-width: 0.45; stroke-linecap: round; stroke-linejoin: round; }
.facet .skin { stroke-dasharray: 0.01 0.9; }
.bar { fill: #000; }
.gauges { break-inside: avoid; }
.gauge { display: inline-block; margin: 0.6mm 4mm 0.6mm 0; vertical-align: bottom; }
.gauge svg, .facet { display: block; margin: 0 auto; overflow: visible; }
.gauge svg { margin: 0; }
figcaption { font-size: 0.8em; }
.check { max-width: 80mm; }
.full-care { break-inside: avoid; }
.cautions { columns: 3; column-gap: 5mm; font-size: 0.8em; }
.care { font-size: 0.8em; }
.cautions li { break-inside: avoid; margin: 0.4mm 0; }
.notes { white-space: pre-wrap; }
`;
