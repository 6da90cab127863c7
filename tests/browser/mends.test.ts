/** Every kind of mend in the app: one press clears its finding as one step, undo brings it back. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../src/core/check/report.ts";
import { serializePlan } from "../../src/core/plan/file.ts";
import { MEND_CASES } from "../fixtures/mend-cases.ts";
import { giveFile, planFile } from "./built-app.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const visit = sharedVisit(
  sharedApp(),
  { without3d: true },
  {
    prepare: (page) => page.locator(".tier").first().waitFor(),
  },
);

/** Opens a plan as a person does: as a file. */
async function openFile(page: Page, name: string): Promise<void> {
  const plan = serializePlan({ ...MEND_CASES[name], name });
  await giveFile(page, () => page.keyboard.press("Control+o"), planFile(plan, `${name}.json`));
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
    await expect.poll(() => finding.count()).toBe(0);
    expect(await undoName(page)).toMatch(/^Undo: /);
    await page.locator(".undo").click();
    await expect.poll(() => finding.count()).toBeGreaterThan(0);
    expect(await undoName(page)).toBe("Nothing to undo");
    expect(errors).toEqual([]);
  });
});
