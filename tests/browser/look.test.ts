/** Look as a person uses it, in the running app with WebGL in software: one page, small, so that pictures come soon. */
import { readFileSync } from "node:fs";
import { decode } from "fast-png";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serializePlan } from "../../src/core/plan/file.ts";
import { EXAMPLES } from "../../src/ui/examples.ts";
import { seriousFindings } from "./built-app.ts";
import { type OpenPage, openApp } from "./support.ts";

const openLook = async (page: Page) => {
  await page.getByRole("navigation").getByText("Look", { exact: true }).click();
  await page.locator(".look-page").waitFor();
};
const shows = (page: Page) => page.locator(".traced[data-shows]").waitFor();
/** The outlines of what is selected, as they lie on the screen: they move whenever the eye does. */
const marks = (page: Page) => page.locator(".tier-mark-inner").getAttribute("d");
const untilMarksLeave = (page: Page, before: string | null) =>
  page.waitForFunction((d) => document.querySelector(".tier-mark-inner")?.getAttribute("d") !== d, before);

/** Sixteen pixels of plain RGBE, brighter to the right. */
function smallHdr(): Buffer {
  const [width, height] = [4, 4];
  const pixels = Array.from({ length: width * height }, (_, i) => [128, 128, 128, 127 + (i % width)]);
  const head = `#?RADIANCE\nFORMAT=32-bit_rle_rgbe\n\n-Y ${height} +X ${width}\n`;
  return Buffer.concat([Buffer.from(head), Buffer.from(pixels.flat())]);
}

let opened: OpenPage;
let page: Page;
beforeAll(async () => {
  opened = await openApp("", { width: 1120, height: 520 });
  page = opened.page;
  await page.locator(".recipe").waitFor();
  await openLook(page);
});
afterAll(() => opened.close());

