/**
 * Whether saved pictures take as long as Look says: `npm run bench -- saved`. Whole saves where the processor traces, at two sizes, of
 * an example in the hand and on paper, each told of as Look does it by what it has traced until then.
 */
import { endBrowser, openPage } from "../browser/support.ts";
import type { Saved } from "./look/saved.ts";

const WISH = { name: "Both banks", shown: 480, before: 8, sizes: [320, 640], samples: 16 } as const;
/** Told and real are to be within so many times of each other. */
const LIMIT = 1.3;

const rounded = (value: number): number => Number(value.toPrecision(3));

export async function bench(): Promise<object> {
  const { page, errors, close } = await openPage("tests/bench/look/page.html");
  try {
    await page.waitForFunction("'savedPictures' in window");
    const answers: object[] = [];
    for (const isOnPaper of [false, true]) {
      const wish = JSON.stringify({ ...WISH, isOnPaper });
      const saved = await page.evaluate<Saved[]>(`savedPictures(${wish})`);
      for (const { size, toldMs, realMs } of saved)
        answers.push({
          name: `${WISH.name} ${isOnPaper ? "on paper" : "in the hand"}`,
          size,
          toldMs: rounded(toldMs),
          realMs: rounded(realMs),
          toldByReal: rounded(toldMs / realMs),
        });
    }
    if (errors.length > 0) throw new Error(errors.join("\n"));
    return { samples: WISH.samples, limit: LIMIT, answers };
  } finally {
    await close();
    await endBrowser();
  }
}
