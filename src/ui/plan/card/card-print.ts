/** The facet card on paper at 1:1: outline, sizes, neighbours, and a bar that tells whether the printer kept the scale. */
import type { FlatFacet } from "./card-geometry.ts";

export interface CardWords {
  readonly title: string;
  readonly setting: string;
  readonly wide: string;
  readonly high: string;
  /** One line a side, in the order of the outline. */
  readonly sides: readonly string[];
  readonly check: string;
  readonly seen: string;
  readonly caution: string;
}

/** Length of the check bar. */
export const CHECK_MM = 50;
const BORDER_MM = 6;
const LINE_MM = 0.25;

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c] ?? c);

/** A whole page; every length in it is in millimetres of paper. */
export function cardPage(facet: FlatFacet, words: CardWords, language: string): string {
  const width = Math.max(facet.widthMm, CHECK_MM) + 2 * BORDER_MM;
  const height = facet.heightMm + 2 * BORDER_MM;
  const numbers = facet.sides
    .map(({ middle, outward }, i) => {
      const [x, y] = [middle[0] + outward[0] * 2.6, middle[1] + outward[1] * 2.6 + 0.9];
      return `<text x="${x.toFixed(2)}" y="${y.toFixed(2)}" text-anchor="middle">${i + 1}</text>`;
    })
    .join("");
  const sides = words.sides.map((side) => `<li>${escaped(side)}</li>`).join("");
  return `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><title>${escaped(words.title)}</title><style>
@page{margin:15mm}body{font:12pt/1.4 "Atkinson Hyperlegible Next Variable",system-ui,sans-serif;margin:0}
h1{font-size:16pt;margin:0}svg{display:block;margin:4mm 0}text{font-size:3.2px;font-family:inherit}
.bar{inline-size:${CHECK_MM}mm;block-size:3mm;border:0.3mm solid #000;border-block-start:0;margin-block-start:4mm}
</style></head><body><h1>${escaped(words.title)}</h1><p>${escaped(words.setting)}<br>${escaped(words.wide)}, ${escaped(words.high)}</p>
<svg width="${width.toFixed(3)}mm" height="${height.toFixed(3)}mm" viewBox="${(-width / 2).toFixed(3)} ${(-height / 2).toFixed(3)} ${width.toFixed(3)} ${height.toFixed(3)}">
<path d="${facet.path}" fill="none" stroke="#000" stroke-width="${LINE_MM}" stroke-linejoin="round"/>${numbers}</svg>
<p>${escaped(words.seen)}</p><ol>${sides}</ol><div class="bar"></div><p>${escaped(words.check)}</p><p>${escaped(words.caution)}</p></body></html>`;
}

/** Prints a page of its own, without touching the one on the screen. */
export function printPage(html: string): void {
  const frame = document.createElement("iframe");
  frame.style.cssText = "position:fixed;inline-size:0;block-size:0;border:0;visibility:hidden";
  frame.srcdoc = html;
  frame.addEventListener("load", () => {
    const page = frame.contentWindow;
    if (!page) return;
    page.addEventListener("afterprint", () => frame.remove());
    page.print();
  });
  document.body.append(frame);
}
