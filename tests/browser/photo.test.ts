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

  it("says so when a file is no picture", async () => {
    const { page } = visit;
    await openInside(page);
    await page.locator(".photo input[type=file]").setInputFiles(file("notes.png", Buffer.from("no picture")));
    await page.locator(".photo [role=alert]", { hasText: "notes.png can't be read" }).waitFor();
  });
});
