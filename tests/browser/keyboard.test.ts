/** The whole plan by keyboard: from an empty marble to three tiers that meet, and the piece turned and read. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { pictureAtRest } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

const focused = (page: Page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    const label = element?.id ? document.querySelector(`label[for="${element.id}"]`)?.textContent : null;
    return label ?? element?.getAttribute("aria-label") ?? element?.textContent ?? "";
  });

/** Presses Tab until the focus stands on something of that name. */
async function tabTo(page: Page, name: RegExp, most = 80): Promise<void> {
  for (let i = 0; i < most; i++) {
    if (name.test(await focused(page))) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never came to ${name}`);
}

describe("the keyboard alone", () => {
  it("goes from an empty marble to three tiers that meet", async () => {
    const { page, errors, close } = await app.visit({ without3d: true });
    await tabTo(page, /^More$/);
    await page.keyboard.press("Enter");
    await page.getByRole("menuitem", { name: "New plan" }).waitFor();
    await page.keyboard.press("Enter");
    await expect.poll(() => page.locator(".tier").count()).toBe(0);

    await page.keyboard.press("Tab");
    await tabTo(page, /Add the first tier/);
    await page.keyboard.press("Enter");
    await expect.poll(() => page.locator(".tier").count()).toBe(1);
    for (const count of [2, 3]) {
      await tabTo(page, /^Add a tier$/);
      await page.keyboard.press("Enter");
      await expect.poll(() => page.locator(".tier").count()).toBe(count);
    }
    // Every tier meets: nothing stands against grinding, and the neighbours touch or share edges.
    expect(await page.locator(".finding[data-severity=stop]").count()).toBe(0);
    const truths = await page.locator(".tier-truth").allTextContents();
    expect(truths[0]).toMatch(/just touch/);
    expect(truths[1]).toMatch(/share .* edges|just touch/);

    await tabTo(page, /^Arm angle$/);
    const before = await page.locator(".tier-truth").allTextContents();
    await page.keyboard.press("ArrowUp");
    await expect.poll(() => page.locator(".tier-truth").allTextContents()).not.toEqual(before);
    await page.keyboard.press("Control+z");
    await expect.poll(() => page.locator(".tier-truth").allTextContents()).toEqual(before);
    expect(errors).toEqual([]);
    await close();
  });

  it("turns the piece, walks its facets and reads their numbers", async () => {
    const { page, close } = await app.visit();
    await page.getByRole("application", { name: "The piece" }).focus();
    const view = () => page.locator(".piece-canvas canvas").screenshot();
    const before = await pictureAtRest(page.locator(".piece-canvas canvas"));
    await page.keyboard.press("ArrowRight");
    await expect.poll(async () => (await view()).equals(before)).toBe(false);
    await page.keyboard.press("PageDown");
    await page.waitForSelector(".facet-line");
    expect(await page.locator(".facet-line").textContent()).toMatch(/facet 1 of 12.*mm.*wide/);
    await page.keyboard.press("Escape");
    await expect.poll(() => page.locator(".facet-line").count()).toBe(0);
    await close();
  });

  it("lists its keys", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await page.keyboard.press("?");
    await page.getByRole("dialog", { name: "Keyboard" }).waitFor();
    await page.keyboard.press("Escape");
    await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
    await close();
  });
});
