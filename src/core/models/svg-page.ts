/** A drawing at true size: SVG whose user unit is a millimetre, with a bar to hold a rule against after printing. */
import { escapeXml } from "./escape-xml.ts";

/** Space round a drawing, mm: more than most printers leave white. */
export const MARGIN_MM = 12;
export const TEXT_MM = 3;
export const LINE_MM = 4.5;
export const HAIRLINE_MM = 0.15;
const CHECK_BAR_MM = 50;
const TICK_MM = 4;

/** Three decimals of a millimetre: finer than any printer. */
export const mm = (x: number): string => `${Number(x.toFixed(3)) + 0}`;

export function textAt(x: number, y: number, text: string, more = ""): string {
  return `<text x="${mm(x)}" y="${mm(y)}"${more ? ` ${more}` : ""}>${escapeXml(text)}</text>`;
}

/** A bar of exactly 50 mm with its length beside it. @param x, y its left end, mm */
export function checkBar(x: number, y: number): string {
  const half = TICK_MM / 2;
  return `<path id="check-bar" d="M${mm(x)} ${mm(y)}h${CHECK_BAR_MM}M${mm(x)} ${mm(y - half)}v${TICK_MM}M${mm(x + CHECK_BAR_MM)} ${mm(y - half)}v${TICK_MM}"/>${textAt(x + CHECK_BAR_MM + 2, y + 1, "50 mm: measure this after printing; print at 100 %, not fitted to the page.")}`;
}

/** @param width, height of the sheet, mm; @param body elements in millimetres from its upper left corner */
export function svgPage(width: number, height: number, title: string, body: readonly string[]): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" fill="none" stroke="#000" stroke-width="${HAIRLINE_MM * 2}">
<title>${escapeXml(title)}</title>
<style>text{font:${TEXT_MM}px sans-serif;fill:#000;stroke:none}</style>
${body.join("\n")}
</svg>
`;
}
