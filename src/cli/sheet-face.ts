/** The sheet's typeface from the package it comes in. */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { FacePart } from "../sheet/sheet-face.ts";

const require = createRequire(import.meta.url);
const PACKAGE = "@fontsource-variable/atkinson-hyperlegible-next";

/** All its upright letters: Latin with its signs, and Latin Extended for names. */
export async function sheetFace(): Promise<readonly FacePart[]> {
  const ranges: Readonly<Record<string, string>> = require(`${PACKAGE}/unicode.json`);
  return Promise.all(
    Object.entries(ranges).map(async ([part, characters]) => {
      const path = require.resolve(`${PACKAGE}/files/atkinson-hyperlegible-next-${part}-wght-normal.woff2`);
      return { woff2: await readFile(path, "base64"), characters };
    }),
  );
}
