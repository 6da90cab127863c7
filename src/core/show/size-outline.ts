/** How large a piece is, told by something everybody knows: its outline beside a coin's or a hand's, drawn to one scale. */

/** Common side of the euro coins of 1: 23.25 mm (European Central Bank, technical specifications of euro coins). */
const COIN_MM = 23.25;
/** A grown-up hand, finger tip to wrist and across (common sizes, from memory). */
const HAND_MM = { long: 185, wide: 85 } as const;
/** Pieces up to this diameter stand beside a coin, larger ones beside a hand. */
const BESIDE_COIN_MM = 50;
const GAP_MM = 6;
const PER_INCH = 25.4;

export type Beside = "coin" | "hand";
export const besideWhat = (diameterMm: number): Beside => (diameterMm <= BESIDE_COIN_MM ? "coin" : "hand");

/** Tenths of a millimetre, hundredths of an inch. */
export const sizeTexts = (diameterMm: number): { readonly mm: string; readonly inch: string } => ({
  mm: `${Number(diameterMm.toFixed(1))}`,
  inch: (diameterMm / PER_INCH).toFixed(2),
});

/** Palm, four fingers and thumb as rounded bars of one tone, finger tips up, within 0 .. wide and 0 .. long. */
function handShape(): string {
  const { long, wide } = HAND_MM;
  const palm = `<rect x="6" y="82" width="${wide - 14}" height="${long - 86}" rx="20"/>`;
  const fingers = [
    [4, 36, 17, 80],
    [23, 11, 18, 100],
    [43, 0, 18, 110],
    [62, 13, 17, 100],
  ].map(([x, y, w, h]) => `<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="${w / 2}"/>`);
  const thumb = `<rect x="70" y="78" width="20" height="80" rx="10" transform="rotate(24 80 150)"/>`;
  return [palm, ...fingers, thumb].join("");
}
/** The thumb leans out of the hand's own width. */
const THUMB_MM = 26;

/** SVG in millimetres; the piece on the left. Says nothing: the words stand beside it. */
export function sizeOutline(diameterMm: number): string {
  const beside = besideWhat(diameterMm);
  const [wide, high] = beside === "coin" ? [COIN_MM, COIN_MM] : [HAND_MM.wide + THUMB_MM, HAND_MM.long];
  const height = Math.max(diameterMm, high) + 2;
  const width = diameterMm + GAP_MM + wide + 2;
  const r = diameterMm / 2;
  const other =
    beside === "coin"
      ? `<circle class="known" cx="${diameterMm + GAP_MM + COIN_MM / 2 + 1}" cy="${height - 1 - COIN_MM / 2}" r="${COIN_MM / 2}"/><circle class="rim" cx="${diameterMm + GAP_MM + COIN_MM / 2 + 1}" cy="${height - 1 - COIN_MM / 2}" r="${COIN_MM * 0.34}"/>`
      : `<g class="known" transform="translate(${diameterMm + GAP_MM + 1} ${height - 1 - HAND_MM.long})">${handShape()}</g>`;
  return `<svg viewBox="0 0 ${width} ${height}" aria-hidden="true"><circle class="piece" cx="${r + 1}" cy="${height - 1 - r}" r="${r}"/>${other}</svg>`;
}
