/** One's own marble in the app: the photograph is found, shown traced, put inside as one step, kept with the plan; bad files get words. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { png, raster } from "../core/optics/pictures.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const visit = sharedVisit(
  sharedApp(),
  { without3d: true },
  { prepare: (page) => page.locator(".tier").first().waitFor() },
);

/** A dark ball on white with a red and a green half. */
const ball = raster(320, 240, (u, v) => {
  const [x, y] = [320 * u - 150, 240 * v - 120];
  const r = Math.hypot(x, y) / 90;
  if (r > 1) return [235, 235, 235, 255];
  return r > 0.6 ? [70, 75, 80, 255] : x < 0 ? [200, 40, 40, 255] : [40, 170, 60, 255];
});
async function openInside(page: Page): Promise<void> {
  const line = page.getByRole("button", { name: /^Inside: / });
  if ((await line.getAttribute("aria-expanded")) !== "true") await line.click();
}
/** Drops one picture under several names, as from a folder. */
const dropPictures = (page: Page, names: readonly string[], base64: string): Promise<void> =>
  page.evaluate(
    ({ names, base64 }) => {
      const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
      const carried = new DataTransfer();
      for (const name of names) carried.items.add(new File([bytes], name, { type: "image/png" }));
      document
        .querySelector(".drop")
        ?.dispatchEvent(new DragEvent("drop", { bubbles: true, cancelable: true, dataTransfer: carried }));
    },
    { names, base64 },
  );
const file = (name: string, buffer: Buffer) => ({ name, mimeType: "image/png", buffer });

describe("a photograph of the uncut ball", () => {
  it("becomes the inside in one step that undo takes back", async () => {
    const { page, errors } = visit;
    await openInside(page);
    const photo = page.locator(".photo");
    await photo.locator("input[type=file]").setInputFiles(file("ball.png", Buffer.from(png(ball))));
    const radius = photo.getByRole("spinbutton", { name: "Radius" });
    await expect.poll(async () => Math.abs(Number(await radius.inputValue()) - 90)).toBeLessThanOrEqual(1);
    await expect.poll(() => photo.locator("canvas").count(), { timeout: 120_000 }).toBe(2);
    const designs = page.locator(".designs > li");
    const before = await designs.count();
    await photo.getByRole("button", { name: "Put it inside" }).click();
    await expect.poll(() => designs.count(), { timeout: 60_000 }).toBe(before + 1);
    const undo = page.locator(".undo");
    await expect.poll(() => undo.getAttribute("aria-label")).toBe("Undo: a photograph inside");
    await undo.click();
    await expect.poll(() => undo.getAttribute("aria-label")).toBe("Nothing to undo");
    expect(errors).toEqual([]);
  });

  it("of both sides, dropped on the page at once, become one design; a point moved by hand takes the circle with it", async () => {
    const { page, errors } = visit;
    await page.reload();
    await page.locator(".tier").first().waitFor();
    // dropped where the inside has no fields: they lead to where it has
    await page.getByRole("button", { name: "Ideas", exact: true }).click();
    await page.locator(".idea-wish").waitFor();
    await dropPictures(page, ["front.png", "back.png"], Buffer.from(png(ball)).toString("base64"));
    const photo = page.locator(".photo");
    const put = photo.getByRole("button", { name: "Put both inside" });
    await put.waitFor({ timeout: 60_000 });
    expect(await photo.getByRole("heading", { name: /^From the/ }).allTextContents()).toEqual([
      "From the front",
      "From the back",
    ]);
    const first = photo.locator(".designs > li").first();
    const numbers = () =>
      Promise.all(
        ["Middle, from the left", "Middle, from the top", "Radius"].map(async (name) =>
          Number(await first.getByRole("spinbutton", { name }).inputValue()),
        ),
      );
    await expect.poll(async () => Math.abs((await numbers())[2] - 90)).toBeLessThanOrEqual(1);
    const [x, y, r] = await numbers();
    await first.locator(".photo-outline").scrollIntoViewIfNeeded();
    const box = await first.locator(".photo-outline").boundingBox();
    const scale = (box?.width ?? 0) / 320;
    // the point above the middle, pulled up by a third of the radius
    await page.mouse.move((box?.x ?? 0) + scale * x, (box?.y ?? 0) + scale * (y - r));
    await page.mouse.down();
    await page.mouse.move((box?.x ?? 0) + scale * x, (box?.y ?? 0) + scale * (y - (4 / 3) * r), { steps: 4 });
    await page.mouse.up();
    const [x2, y2, r2] = await numbers();
    expect(r2).toBeGreaterThan(r + 5);
    // the two others stay on it, and the one in the hand is
    for (const [px, py] of [
      [x, y - (4 / 3) * r],
      [x + r * Math.cos(Math.PI / 6), y + r / 2],
      [x - r * Math.cos(Math.PI / 6), y + r / 2],
    ])
      expect(Math.abs(Math.hypot(px - x2, py - y2) - r2)).toBeLessThan(2);

    const designs = page.locator(".inside-part section > .designs").first().locator("> li");
    const before = await designs.count();
    await put.click();
    await expect.poll(() => designs.count(), { timeout: 60_000 }).toBe(before + 1);
    expect(errors).toEqual([]);
  });

  it("says so when a file is no picture", async () => {
    const { page } = visit;
    // two photographs, as many as there may be, still lie there from before
    await page.reload();
    await page.locator(".tier").first().waitFor();
    await openInside(page);
    await page.locator(".photo input[type=file]").setInputFiles(file("notes.png", Buffer.from("no picture")));
    await page.locator(".photo [role=alert]", { hasText: "notes.png can't be read" }).waitFor();
  });
});
