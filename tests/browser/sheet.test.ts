/** The sheet printed: what the hands need is large on two pages, whatever the paper, the language and the face it is set in. */
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { sheetFace } from "../../src/cli/sheet-face.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import type { SolvedPlan } from "../../src/core/plan/solved.ts";
import { sheetHtml } from "../../src/sheet/sheet.ts";
import { lineMm, type Paper } from "../../src/sheet/sheet-style.ts";
import { EXAMPLES } from "../../src/ui/examples.ts";
import { exampleIn, exampleWords } from "../../src/ui/messages/examples.ts";
import { sheetWordsDe } from "../../src/words/de/sheet.ts";
import { sheetWordsEn } from "../../src/words/en/sheet.ts";
import type { SheetWords } from "../../src/words/sheet.ts";
import { BENCH_PLAN, EIGHT_PLAN, LARGE_PLAN, RIG_PLAN, TOO_MUCH_PLAN, UNEVEN_PLAN } from "./bench-plan.ts";
import { pdfPages } from "./pdf-pages.ts";
import { sharedThing } from "./shared.ts";
import { sharedBrowser } from "./support.ts";

const PX_PER_MM = 96 / 25.4;
/** What the hands need at the wet lap. */
const AT_THE_LAP =
  ".say, .held, .rules, .turn h2, .turn p:not(.care), .stages li, .ticks th, .ticks strong, .ticks small";
/** The sheet as it stands where typefaces from a file are refused: in whatever face the machine has, here a wide one. */
const withoutFace = (sheet: string): string => sheet.replace(/@font-face[^}]*\}/g, "");

const PRINTS = [
  [sheetWordsEn, "a4", "mm"],
  [sheetWordsEn, "letter", "inch"],
  [sheetWordsDe, "a4", "mm"],
  [sheetWordsDe, "letter", "mm"],
] as const;
type Print = readonly [SheetWords, Paper, "mm" | "inch"];

const paper = sharedThing(
  async () => {
    const printed = await (await sharedBrowser()).newPage();
    await printed.emulateMedia({ media: "print" });
    return printed;
  },
  (printed) => printed.close(),
);
let page: Page;
beforeEach(() => {
  page = paper();
});

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

const solutions = new WeakMap<Plan, SolvedPlan>();
/** Each plan solved once for all its prints. */
function solved(plan: Plan): SolvedPlan {
  const answer = solutions.get(plan) ?? solvePlan(plan);
  solutions.set(plan, answer);
  return answer;
}

/** Puts a sheet into the page as one opens a file. */
async function show(
  plan: Plan,
  [words, paper, unit]: Print,
  change = (sheet: string) => sheet,
): Promise<void> {
  await page.setViewportSize({ width: Math.round(lineMm(paper) * PX_PER_MM), height: 1000 });
  const sheet = sheetHtml(solved(plan), { words, unit, paper, face: await sheetFace() });
  // A page of its own: the rule against what is outside stays with a document.
  await page.goto("about:blank");
  await page.setContent(change(sheet));
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

const onPaper = async (what?: "boxes") =>
  pdfPages(await page.pdf({ preferCSSPageSize: true, printBackground: true }), what);

/** A plan's sheet as it lies on paper. */
async function printed(plan: Plan, print: Print) {
  const [words] = print;
  await show(plan, print);
  const faces = await page.evaluate(() => [...document.fonts].map(({ status }) => status));
  expect(faces).toContain("loaded");
  const pages = await onPaper();
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
      check(await printed(plan, print), `${plan.name}, ${print[0].language}, ${print[1]}`, plan);
}

/** Names of the typefaces that the sheet's text came out in, and whether each came with the sheet. */
async function facesShown(): Promise<readonly { readonly name: string; readonly isOwn: boolean }[]> {
  // what has words of its own: of all else the browser has to be asked for nothing
  await page.evaluate(() => {
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode())
      if (texts.currentNode.textContent?.trim())
        texts.currentNode.parentElement?.setAttribute("data-says", "");
  });
  const tools = await page.context().newCDPSession(page);
  await tools.send("DOM.enable");
  await tools.send("CSS.enable");
  const { root } = await tools.send("DOM.getDocument");
  const { nodeIds } = await tools.send("DOM.querySelectorAll", {
    nodeId: root.nodeId,
    selector: "[data-says]",
  });
  const found = new Map<string, boolean>();
  for (const nodeId of nodeIds)
    for (const font of (await tools.send("CSS.getPlatformFontsForNode", { nodeId })).fonts)
      found.set(font.familyName, font.isCustomFont);
  return [...found].map(([name, isOwn]) => ({ name, isOwn }));
}

