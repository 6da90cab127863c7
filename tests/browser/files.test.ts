/** Plan files through the browser: save, open again, a bad one, one dropped on the page. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { parsePlan } from "../../src/core/plan/file.ts";
import { dropFile, openFromMenu } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

const nameOf = (page: Page) => page.getByRole("textbox", { name: "Name of the plan" });

async function choose(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await openFromMenu(page, "Open a plan file");
  await (await chooser).setFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

describe("plan files", () => {
  it("reads back what it saved", async () => {
    const { page, errors, close } = await app.visit();
    await nameOf(page).fill("Für Anna: 3/4 <b>");
    await nameOf(page).press("Enter");
    const download = page.waitForEvent("download");
    await openFromMenu(page, "Save plan to a file");
    const saved = await download;
    expect(saved.suggestedFilename()).toBe("Für-Anna-3-4-b.glintwright.json");
    const text = readFileSync(await saved.path(), "utf8");
    expect(parsePlan(text).plan.name).toBe("Für Anna: 3/4 <b>");

    await openFromMenu(page, "New plan");
    await expect.poll(() => page.locator(".tier").count()).toBe(0);
    await choose(page, "again.json", text);
    await expect.poll(() => nameOf(page).inputValue()).toBe("Für Anna: 3/4 <b>");
    expect(await page.locator(".tier").count()).toBeGreaterThan(4);
    expect(errors).toEqual([]);
    await close();
  });

  it("says what is wrong with a bad file and leaves the bench as it was", async () => {
    const { page, errors, close } = await app.visit();
    const before = await nameOf(page).inputValue();
    await choose(
      page,
      "broken.json",
      '{"format":"glintwright-plan","version":1,"name":"x","piece":{"diameterMm":-4}}',
    );
    const notice = page.getByRole("alert");
    await notice.waitFor();
    const words = await notice.textContent();
    expect(words).toContain("broken.json can't be opened");
    expect(words).toContain("piece");
    expect(words).toContain("unchanged");
    expect(await nameOf(page).inputValue()).toBe(before);
    expect(errors).toEqual([]);
    await close();
  });

  it("takes a file that is dropped on the page", async () => {
    const { page, close } = await app.visit();
    const text = JSON.stringify({
      format: "glintwright-plan",
      version: 1,
      name: "Dropped",
      piece: { diameterMm: 20, glass: "soda-lime" },
      rig: { wheelStops: null },
      tiers: [],
    });
    await dropFile(page, "dropped.json", text);
    await expect.poll(() => nameOf(page).inputValue()).toBe("Dropped");
    await close();
  });

  it("keeps the plan through a reload and says so", async () => {
    const { page, close } = await app.visit();
    await nameOf(page).fill("Kept over night");
    await nameOf(page).press("Enter");
    await expect
      .poll(() => page.locator(".kept").textContent(), { timeout: 20_000 })
      .toBe("Kept on this device");
    await page.reload();
    await page.waitForSelector(".recipe");
    await expect.poll(() => nameOf(page).inputValue()).toBe("Kept over night");
    await close();
  });
});
