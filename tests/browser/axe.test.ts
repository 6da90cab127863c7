/** No serious finding of axe-core (WCAG 2.2 A and AA) in any place, part of the bench or sheet, in both themes. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type BuiltApp, seriousFindings, serveBuiltApp } from "./built-app.ts";
import { STATIONS, walkEverywhere } from "./everywhere.ts";

let app: BuiltApp;
beforeAll(async () => {
  app = await serveBuiltApp();
});
afterAll(() => app?.close());

describe.each(["light", "dark"] as const)("in the %s theme", (colorScheme) => {
  it("finds nothing serious anywhere", async () => {
    const { page, close } = await app.visit({ colorScheme, without3d: true });
    const found: Record<string, string[]> = {};
    let stations = 0;
    await walkEverywhere(page, async (where) => {
      stations++;
      await expect.poll(() => page.locator(".waiting").count()).toBe(0);
      const serious = await seriousFindings(page);
      if (serious.length > 0) found[where] = serious;
    });
    expect(stations).toBe(STATIONS);
    expect(found).toEqual({});
    await close();
  });

  it("finds nothing serious on the plan with a tier picked, nor on a phone", async () => {
    const { page, close } = await app.visit({ colorScheme });
    await page.getByRole("spinbutton", { name: "Arm angle" }).first().focus();
    await page.locator(".tier[data-picked]").waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await page.setViewportSize({ width: 390, height: 844 });
    await page.locator(".picture-names").waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await close();
  });
});
