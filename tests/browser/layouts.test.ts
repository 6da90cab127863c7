/** Phone, tablet, wide, zoomed, both themes: everything in its place, nothing cut off, targets large enough. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { sharedApp, sharedVisit } from "./shared.ts";

const app = sharedApp();

const boxOf = async (page: Page, selector: string) => {
  const box = await page.locator(selector).first().boundingBox();
  if (!box) throw new Error(`${selector} is not on the page`);
  return box;
};
/** By how much the page is larger than its window, to the right or down: places scroll within themselves. */
const overflow = (page: Page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth, scrollHeight, clientHeight } = document.documentElement;
    return Math.max(scrollWidth - clientWidth, scrollHeight - clientHeight);
  });

describe("a phone", () => {
  const visit = sharedVisit(app, { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  it("shows the piece above and the recipe below, without scrolling sideways", async () => {
    const { page } = visit;
    const [piece, recipe, places] = [
      await boxOf(page, ".piece-canvas"),
      await boxOf(page, ".side"),
      await boxOf(page, ".places"),
    ];
    expect(piece.y + piece.height).toBeLessThanOrEqual(recipe.y);
    expect(recipe.y + recipe.height).toBeLessThanOrEqual(places.y + 1);
    expect(piece.height).toBeGreaterThan(200);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
  });

  it("gives every button and field on the page 44 pixels", async () => {
    const { page } = visit;
    await page.locator(".tier").first().waitFor();
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>("button, .number-box, a[href]:not(.skip)")]
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.height < 43.5 || box.width < 43.5))
        .map(({ element, box }) => `${element.className} ${element.textContent} ${box.width}x${box.height}`),
    );
    expect(small).toEqual([]);
  });

  it("changes between piece, profile and skin by name", async () => {
    const { page } = visit;
    const names = page.getByRole("navigation", { name: "Pictures" });
    await names.getByRole("button", { name: "Skin" }).click();
    await page.locator(".skin svg").waitFor();
    expect(await page.locator(".piece-canvas").isVisible()).toBe(false);
    await names.getByRole("button", { name: "Piece" }).click();
    expect(await page.locator(".piece-canvas").isVisible()).toBe(true);
  });

  it("traces the look in the very box that the drawn piece has, so that what is picked is what is seen", () =>
    expectTracedInPlace(visit.page));
});

/** One window that is made smaller and larger, as people do; each layout is its own. */
describe("wider pages", () => {
  const visit = sharedVisit(app, {});

  it("puts the piece left of the recipe on a wide page, with profile and skin below it", async () => {
    const { page } = visit;
    const [piece, recipe, skin] = [
      await boxOf(page, ".piece-canvas"),
      await boxOf(page, ".side"),
      await boxOf(page, "[data-picture=skin]"),
    ];
    expect(piece.x + piece.width).toBeLessThanOrEqual(recipe.x + 1);
    expect(piece.width).toBeGreaterThan(recipe.width);
    expect(skin.y).toBeGreaterThan(piece.y + piece.height - 1);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
  });

  it("makes a drawing large in place of the piece, and keeps the one canvas", async () => {
    const { page } = visit;
    await page.evaluate(() => document.querySelector(".piece-canvas canvas")!.setAttribute("data-mine", ""));
    await page.getByRole("button", { name: "Make large: Profile" }).click();
    const [piece, profile] = [
      await boxOf(page, ".piece-canvas"),
      await boxOf(page, "[data-picture=profile]"),
    ];
    expect(profile.height).toBeGreaterThan(piece.height);
    await page.getByRole("button", { name: "Back to the piece" }).click();
    expect(await page.locator("canvas[data-mine]").count()).toBe(1);
    expect((await boxOf(page, ".piece-canvas")).height).toBeGreaterThan(300);
  });

  it("stacks piece, strip and recipe on a tablet", async () => {
    const { page } = visit;
    await page.setViewportSize({ width: 820, height: 1180 });
    const [piece, skin, recipe] = [
      await boxOf(page, ".piece-canvas"),
      await boxOf(page, "[data-picture=skin]"),
      await boxOf(page, ".side"),
    ];
    expect(piece.y + piece.height).toBeLessThanOrEqual(skin.y + 1);
    expect(skin.y + skin.height).toBeLessThanOrEqual(recipe.y + 1);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
  });

  it("stays whole at twice the size", async () => {
    const { page } = visit;
    // what a window of 1280 by 800 shows at 200 per cent
    await page.setViewportSize({ width: 640, height: 400 });
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    expect((await boxOf(page, ".piece-canvas")).height).toBeGreaterThan(120);
    expect((await boxOf(page, ".side")).height).toBeGreaterThan(120);
  });

  it("traces the look in the very box that the drawn piece has, on a wide page too", async () => {
    await visit.page.setViewportSize({ width: 1440, height: 900 });
    await expectTracedInPlace(visit.page);
  });
});

/** Goes to Look and compares the two boxes. */
async function expectTracedInPlace(page: Page): Promise<void> {
  await page.getByRole("navigation").getByText("Look", { exact: true }).click();
  await page.locator(".traced-canvas").waitFor({ state: "attached" });
  const [drawn, traced] = [page.locator(".piece-canvas"), page.locator(".traced-canvas")];
  expect(await traced.first().boundingBox()).toEqual(await drawn.boundingBox());
}

it("moves nothing under the eye while it loads, when a tier is picked, and when one is changed", async () => {
  const { page, close } = await app.visit({
    before: () => {
      const seen: string[] = [];
      Object.assign(window, { shifts: seen });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as (PerformanceEntry & { value: number })[])
          if (entry.value > 0.002)
            seen.push(`${entry.value.toFixed(4)} at ${Math.round(entry.startTime)} ms`);
      }).observe({ type: "layout-shift", buffered: true });
    },
  });
  await page.locator(".tier-name").nth(1).focus();
  await page.getByRole("button", { name: "Counts and angles that work" }).waitFor();
  const angle = page.getByRole("spinbutton", { name: "Arm angle" }).nth(1);
  await angle.focus();
  await angle.press("ArrowUp");
  await expect.poll(() => page.locator(".undo").getAttribute("aria-label")).toBe("Undo: angle of tier 2");
  await page.getByRole("button", { name: "Undo: angle of tier 2" }).click();
  const shifts = await page.evaluate(() => (window as unknown as { shifts: string[] }).shifts);
  expect(shifts).toEqual([]);
  await close();
});
