/** The sheet printed: what the hands need is large on two pages, whatever the paper, the language and the face it is set in. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { sheetHtml } from "../../src/core/bench/sheet.ts";
import { lineMm, type Paper } from "../../src/core/bench/sheet-style.ts";
import type { SheetWords } from "../../src/core/bench/sheet-words.ts";
import { sheetWordsDe } from "../../src/core/bench/sheet-words-de.ts";
import { sheetWordsEn } from "../../src/core/bench/sheet-words-en.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { EXAMPLES } from "../../src/ui/examples.ts";
import { exampleIn, exampleWords } from "../../src/ui/messages/examples.ts";
import { BENCH_PLAN, EIGHT_PLAN, LARGE_PLAN, RIG_PLAN, TOO_MUCH_PLAN, UNEVEN_PLAN } from "./bench-plan.ts";
import { pdfPages } from "./pdf-pages.ts";
import { openBrowser } from "./support.ts";

const PX_PER_MM = 96 / 25.4;
/** What the hands need at the wet lap. */
const AT_THE_LAP =
  ".say, .held, .rules, .turn h2, .turn p:not(.care), .stages li, .ticks th, .ticks strong, .ticks small";
/** The face that the app prints the sheet in; kept as a file it falls back to Arial and its like. */
const FACE = readFileSync(
  createRequire(import.meta.url).resolve(
    "@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2",
  ),
).toString("base64");
const FACE_RULE = `@font-face { font-family: "Atkinson Hyperlegible Next"; font-weight: 200 800; src: url(data:font/woff2;base64,${FACE}); }`;

/** A sheet lets nothing in from outside, so its rule against that has to go for the face. */
const inAppsFace = (sheet: string): string =>
  sheet.replace(/<meta http-equiv[^>]*>/, "").replace("<style>", `<style>${FACE_RULE}`);

const PRINTS = [
  [sheetWordsEn, "a4", "mm"],
  [sheetWordsEn, "letter", "inch"],
  [sheetWordsDe, "a4", "mm"],
  [sheetWordsDe, "letter", "mm"],
] as const;
type Print = readonly [SheetWords, Paper, "mm" | "inch"];

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.newPage();
  await page.emulateMedia({ media: "print" });
}, 60_000);
afterAll(() => browser?.close());

interface Shown {
  /** The smallest type of what is read at the lap, and of everything, points. */
  readonly lapPt: number;
  readonly leastPt: number;
  /** Things that stand out of their place sideways. */
  readonly over: readonly string[];
}

const shown = (): Promise<Shown> =>
  page.evaluate((atTheLap) => {
    let [lapPx, leastPx] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
      const element = texts.currentNode.parentElement;
      if (!element || !texts.currentNode.textContent?.trim()) continue;
      const px = Number.parseFloat(getComputedStyle(element).fontSize);
      leastPx = Math.min(leastPx, px);
      if (element.closest(atTheLap) && !element.closest(".measure")) lapPx = Math.min(lapPx, px);
    }
    const line = document.body.getBoundingClientRect().right + 0.5;
    const out = [...document.querySelectorAll("table, p, figure, svg, li")].filter(
      (element) => element.getBoundingClientRect().right > line,
    );
    const within = [...document.querySelectorAll(".measure, .ticks th")].filter(
      (element) => element.scrollWidth > element.clientWidth + 1,
    );
    const over = [...out, ...within].map((element) => element.outerHTML.slice(0, 100));
    return { lapPt: lapPx * 0.75, leastPt: leastPx * 0.75, over };
  }, AT_THE_LAP);

/** A plan's sheet as it lies on paper, in one of the two faces. */
async function printed(plan: Plan, [words, paper, unit]: Print, isAppsFace: boolean) {
  await page.setViewportSize({ width: Math.round(lineMm(paper) * PX_PER_MM), height: 1000 });
  const sheet = sheetHtml(solvePlan(plan), { words, unit, paper });
  // A page of its own: the rule against what is outside stays with a document.
  await page.goto("about:blank");
  await page.setContent(isAppsFace ? inAppsFace(sheet) : sheet);
  const faces = await page.evaluate(() =>
    document.fonts.ready.then((all) => [...all].map(({ status }) => status)),
  );
  expect(faces).toEqual(isAppsFace ? ["loaded"] : []);
  const pages = await pdfPages(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  const text = pages.map((one) => one.text).join(" ");
  for (const tier of plan.tiers) expect(text).toContain(tier.name);
  expect(text).toContain(words.cautions["wet-only"]);
  return {
    ...(await shown()),
    pages: pages.length,
    runs: pages.flatMap((one) => one.runs),
    saysTooMuch: text.includes(words.tooMuch.split(":")[0]),
  };
}

/** Every way of printing a plan, with words for the one that fails. */
async function eachPrint(
  plans: (language: string) => readonly Plan[],
  check: (sheet: Awaited<ReturnType<typeof printed>>, said: string, plan: Plan) => void,
): Promise<void> {
  for (const print of PRINTS)
    for (const plan of plans(print[0].language))
      for (const isAppsFace of [false, true]) {
        const said = `${plan.name}, ${print[0].language}, ${print[1]}, ${isAppsFace ? "app's face" : "fallback"}`;
        check(await printed(plan, print, isAppsFace), said, plan);
      }
}

describe("the sheet on paper", () => {
  it("has everything that is read at the lap at 12 points or more, the rest at 8.5, for each example", async () => {
    const plans = (language: string) =>
      EXAMPLES.map((plan) => (language === "de" ? exampleIn(plan, exampleWords.de) : plan));
    await eachPrint(plans, ({ pages, lapPt, leastPt, over, runs, saysTooMuch }, said, plan) => {
      expect([pages <= 2, saysTooMuch, over], said).toEqual([true, false, []]);
      // Computed sizes are rounded to 1/64 pixel.
      expect(lapPt, said).toBeGreaterThan(11.98);
      expect(leastPt, said).toBeGreaterThan(8.48);
      // On the paper itself nothing was made smaller.
      expect(Math.min(...runs.map((run) => run.pt)), said).toBeGreaterThan(8.45);
      for (const { name } of plan.tiers) {
        const sentence = runs.find((run) => run.text.startsWith(`${name}:`));
        expect(sentence?.pt, `${said}: ${name}`).toBeGreaterThan(13.5);
      }
    });
  }, 600_000);

  it("holds eight tiers that meet at 12 points, 120 facets in seven tiers at 11, uneven ones in inches at 10", async () => {
    const least = new Map([
      [BENCH_PLAN.name, 13.9],
      [RIG_PLAN.name, 11.9],
      [EIGHT_PLAN.name, 11.9],
      [LARGE_PLAN.name, 10.9],
      [UNEVEN_PLAN.name, 9.9],
    ]);
    await eachPrint(
      () => [BENCH_PLAN, RIG_PLAN, EIGHT_PLAN, LARGE_PLAN, UNEVEN_PLAN],
      ({ pages, lapPt, leastPt, over, saysTooMuch }, said, plan) => {
        expect([pages, saysTooMuch, over], said).toEqual([2, false, []]);
        expect(lapPt, said).toBeGreaterThan(least.get(plan.name) ?? Number.POSITIVE_INFINITY);
        expect(leastPt, said).toBeGreaterThan(8.48);
      },
    );
  }, 600_000);

  it("says on the sheet itself when a plan is more than two pages hold", async () => {
    const { pages, saysTooMuch } = await printed(TOO_MUCH_PLAN, PRINTS[0], false);
    expect(pages).toBeGreaterThan(2);
    expect(saysTooMuch).toBe(true);
  });
});
