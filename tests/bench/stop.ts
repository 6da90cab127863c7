/**
 * How soon a search for ideas stops in the page: `npm run bench -- stop`, on the built app. From the press of Stop to when the page
 * says so, and to the last word of any worker that searches, which is when the candidate that it had in hand is done.
 */

import { ideasWords } from "../../src/ui/messages/ideas.ts";
import { dropFile, serveBuiltApp } from "../browser/built-app.ts";
import { guideTo } from "../browser/everywhere.ts";
import { endBrowser } from "../browser/support.ts";
import { WISHES } from "./ideas.ts";

const STOPS = 12;
const LIMIT_MS = 100;
/** Presses come at no beat of the search's own. */
const FIRST_MS = 700;
const LATER_MS = 137;

interface Heard {
  /** When a worker that searches last said something, by the page's clock, ms. */
  last: number;
  /** How many of them were ended because they did not stop by themselves. */
  ended: number;
}
declare global {
  interface Window {
    heard: Heard;
  }
}

/** Runs before the page's own scripts: listens to the workers that search. */
const listen = () => {
  const heard: Heard = { last: 0, ended: 0 };
  window.heard = heard;
  const Own = window.Worker;
  window.Worker = class extends Own {
    private readonly isSearch: boolean;
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.isSearch = String(url).includes("ideas-worker");
      if (this.isSearch)
        this.addEventListener("message", () => {
          heard.last = performance.now();
        });
    }
    override terminate(): void {
      if (this.isSearch) heard.ended++;
      super.terminate();
    }
  };
};

/** Presses Stop. @returns ms until the page says so, until the last worker did, and how many had to be ended */
const pressed = async (stop: HTMLElement | SVGElement) => {
  const ENOUGH_MS = 1000;
  const began = performance.now();
  const { ended } = window.heard;
  (stop as HTMLElement).click();
  while (
    ![...document.querySelectorAll("[role=status]")].some((one) => one.textContent?.startsWith("Stopped"))
  )
    await new Promise((done) => requestAnimationFrame(done));
  const saidMs = performance.now() - began;
  await new Promise((done) => setTimeout(done, ENOUGH_MS));
  return { saidMs, idleMs: Math.max(0, window.heard.last - began), ended: window.heard.ended - ended };
};

export async function bench(): Promise<object> {
  const app = await serveBuiltApp();
  const words = ideasWords.en;
  try {
    const { page } = await app.visit({ before: listen });
    const guide = guideTo(page);
    await guide.goTo("ideas");
    await page.locator(".idea-wish").waitFor();
    const answers: object[] = [];
    for (const [name, wish] of Object.entries(WISHES)) {
      await dropFile(page, `${name}.json`, JSON.stringify(wish));
      await page.getByRole("region", { name: words.wish.given.title(`${name}.json`) }).waitFor();
      const stops: Awaited<ReturnType<typeof pressed>>[] = [];
      for (let k = 0; k < STOPS; k++) {
        await page.getByRole("button", { name: new RegExp(`^(${words.start}|${words.further})$`) }).click();
        const stop = page.getByRole("button", { name: words.stop, exact: true });
        await stop.waitFor();
        await page.waitForTimeout(FIRST_MS + k * LATER_MS);
        stops.push(await stop.evaluate(pressed));
      }
      const most = (of: (stop: (typeof stops)[number]) => number) => Math.round(Math.max(...stops.map(of)));
      answers.push({
        name,
        stops: STOPS,
        saidMs: most(({ saidMs }) => saidMs),
        idleMs: most(({ idleMs }) => idleMs),
        endedByForce: stops.reduce((sum, { ended }) => sum + ended, 0),
      });
    }
    return { limitMs: LIMIT_MS, answers };
  } finally {
    await app.close();
    await endBrowser();
  }
}
