/**
 * How wide text comes out on the sheet, so that lines can be counted without a browser. Widths are the greater of the two
 * faces that the sheet is set in: Helvetica's metrics (Adobe Core 14 AFM), which Arial and Liberation Sans share, and those of
 * Atkinson Hyperlegible Next as the app prints it, with figures of equal width.
 */

/** Letters by their width in thousandths of the type's size. */
const WIDTHS: readonly (readonly [number, string])[] = [
  [250, "'j"],
  [290, " \u00a0.,:;!il|\u00b7"],
  [340, "ft()[]{}`"],
  [365, 'r"-'],
  [400, "I/\\*\u00b0"],
  [500, "cskvxyz"],
  [570, "abdeghnopqu\u00e4\u00f6\u00fc\u00e9LJF_\u2013?"],
  [632, "0123456789+<=>\u00d7TZ\u00df"],
  [680, "ABEKPSVXYC\u00c4"],
  [735, "DHNRUw&\u00dc"],
  [780, "GOQ\u00d6\u25b6"],
  [845, "mM"],
];
/** Of letters that aren't in the list: no Latin letter is wider, nor a sign of an East Asian script. */
const WIDEST = 1000;

const WIDTH_OF: ReadonlyMap<string, number> = new Map(
  WIDTHS.flatMap(([width, letters]) => [...letters].map((letter) => [letter, width] as const)),
);

/** Bold letters against regular ones, at most over a few words. */
export const BOLD = 1.08;

/** Width of a text on one line, in sizes of its type. */
export const textEm = (text: string, weight = 1): number =>
  ([...text].reduce((sum, letter) => sum + (WIDTH_OF.get(letter) ?? WIDEST), 0) / 1000) * weight;

/** Lines that a text takes where each holds `lineEm` sizes of its type; at least 1. A word longer than a line is broken. */
export function linesOf(text: string, lineEm: number, weight = 1): number {
  const space = textEm(" ", weight);
  let [lines, used] = [1, 0];
  for (const word of text.split(" ")) {
    const wide = textEm(word, weight);
    const after = used > 0 ? used + space + wide : wide;
    if (after <= lineEm) {
      used = after;
      continue;
    }
    if (used > 0) lines++;
    lines += Math.max(0, Math.ceil(wide / lineEm) - 1);
    used = wide % lineEm;
  }
  return lines;
}
