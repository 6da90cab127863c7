/** No serious finding of axe-core (WCAG 2.2 A and AA) in any place, part of the bench or sheet, by day and by lamp. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { seriousFindings } from "./built-app.ts";
import { STATIONS, walkEverywhere } from "./everywhere.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

/** What is serious on the page as it stands, by day, and what its colours break by lamp. */
async function seriousInBoth(page: Page): Promise<string[]> {
  await page.emulateMedia({ colorScheme: "light" });
  const byDay = await seriousFindings(page);
  await page.emulateMedia({ colorScheme: "dark" });
  return [...byDay, ...(await seriousFindings(page, "colours")).map((finding) => `dark: ${finding}`)];
}

it("finds nothing serious anywhere", async () => {
  const { page, close } = await app.visit({ without3d: true });
  const found: Record<string, string[]> = {};
  let stations = 0;
  await walkEverywhere(page, async (where) => {
    stations++;
    await expect.poll(() => page.locator(".waiting").count()).toBe(0);
    const serious = await seriousInBoth(page);
    if (serious.length > 0) found[where] = serious;
  });
  expect(stations).toBe(STATIONS);
  expect(found).toEqual({});
  await close();
});

it("finds nothing serious on the plan with its 3D picture and a tier picked, wide and on a phone", async () => {
  const { page, close } = await app.visit();
  await page.getByRole("spinbutton", { name: "Arm angle" }).first().focus();
  await page.locator(".tier[data-picked]").waitFor();
  expect(await seriousInBoth(page)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.locator(".picture-names").waitFor();
  expect(await seriousInBoth(page)).toEqual([]);
  await close();
});
