/** The sheet's look: black on white, large type, true sizes in mm. Its own file so that the page is only structure. */
export type Paper = "a4" | "letter";

const PAGE: Readonly<Record<Paper, string>> = {
  a4: "210mm 297mm",
  letter: "8.5in 11in",
};

/** A4 is 297 mm high, Letter 279 mm; margins are the same. */
const LETTER_IS_SHORTER = 1.1;

/** Points of the running text by how much has to fit on two pages: rows of stops and tiers. */
export function textSize(facets: number, tiers: number, paper: Paper): number {
  const load = (facets + 6 * tiers) * (paper === "letter" ? LETTER_IS_SHORTER : 1);
  if (load <= 40) return 12.5;
  if (load <= 62) return 10.8;
  return 9.6;
}

export const sheetStyle = (paper: Paper, pt: number): string => `
@page { size: ${PAGE[paper]}; margin: 10mm 12mm; }
* { box-sizing: border-box; }
html { background: #fff; color: #000; }
body { margin: 0 auto; max-width: 186mm; font: ${pt}pt/1.3 "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", Verdana, Arial, sans-serif; font-variant-numeric: tabular-nums; }
@media screen { body { padding: 8mm 4mm; } }
h1 { font-size: 1.7em; line-height: 1.1; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: 1.25em; margin: 0 0 1mm; border-top: 0.6mm solid #000; padding-top: 1.5mm; }
p { margin: 0.8mm 0; overflow-wrap: anywhere; }
ul { list-style: none; margin: 0; padding: 0; }
.about { margin-bottom: 2mm; }
.before { display: flex; flex-wrap: wrap; gap: 0.8mm 5mm; margin-bottom: 2.5mm; }
.box { display: inline-block; width: 1em; height: 1em; border: 0.35mm solid #000; vertical-align: -0.12em; margin-right: 1.2mm; }
.tier { border-top: 0.6mm solid #000; padding: 1.5mm 0 2mm; break-inside: avoid; }
.tier.long { break-inside: auto; }
.facet-and-words { display: flex; gap: 5mm; align-items: flex-start; }
.facet-and-words > :last-child { flex: 1; }
.facet-and-words:has(.wide) { display: block; }
.picture { min-width: 24mm; text-align: center; font-size: 0.75em; padding-top: 1mm; }
.say { font-size: 1.3em; font-weight: 700; line-height: 1.18; margin-top: 0; }
.stages li { margin: 0.4mm 0; padding-left: 1.6em; text-indent: -1.6em; }
.stages b { display: inline-block; width: 1.6em; text-indent: 0; }
.note { font-weight: 700; }
.note::before { content: "\\25B6\\00a0"; }
.stops { display: flex; flex-wrap: wrap; gap: 1.5mm; margin-top: 1.5mm; }
.stop { border: 0.3mm solid #000; padding: 0.6mm 1.4mm 1mm; text-align: center; break-inside: avoid; }
.stop strong { display: block; font-size: 1.55em; line-height: 1.1; }
.measure { flex: 1 0 auto; align-self: flex-end; font-size: 0.9em; }
.ticks { display: flex; justify-content: center; gap: 0.8mm; }
.ticks i { width: 5mm; height: 5mm; border: 0.3mm solid #000; font: 7pt/4.6mm Arial, sans-serif; color: #555; }
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
.cautions { columns: 2; column-gap: 6mm; font-size: 0.8em; }
.care { font-size: 0.8em; }
.cautions li { break-inside: avoid; margin: 0.4mm 0; }
.notes { white-space: pre-wrap; }
`;
