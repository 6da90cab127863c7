/** The typeface that a sheet carries in itself, so that it comes out alike wherever it is printed. */

/** The same name as in the app: shown there, the sheet takes the app's own. */
export const SHEET_FACE = "Atkinson Hyperlegible Next Variable";

/** A part of the face: WOFF2 in base64, and the characters in it as CSS writes them (`U+0000-00FF, ...`). */
export interface FacePart {
  readonly woff2: string;
  readonly characters: string;
}

/** One rule for each part, with the file in it. */
export const faceRules = (parts: readonly FacePart[]): string =>
  parts
    .map(
      ({ woff2, characters }) =>
        `@font-face { font-family: "${SHEET_FACE}"; font-weight: 200 800; src: url(data:font/woff2;base64,${woff2}) format("woff2"); unicode-range: ${characters}; }`,
    )
    .join("\n");