describe("the look", () => {
  it("shows a first picture, says in words how far it is, and lets go of the drawn one", async () => {
    await shows(page);
    const words = await page.locator(".look-status").textContent();
    expect(words).toMatch(/coarse first picture|Getting cleaner: \d+ of \d+ samples|Clean/);
    expect(
      await page.locator(".stage canvas").evaluate((canvas) => getComputedStyle(canvas).visibility),
    ).toBe("hidden");
  });

  it("marks on the traced piece what is selected in the recipe", async () => {
    await page.getByText("Recipe", { exact: true }).click();
    await page.getByRole("spinbutton", { name: "Arm angle" }).first().focus();
    await page.waitForFunction(() => document.querySelector(".tier-mark-inner")?.getAttribute("d") !== "");
    expect(await marks(page)).toMatch(/^M-?\d/);
    await page.getByText("Light and picture", { exact: true }).click();
  });

  it("turns slowly while asked to", async () => {
    const before = await marks(page);
    await page.getByText("Turn slowly").click();
    await untilMarksLeave(page, before);
    await page.getByText("Turn slowly").click();
  });

  it("compares with the uncut ball by a line that keys and hand move", async () => {
    await page.getByText("the uncut ball").click();
    const line = page.getByRole("slider", { name: "Dividing line" });
    await line.focus();
    for (let press = 0; press < 3; press++) await page.keyboard.press("ArrowLeft");
    expect(await line.getAttribute("aria-valuenow")).toBe("44");
    const box = await page.locator(".traced").boundingBox();
    if (!box) throw new Error("the traced picture has no box");
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + 0.44 * box.width, y);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.7 * box.width, y, { steps: 3 });
    await page.mouse.up();
    expect(Number(await line.getAttribute("aria-valuenow"))).toBeCloseTo(70, -1);
  });

  it("compares two plans, and says what is wrong with a file that holds none", async () => {
    const files = page.locator('.look-page input[type="file"][accept^=".json"]');
    await files.setInputFiles({ name: "no.json", mimeType: "application/json", buffer: Buffer.from("{}") });
    await page.getByRole("alert").getByText("no.json can't be compared").waitFor();
    const other = { ...EXAMPLES[0], name: "The other one" };
    const buffer = Buffer.from(serializePlan(other));
    await files.setInputFiles({ name: "other.json", mimeType: "application/json", buffer });
    await page.locator(".divider-names").getByText("The other one").waitFor();
    await page.getByText("side by side").click();
    await page.getByRole("slider", { name: "Dividing line" }).waitFor({ state: "detached" });
    await page.locator(".look-part").getByText("nothing", { exact: true }).click();
    await page.locator(".divider-names").waitFor({ state: "detached" });
  });

  it("takes a person's own .hdr picture for a light, and says why another file is none", async () => {
    const files = page.locator('.look-page input[type="file"][accept=".hdr"]');
    await files.setInputFiles({ name: "note.hdr", mimeType: "", buffer: Buffer.from("no picture") });
    await page.getByRole("alert").getByText("note.hdr can't be used as a light").waitFor();
    await files.setInputFiles({ name: "yard.hdr", mimeType: "", buffer: smallHdr() });
    await page.locator(".choice-button").getByText("yard.hdr").waitFor();
    await page.getByRole("alert").waitFor({ state: "detached" });
  });

  it("strips the piece as one walks past: nine pictures with numbers, and one chosen turns the piece there", async () => {
    await page.getByRole("button", { name: "Trace the strip" }).click();
    await page.locator(".walk-step").nth(8).waitFor();
    const said = await page.locator(".walk-step").allTextContents();
    for (const words of said) expect(words).toMatch(/\d+ % sends light back.*\d+ % lets one see through/);
    const sources = await page
      .locator(".walk-step img")
      .evaluateAll((all) => all.map((one) => (one as HTMLImageElement).src));
    expect(new Set(sources).size).toBe(9);
    const before = await marks(page);
    await page.getByRole("button", { name: "Turn the piece to 20°" }).click();
    await untilMarksLeave(page, before);
  });

  it("saves a PNG of the size asked for, on nothing, with a caption below", async () => {
    await page
      .getByRole("textbox", { name: "Size" })
      .or(page.getByRole("spinbutton", { name: "Size" }))
      .fill("160");
    await page.keyboard.press("Tab");
    await page.getByText("draft").click();
    await page.getByText("Transparent background").click();
    await page.getByText("Caption below").click();
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save PNG" }).click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/\.png$/);
    const picture = decode(readFileSync(await file.path()));
    expect(picture.width).toBe(160);
    expect(picture.height).toBeGreaterThan(160);
    const alpha = (x: number, y: number) => picture.data[4 * (y * picture.width + x) + 3];
    expect(alpha(1, 1)).toBe(0);
    expect(alpha(80, 80)).toBe(255);
  });

  it("stops a picture under way when told to", async () => {
    await page
      .getByRole("textbox", { name: "Size" })
      .or(page.getByRole("spinbutton", { name: "Size" }))
      .fill("2000");
    await page.keyboard.press("Tab");
    await page.getByText(/^best/).click();
    await page.getByRole("button", { name: "Save PNG" }).click();
    await page.getByText(/Tracing the picture: \d+ %/).waitFor();
    await page.getByRole("button", { name: "Cancel" }).click();
    await page.getByRole("button", { name: "Save PNG" }).waitFor();
    expect(await page.getByText("The picture could not be made").count()).toBe(0);
  });

  it("lives through a lost graphics context", async () => {
    await page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>(".traced-canvas canvas");
      const lose = canvas?.getContext("webgl2")?.getExtension("WEBGL_lose_context");
      Object.assign(window, { giveBack: () => lose?.restoreContext() });
      lose?.loseContext();
    });
    await page.locator(".traced[data-phase=lost]").waitFor();
    expect(await page.locator(".look-status").textContent()).toContain("comes back by itself");
    await page.evaluate("giveBack()");
    await shows(page);
  });

  it.each(["light", "dark"] as const)(
    "has no serious finding of axe in the %s theme",
    async (colorScheme) => {
      await page.emulateMedia({ colorScheme });
      expect(await seriousFindings(page)).toEqual([]);
    },
  );

  it("reported no errors on the way", () => {
    expect(opened.errors.filter((words) => !words.includes("CONTEXT_LOST"))).toEqual([]);
  });

  it("keeps the drawn piece, and says why, where a card can't keep exact light", async () => {
    await page.addInitScript(() => {
      const get = WebGL2RenderingContext.prototype.getExtension;
      WebGL2RenderingContext.prototype.getExtension = function (this: WebGL2RenderingContext, name: string) {
        return name === "EXT_color_buffer_float" ? null : get.call(this, name as "OCULUS_multiview");
      } as typeof get;
    });
    await page.reload();
    await page.locator(".recipe").waitFor();
    await openLook(page);
    const alert = page.locator(".look-unable");
    await alert.getByText("This device can't trace light, so the drawn piece is shown instead.").waitFor();
    await alert.getByText("no float colour buffer").first().waitFor();
    expect(
      await page.locator(".stage canvas").evaluate((canvas) => getComputedStyle(canvas).visibility),
    ).toBe("visible");
  });
});
