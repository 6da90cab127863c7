/** Plan files through the browser: save, open again, a bad one, one dropped on the page. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { parsePlan } from "../../src/core/plan/file.ts";
import { dropFile, fileOf, giveFile, openFromMenu, planFile } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

const nameOf = (page: Page) => page.getByRole("textbox", { name: "Name of the plan" });

const choose = (page: Page, name: string, text: string): Promise<void> =>
  giveFile(page, () => openFromMenu(page, "Open a plan file"), planFile(text, name));

describe("plan files", () => {
  it("reads back what it saved", async () => {
    const { page, errors, close } = await app.visit({ without3d: true });
    await nameOf(page).fill("Für Anna: 3/4 <b>");
    await nameOf(page).press("Enter");
    const saved = await fileOf(page, () => openFromMenu(page, "Save plan to a file"));
    expect(saved.name).toBe("Für-Anna-3-4-b.glintwright.json");
    const text = saved.bytes.toString("utf8");
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
    const { page, errors, close } = await app.visit({ without3d: true });
    const before = await nameOf(page).inputValue();
    await choose(
      page,
      "broken.json",
      '{"format":"glintwright-plan","version":1,"name":"x","piece":{"diameterMm":-4}}',
    );
    const notice = page.getByRole("alert").filter({ hasText: "broken.json" });
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
    const { page, close } = await app.visit({ without3d: true });
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
    const { page, close } = await app.visit({ without3d: true });
    await nameOf(page).fill("Kept over night");
    await nameOf(page).press("Enter");
    await expect.poll(() => page.locator(".kept").textContent()).toBe("Kept on this device");
    await page.reload();
    await page.waitForSelector(".recipe");
    await expect.poll(() => nameOf(page).inputValue()).toBe("Kept over night");
    await close();
  });
});
