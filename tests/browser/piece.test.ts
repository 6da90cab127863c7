/** The hand on the piece: a press picks, a drag turns, a drag on what is picked moves its tier, as one step. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type BuiltApp, serveBuiltApp } from "./built-app.ts";

let app: BuiltApp;
beforeAll(async () => {
  app = await serveBuiltApp();
});
afterAll(() => app?.close());

/** A little right of the middle of the picture, where a facet of the shoulder lies. */
async function middleOf(page: Page): Promise<{ x: number; y: number }> {
  const box = await page.locator(".stage").boundingBox();
  if (!box) throw new Error("there is no stage");
  return { x: box.x + box.width * 0.54, y: box.y + box.height * 0.56 };
}
const sentences = (page: Page) =>
  page
    .locator(".tier")
    .evaluateAll((tiers) =>
      tiers.map((tier) => [...tier.querySelectorAll("input")].map((input) => input.value).join(" ")),
    );
const undoName = (page: Page) => page.locator(".undo").getAttribute("aria-label");

async function drag(page: Page, from: { x: number; y: number }, dx: number, dy: number, release = true) {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let i = 1; i <= 6; i++) await page.mouse.move(from.x + (dx * i) / 6, from.y + (dy * i) / 6);
  if (release) await page.mouse.up();
}

describe("the hand on the piece", () => {
  it("turns it by a drag and leaves the plan alone", async () => {
    const { page, close } = await app.visit();
    const before = await sentences(page);
    const picture = await page.locator(".stage canvas").screenshot();
    await drag(page, await middleOf(page), 90, 20);
    await page.waitForTimeout(400);
    expect((await page.locator(".stage canvas").screenshot()).equals(picture)).toBe(false);
    expect(await sentences(page)).toEqual(before);
    expect(await undoName(page)).toBe("Nothing to undo");
    await close();
  });

  it("moves the picked tier by a drag as one step; undo and Escape bring it back", async () => {
    const { page, errors, close } = await app.visit();
    const before = await sentences(page);
    const at = await middleOf(page);
    await page.mouse.click(at.x, at.y);
    await page.waitForSelector(".facet-line");
    await page.waitForTimeout(500);

    await drag(page, at, 70, 0, false);
    await expect.poll(() => sentences(page)).not.toEqual(before);
    await page.keyboard.press("Escape");
    await expect.poll(() => sentences(page)).toEqual(before);
    await page.mouse.up();
    expect(await undoName(page)).toBe("Nothing to undo");

    await drag(page, at, 70, 0);
    await expect.poll(() => undoName(page)).toMatch(/^Undo: (start|angle) of tier \d$/);
    expect(await sentences(page)).not.toEqual(before);
    await page.locator(".undo").click();
    await expect.poll(() => sentences(page)).toEqual(before);
    expect(await undoName(page)).toBe("Nothing to undo");
    expect(errors).toEqual([]);
    await close();
  });
});
