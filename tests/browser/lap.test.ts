/** The page for the lap by itself, as a phone's bookmark opens it: its own address, the network cut, a fresh page each time. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { renamePlan } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, without3d: true };

const at = (page: Page, step: number) => page.locator(`.lap-foot [data-step="${step}"]`).waitFor();

/** Holds a key until the page has moved on to a step. */
async function holdTo(page: Page, step: number): Promise<void> {
  await page.keyboard.down("b");
  await at(page, step);
  await page.keyboard.up("b");
}

describe("the page for the lap", () => {
  it("opens from its own address without a network, at the step where the work stood", async () => {
    const { page, errors, foreign, close } = await app.visit({ ...PHONE, serviceWorkers: "allow" });
    await renamePlan(page, "Kept for the lap");
    await page.getByText("Kept on this device", { exact: true }).first().waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    const address = `${new URL(page.url()).origin}/#lap`;
    const context = page.context();
    await context.setOffline(true);
    await page.close();

    const first = await context.newPage();
    await first.goto(address);
    await at(first, 1);
    for (const step of [2, 3, 4]) await holdTo(first, step);
    const stop = await first.locator(".lap-stop b").textContent();
    await first.reload();
    await at(first, 4);
    expect(await first.locator(".lap-stop b").textContent()).toBe(stop);
    await holdTo(first, 5);
    await first.close();

    // The phone put the page away and has to load it anew.
    const again = await context.newPage();
    const wrong: string[] = [];
    again.on("pageerror", (error) => wrong.push(error.message));
    await again.goto(address);
    await at(again, 5);
    expect(await again.locator(".lap-head").textContent()).toContain("Kept for the lap");
    expect(wrong).toEqual([]);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });
});