/** How far the box of a number reaches over its letters on either side, and how far letters of neighbours are apart, px. */
const roomAtStops = () =>
  page.evaluate(() => {
    const inkOf = (element: Element) => {
      const range = document.createRange();
      range.selectNodeContents(element.firstChild ?? element);
      return range.getBoundingClientRect();
    };
    let [within, between] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (const row of document.querySelectorAll(".ticks thead tr")) {
      const stops = [...row.querySelectorAll(".stop")];
      for (const what of ["strong", "small"]) {
        const inks = stops.flatMap((stop) => {
          const label = stop.querySelector(what);
          if (!label) return [];
          const [ink, box] = [inkOf(label), stop.getBoundingClientRect()];
          within = Math.min(within, ink.left - box.left, box.right - ink.right);
          return [ink];
        });
        for (const [i, ink] of inks.slice(1).entries()) between = Math.min(between, ink.left - inks[i].right);
      }
    }
    const borders = [...document.querySelectorAll(".stop")].map((stop) => {
      const { borderLeftWidth, borderRightWidth, borderLeftStyle } = getComputedStyle(stop);
      return [
        borderLeftStyle,
        Number.parseFloat(borderLeftWidth) >= 1,
        Number.parseFloat(borderRightWidth) >= 1,
      ];
    });
    return { within, between, isBoxed: borders.every(([style, l, r]) => style === "solid" && l && r) };
  });

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
    const { pages, saysTooMuch } = await printed(TOO_MUCH_PLAN, PRINTS[0]);
    expect(pages).toBeGreaterThan(2);
    expect(saysTooMuch).toBe(true);
  });

  it("comes out in the face that it carries, names of Europe's languages included, on a machine without it", async () => {
    const name =
      "\u017dlu\u0165ou\u010dk\u00fd \u0141\u00f3d\u017a \u00c6r\u00f8 \u0150rs\u00e9g \u015eim\u015fek \u0122eig\u0101 \u00d7 \u2122 \u20ac \u201e\u00df\u201c \u2013";
    const own = { ...UNEVEN_PLAN, name, notes: name };
    for (const print of [PRINTS[0], PRINTS[2]]) {
      await show(own, print);
      expect(await facesShown(), print[0].language).toEqual([
        { name: expect.stringContaining("Atkinson Hyperlegible Next"), isOwn: true },
      ]);
    }
    await show(own, PRINTS[0], withoutFace);
    expect((await facesShown()).every(({ name: face, isOwn }) => face.startsWith("DejaVu") && !isOwn)).toBe(
      true,
    );
  });

  it("keeps stop numbers apart in boxes of their own, in any face, on the page and in text taken from it", async () => {
    const inFace = (name: string) => (sheet: string) =>
      withoutFace(sheet).replace("<style>", `<style>body { font-family: "${name}" !important; }`);
    for (const [face, change] of [
      ["own", undefined],
      ["the machine's", withoutFace],
      ["DejaVu Serif", inFace("DejaVu Serif")],
      ["DejaVu Sans Mono", inFace("DejaVu Sans Mono")],
    ] as const)
      for (const [nth, plan] of [RIG_PLAN, LARGE_PLAN, UNEVEN_PLAN].entries())
        for (const print of [PRINTS[1], PRINTS[2]]) {
          const said = `${plan.name}, ${print[0].language}, ${face}`;
          await show(plan, print, change);
          const { within, between, isBoxed } = await roomAtStops();
          expect(isBoxed, said).toBe(true);
          expect(within, said).toBeGreaterThan(0.4);
          expect(between, said).toBeGreaterThan(1.5);
          expect((await shown()).over, said).toEqual([]);
          const copied = await page.evaluate(() => {
            getSelection()?.selectAllChildren(document.body);
            return String(getSelection());
          });
          // No number is longer than a stop's or a width's own.
          const tooLong = (text: readonly string[]) => text.filter((word) => /^[\d.,]*\d{5}/.test(word));
          expect(tooLong(copied.split(/\s+/)), said).toEqual([]);
          // on paper it stands as on the page: each plan in each face, on one of the two papers
          if (print !== PRINTS[1 + (nth % 2)]) continue;
          const words = (await onPaper()).flatMap((one) => one.text.split(/\s+/));
          expect(tooLong(words), said).toEqual([]);
          const labels = await page.locator(".stop strong").allTextContents();
          for (const label of labels) expect(words, said).toContain(label.trim());
        }
  }, 300_000);

  it("prints its gauges exactly as long as they say, in any face, whatever stands beside them", async () => {
    /** Something that a face or a translation makes far too long for its line. */
    const tooLong = (sheet: string) =>
      withoutFace(sheet).replace(
        "<body>",
        `<body><p style="white-space: nowrap">${"far too long ".repeat(30)}</p>`,
      );
    for (const change of [undefined, withoutFace, tooLong])
      for (const print of PRINTS) {
        await show(EIGHT_PLAN, print, change);
        const gauges = await page
          .locator("svg[data-mm]")
          .evaluateAll((all) => all.map((svg) => Number(svg.getAttribute("data-mm"))));
        expect(gauges.length).toBeGreaterThan(4);
        const widths = (await onPaper("boxes")).flatMap((one) => one.boxes.map((box) => box.widthMm));
        for (const mm of gauges) {
          const off = Math.min(...widths.map((width) => Math.abs(width - mm)));
          expect(off, `a bar of ${mm} mm`).toBeLessThan(0.01 + 0.0005 * mm);
        }
      }
  }, 300_000);
});
