/** A phone's own programs, as a stub: they take every file that is handed to them, and nothing is sent. */
import type { Page } from "playwright-core";

/** From now on until the page is loaded anew. */
export const takeFiles = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const handed: [string, string, number][] = [];
    const share = async ({ files = [] }: ShareData) => {
      for (const { name, type, size } of files) handed.push([name, type, size]);
    };
    const canShare = ({ files = [] }: ShareData = {}) => files.length > 0;
    Object.assign(globalThis, { handed });
    Object.assign(navigator, { canShare, share });
  });

/** Name, type and bytes of each file that was handed over. */
export const handedOver = (page: Page): Promise<readonly [string, string, number][]> =>
  page.evaluate(() => (globalThis as unknown as { handed: [string, string, number][] }).handed);
