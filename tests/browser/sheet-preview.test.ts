/** The sheet as a screen shows it: the whole width of the paper at any size, and true size at a tap. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { fileOf } from "./built-app.ts";
import { handedOver, takeFiles } from "./hand-over.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const visit = sharedVisit(
  sharedApp(),
  { viewport: { width: 390, height: 844 }, hasTouch: true, without3d: true },
  {
    prepare: async (page) => {
      await page.getByRole("navigation", { name: "Places" }).getByRole("button", { name: "Bench" }).click();
      await page.getByRole("button", { name: "On paper", exact: true }).click();
      await page.locator(".sheet-shown").waitFor();
    },
  },
);

const PX_PER_MM = 96 / 25.4;
const A4_PX = 210 * PX_PER_MM;
const LETTER_PX = 8.5 * 96;

/** Width of the paper on the screen, of the room for it, and what of it has to be scrolled to, px. */
const widths = (page: Page) =>
  page.locator(".sheet-scroll").evaluate((room) => ({
    paper: room.firstElementChild?.getBoundingClientRect().width ?? 0,
    room: room.clientWidth,
    hidden: room.scrollWidth - room.clientWidth,
  }));

it.each([
  [390, 844],
  [820, 1180],
  [1440, 900],
])(
  "shows the paper's whole width at %i x %i, A4 and Letter, never larger than it is",
  async (width, height) => {
    const { page } = visit;
    await page.setViewportSize({ width, height });
    for (const [paper, px] of [
      ["Letter", LETTER_PX],
      ["A4", A4_PX],
    ] as const) {
      await page.getByText(paper, { exact: true }).click();
      await expect
        .poll(async () => {
          const { paper: shown, room } = await widths(page);
          return Math.abs(shown - Math.min(px, room)) < 1;
        })
        .toBe(true);
      expect((await widths(page)).hidden).toBe(0);
    }
  },
);

it("shows what was tapped in true size under the finger, and the whole width again", async () => {
  const { page } = visit;
  await page.setViewportSize({ width: 390, height: 844 });
  const box = await page.locator(".sheet-shown").boundingBox();
  if (!box) throw new Error("no sheet");
  const tapped = { x: box.x + 0.7 * box.width, y: Math.max(box.y, 0) + 60 };
  await page.touchscreen.tap(tapped.x, tapped.y);
  await page.getByRole("button", { name: "Fit it to the width" }).waitFor();
  expect((await widths(page)).paper).toBeCloseTo(A4_PX, 0);
  const large = await page.locator(".sheet-shown").boundingBox();
  if (!large) throw new Error("no sheet");
  expect(Math.abs(large.x + 0.7 * large.width - tapped.x)).toBeLessThan(3);
  // as far below the sheet's top as before, grown as its width has: lines below may break otherwise at another size
  const grown = large.width / box.width;
  expect(Math.abs(large.y + grown * (tapped.y - box.y) - tapped.y)).toBeLessThan(3);

  await page.getByRole("button", { name: "Fit it to the width" }).press("Enter");
  await page.getByRole("button", { name: "Show it in true size" }).waitFor();
  expect((await widths(page)).hidden).toBe(0);
  expect(visit.errors).toEqual([]);
});

it("is handed to the phone's own programs where the browser can, and nowhere else", async () => {
  const { page } = visit;
  const save = page.getByRole("button", { name: "Save as a file" });
  const send = page.getByRole("button", { name: "Send it" });
  await save.waitFor();
  expect(await send.count()).toBe(0);
  await takeFiles(page);
  await page.getByText("Letter", { exact: true }).click();
  await send.click();
  const file = await fileOf(page, () => save.click());
  await expect.poll(() => handedOver(page)).toEqual([[file.name, "text/html", file.bytes.length]]);
  await page.getByText("A4", { exact: true }).click();
});
