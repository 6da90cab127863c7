/** What can be wrong with a picture that is to be a light, as a code with its data; each language has a sentence for each code. */
export interface HdrFaultData {
  "header-cut": object;
  "no-picture": object;
  encoding: { readonly found: string };
  "row-order": { readonly found: string };
  size: { readonly width: number; readonly height: number; readonly most: number };
  broken: object;
}

/** A language that lacks a code does not compile. */
export type HdrFaultWords = {
  readonly [C in keyof HdrFaultData]: (data: HdrFaultData[C]) => string;
};

/** For the command line, and for the screens in English. */
export const hdrFaultWordsEn: HdrFaultWords = {
  "header-cut": () => "the .hdr picture ends within its header",
  "no-picture": () => "the light is not a Radiance .hdr picture (its first line must begin with #?)",
  encoding: ({ found }) => `the .hdr picture is in ${found}, only 32-bit_rle_rgbe is read`,
  "row-order": ({ found }) =>
    `the .hdr picture must have its rows from the top (-Y height +X width), not "${found}"`,
  size: ({ width, height, most }) =>
    `the .hdr picture is ${width} by ${height} pixels; 1 to ${most} pixels are read`,
  broken: () => "the .hdr picture ends too early or has a broken scanline",
};

/** Thrown for a file that isn't a Radiance picture or breaks off; the message is one plain sentence in English. */
export class HdrError extends Error {
  override readonly name = "HdrError";
  /** The same sentence in any language. */
  readonly inWords: (words: HdrFaultWords) => string;

  constructor(inWords: (words: HdrFaultWords) => string) {
    super(inWords(hdrFaultWordsEn));
    this.inWords = inWords;
  }
}

export const hdrError = <C extends keyof HdrFaultData>(code: C, data: HdrFaultData[C]): HdrError =>
  new HdrError((words) => words[code](data));
