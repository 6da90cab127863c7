/** True-size pictures on the sheet: facets, width gauges and the check bar. SVG with sizes in mm. */
import { type FlatFacet, piecePath } from "./facet-drawing.ts";
import { html, type Markup } from "./markup.ts";

/** White around a facet's picture, mm: room for the pen's width. */
const MARGIN_MM = 1;
const n2 = (value: number): string => String(Math.round(value * 100) / 100);

/** A facet as it should look when finished: edges with neighbours solid, round skin dotted. */
export function facetPicture(facet: FlatFacet, label: string): Markup {
  const [left, right, low, high] = facet.box;
  const [w, h] = [right - left + 2 * MARGIN_MM, high - low + 2 * MARGIN_MM];
  const paths = (kind: "line" | "arc") =>
    facet.pieces
      .filter((p) => p.kind === kind)
      .map((p) => piecePath(p, facet.circleMm))
      .join("");
  return html`<svg class="facet" role="img" aria-label="${label}" width="${n2(w)}mm" height="${n2(h)}mm" viewBox="${n2(left - MARGIN_MM)} ${n2(-high - MARGIN_MM)} ${n2(w)} ${n2(h)}"><path class="skin" d="${paths("arc")}"/><path class="edge" d="${paths("line")}"/></svg>`;
}

export interface Gauge {
  readonly mm: number;
  /** Its length in words, for those who can't see it. */
  readonly label: string;
  /** What stands beside it. */
  readonly caption: string;
}

const GAUGE_BAR_MM = 2.5;

/** One gauge: a black bar exactly as long as the width, between two uprights `heightMm` tall, to lay beside the facet. */
export const gaugePicture = ({ mm, label, caption }: Gauge, heightMm: number): Markup =>
  html`<figure class="gauge"><svg role="img" aria-label="${label}" data-mm="${n2(mm)}" width="${n2(mm)}mm" height="${heightMm}mm" viewBox="0 0 ${n2(mm)} ${heightMm}"><path d="M0 0V${heightMm}H${n2(mm)}V0Z" fill="none"/><rect class="bar" x="0" y="${heightMm - GAUGE_BAR_MM}" width="${n2(mm)}" height="${GAUGE_BAR_MM}"/><rect class="bar" x="0" y="0" width="0.25" height="${heightMm}"/><rect class="bar" x="${n2(mm - 0.25)}" y="0" width="0.25" height="${heightMm}"/></svg><figcaption>${caption}</figcaption></figure>`;

export const CHECK_BAR_MM = 50;

/** The bar to hold a ruler against: marks every 10 mm, 50 mm long. */
export function checkBar(label: string): Markup {
  const marks = Array.from({ length: CHECK_BAR_MM / 10 + 1 }, (_, i) => {
    const x = Math.min(CHECK_BAR_MM - 0.25, i * 10);
    return html`<rect class="bar" x="${x}" y="0" width="0.25" height="4"/>`;
  });
  return html`<figure class="gauge"><svg role="img" aria-label="${label}" data-mm="${CHECK_BAR_MM}" width="${CHECK_BAR_MM}mm" height="4.5mm" viewBox="0 0 ${CHECK_BAR_MM} 4.5">${marks}<rect class="bar" x="0" y="3.5" width="${CHECK_BAR_MM}" height="1"/></svg><figcaption>${label}</figcaption></figure>`;
}
