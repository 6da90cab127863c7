/** How fine a customer's page can have its pictures, so that all of it stays as small as a mail takes. */

/** Bytes that no page reaches. */
const LIMIT_BYTES = 900_000;
/** Qualities of JPEG to try, per cent, finest first. */
const QUALITIES = [84, 76, 68, 60, 50, 40, 30, 20] as const;

/** A page that is too large even with its pictures at their coarsest. */
export class PageTooLarge extends Error {
  readonly bytes: number;
  readonly limit = LIMIT_BYTES;
  constructor(bytes: number) {
    super(`page-too-large: ${bytes}`);
    this.name = "PageTooLarge";
    this.bytes = bytes;
  }
}

/**
 * The page with its pictures as fine as it has room for.
 * @param pageAt makes it with pictures of this quality, per cent
 * @throws PageTooLarge
 */
export async function fittedPage(pageAt: (quality: number) => string | Promise<string>): Promise<string> {
  let bytes = 0;
  for (const quality of QUALITIES) {
    const page = await pageAt(quality);
    bytes = new TextEncoder().encode(page).length;
    if (bytes < LIMIT_BYTES) return page;
  }
  throw new PageTooLarge(bytes);
}
