/** No serious finding of axe-core (WCAG 2.2 A and AA) on the plan and its sheets, in both themes. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type BuiltApp, openFromMenu, seriousFindings, serveBuiltApp } from "./built-app.ts";

let app: BuiltApp;
beforeAll(async () => {
  app = await serveBuiltApp();
});
afterAll(() => app?.close());

describe.each(["light", "dark"] as const)("in the %s theme", (colorScheme) => {
  it("finds nothing serious on the plan with a tier picked", async () => {
    const { page, close } = await app.visit({ colorScheme });
    await page.getByRole("spinbutton", { name: "Arm angle" }).first().focus();
    await page.waitForTimeout(500);
    expect(await seriousFindings(page)).toEqual([]);
    await close();
  });

  it.each(["Piece and wheel", "Settings", "Keyboard", "Examples", "Your plans", "Models and links", "Help"])(
    "finds nothing serious on the sheet %s",
    async (name) => {
      const { page, close } = await app.visit({ colorScheme });
      await openFromMenu(page, name);
      await page.getByRole("dialog").locator(".sheet-body > *").first().waitFor();
      await page.waitForTimeout(300);
      expect(await seriousFindings(page)).toEqual([]);
      await close();
    },
  );

  it("finds nothing serious on a phone", async () => {
    const { page, close } = await app.visit({
      colorScheme,
      viewport: { width: 390, height: 844 },
      hasTouch: true,
    });
    expect(await seriousFindings(page)).toEqual([]);
    await close();
  });
});
