/** The way round, walked as a newcomer does, on a phone, a tablet and a wide screen, in both languages. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { helpWords } from "../../src/ui/messages/help.ts";
import { shellWords } from "../../src/ui/messages/shell.ts";
import { LANGUAGES } from "../../src/words/language.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

const TARGET = "[data-guided]";
const strip = (page: Page, step: string) => page.locator(`.way-round[data-step="${step}"]`);
const press = (page: Page, name: string) =>
  page.locator(".way-round").getByRole("button", { name, exact: true }).click();

/** Whether what is pointed at can be seen, and nothing of the strip lies on it. */
const pointsWell = (page: Page) =>
  page.evaluate((target) => {
    const [at, over] = [target, ".way-round"].map((one) =>
      document.querySelector(one)?.getBoundingClientRect(),
    );
    if (!at || !over || at.width === 0) return "nothing to see";
    const [x, y] = [at.left + at.width / 2, at.top + Math.min(at.height / 2, 20)];
    const top = document.elementFromPoint(x, y);
    if (!top?.closest(target) && !document.querySelector(target)?.contains(top))
      return `under ${top?.className}`;
    const isCovered =
      at.left < over.right && over.left < at.right && at.top < over.bottom && over.top < at.bottom;
    return isCovered && top?.closest(".way-round") ? "covered" : "seen";
  }, TARGET);

/** What is done at each step, by hand. */
const DEEDS: readonly (readonly [string, (page: Page) => Promise<void>])[] = [
  [
    "turn",
    async (page) => {
      const box = await page.locator(TARGET).boundingBox();
      if (!box) throw new Error("nothing to turn");
      const y = box.y + box.height / 4;
      // the hand has hold of the piece itself, not of words that lie on it
      const held = await page.evaluate(
        ([x, y]) => document.elementFromPoint(x, y)?.closest(".piece-canvas") !== null,
        [box.x + box.width / 2, y],
      );
      expect(held).toBe(true);
      await page.mouse.move(box.x + box.width / 2, y);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width / 2 + 60, y, { steps: 4 });
      await page.mouse.up();
    },
  ],
  ["read", (page) => page.locator(`${TARGET} .tier-truth`).click()],
  [
    "change",
    async (page) => {
      await page.locator(TARGET).fill("40");
      await page.keyboard.press("Enter");
    },
  ],
  ["undo", (page) => page.locator(TARGET).click()],
  ["look", (page) => page.locator(TARGET).click()],
  ["bench", (page) => page.locator(TARGET).click()],
];

describe("the way round", () => {
  const SIZES = [
    [390, 844],
    [820, 1180],
    [1440, 900],
  ] as const;
  for (const [language, [width, height]] of LANGUAGES.flatMap((one) =>
    SIZES.map((size) => [one, size] as const),
  ))
    it(`points at what it speaks of, waits for it and turns out well, at ${width} x ${height}, ${language}`, async () => {
      const locale = { en: "en-GB", de: "de-DE" }[language];
      const words = helpWords[language].guide;
      const viewport = { width, height };
      const { page, errors, close } = await app.visit({ viewport, locale, without3d: true });
      const name = page.locator(".recipe-title input");
      const own = await name.inputValue();
      await page.getByRole("button", { name: shellWords[language].guideOffer.start }).click();
      for (const [step, deed] of DEEDS) {
        await strip(page, step).waitFor();
        await expect.poll(() => pointsWell(page), { message: step }).toBe("seen");
        // all presses in one row: the strip takes no more of the page than it needs
        const tops = await strip(page, step)
          .getByRole("button")
          .evaluateAll((all) => new Set(all.map((one) => Math.round(one.getBoundingClientRect().top))).size);
        expect(tops, step).toBe(1);
        const last = step === DEEDS.at(-1)?.[0];
        const next = strip(page, step).getByRole("button", {
          name: last ? words.close : words.next,
          exact: true,
        });
        expect(await next.isDisabled(), step).toBe(true);
        await deed(page);
        await expect.poll(() => next.isDisabled(), { message: step }).toBe(false);
        expect(await page.locator(".verdict").getAttribute("data-verdict"), step).toBe("meets");
        // what was done it covers as little, with the word that it is done
        await expect.poll(() => pointsWell(page), { message: step }).toBe("seen");
        await next.click();
      }
      await page.locator(".way-round").waitFor({ state: "detached" });
      expect(await page.evaluate(() => document.querySelector("[data-guided]"))).toBeNull();
      // what lay on the bench before is there again, where one began
      await page.locator('.frame[data-place="plan"]').waitFor();
      await expect.poll(() => name.inputValue()).toBe(own);
      expect(errors).toEqual([]);
      await close();
    });

  it("passes over Undo where nothing was changed", async () => {
    const { page, close } = await app.visit({ viewport: { width: 390, height: 844 }, without3d: true });
    await page.getByRole("button", { name: "Show me round" }).click();
    for (const step of ["turn", "read", "change"]) {
      await strip(page, step).waitFor();
      await press(page, "Skip");
    }
    await strip(page, "look").waitFor();
    await press(page, "Back");
    await strip(page, "change").waitFor();
    await close();
  });
});
