/** Every kind of mend in the app: one press clears its finding as one step, undo brings it back. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { reportPlan } from "../../src/core/check/report.ts";
import { serializePlan } from "../../src/core/plan/file.ts";
import { MEND_CASES } from "../fixtures/mend-cases.ts";
import { type BuiltApp, serveBuiltApp, type Visit } from "./built-app.ts";

let app: BuiltApp;
let visit: Visit;
beforeAll(async () => {
  app = await serveBuiltApp();
  visit = await app.visit({ without3d: true });
  await visit.page.locator(".tier").first().waitFor();
  // Listening must have begun in the browser before the first dialog is asked for.
  visit.page.on("filechooser", () => undefined);
  // what is asked after it is answered after it
  await visit.page.evaluate(() => new Promise(requestAnimationFrame));
}, 240_000);
afterAll(async () => {
  await visit?.close();
  await app?.close();
});

/** Opens a plan as a person does: as a file. */
async function openFile(page: Page, name: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.keyboard.press("Control+o");
  const plan = { ...MEND_CASES[name], name };
  const file = {
    name: `${name}.json`,
    mimeType: "application/json",
    buffer: Buffer.from(serializePlan(plan)),
  };
  await (await chooser).setFiles(file);
  await page.waitForFunction(
    (wanted) => document.querySelector<HTMLInputElement>(".recipe-title input")?.value === wanted,
    name,
  );
}
const undoName = (page: Page) => page.locator(".undo").getAttribute("aria-label");

describe("a mend in the app", () => {
  it.each(Object.keys(MEND_CASES))("clears %s with one press, as one step", async (code) => {
    const { page, errors } = visit;
    await openFile(page, code);
    const tier = reportPlan(MEND_CASES[code]).findings.find((f) => f.code === code)?.tier;
    const finding = page.locator(
      tier === undefined
        ? `.finding[data-code="${code}"]:not([data-tier])`
        : `.finding[data-code="${code}"][data-tier="${tier}"]`,
    );
    const mend = finding.locator(".mend").first();
    await mend.waitFor({ state: "attached", timeout: 120_000 });
    // What it does and what comes of it are said beforehand.
    expect(await mend.textContent()).toMatch(/^.+: .+$/);
    await mend.click();
    await expect.poll(() => finding.count(), { timeout: 20_000 }).toBe(0);
    expect(await undoName(page)).toMatch(/^Undo: /);
    await page.locator(".undo").click();
    await expect.poll(() => finding.count(), { timeout: 20_000 }).toBeGreaterThan(0);
    expect(await undoName(page)).toBe("Nothing to undo");
    expect(errors).toEqual([]);
  });
});
