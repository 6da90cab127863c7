/** The sheet's typeface from the files that the page itself is set in. */

import latinExt from "@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-wght-normal.woff2?url";
import latin from "@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2?url";
import ranges from "@fontsource-variable/atkinson-hyperlegible-next/unicode.json";
import type { FacePart } from "../sheet/sheet-face.ts";

/** Arguments that a call takes without fail. */
const AT_ONCE = 0x8000;

function base64Of(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += AT_ONCE)
    text += String.fromCharCode(...bytes.subarray(at, at + AT_ONCE));
  return btoa(text);
}

async function part(url: string, characters: string): Promise<FacePart> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the typeface could not be fetched: ${answer.status}`);
  return { woff2: base64Of(new Uint8Array(await answer.arrayBuffer())), characters };
}

let fetched: readonly FacePart[] | null = null;

/** All its upright letters: Latin with its signs, and Latin Extended for names. Asked for again after a fault. */
export async function sheetFace(): Promise<readonly FacePart[]> {
  fetched ??= await Promise.all([part(latin, ranges.latin), part(latinExt, ranges["latin-ext"])]);
  return fetched;
}
