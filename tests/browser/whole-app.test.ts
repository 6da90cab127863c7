/**
 * One walk through the whole app without a network: every place, part of the bench and sheet is there, asks nothing of another
 * origin, and has no serious finding of axe-core (WCAG 2.2 A and AA), by day and by lamp; then the page for the lap by itself.
 */
import type { Page } from "playwright-core";
import { afterAll, afterEach, describe, expect, it } from "vitest";
import { BENCH_PLAN } from "./bench-plan.ts";
import { dropFile, nameField, renamePlan, seriousInBothThemes } from "./built-app.ts";
import { guideTo, STATIONS, walkEverywhere } from "./everywhere.ts";
import { sharedApp } from "./shared.ts";
import { NO_3D } from "./support.ts";

const app = sharedApp();

/** A machine on which everything that is counted off the main thread takes its time. */
const slowWorkers = () => {
  const LATE_MS = 400;
  Worker.prototype.postMessage = new Proxy(Worker.prototype.postMessage, {
    apply: (post, worker, given) => void setTimeout(() => Reflect.apply(post, worker, given), LATE_MS),
  });
};
/** For one step of the walk on such a machine. */
const PATIENCE_MS = 120_000;

/** What was seen at the stations of the walk, and the page at its end. */
async function walk() {
  const { page, errors, foreign, close } = await app.visit({ serviceWorkers: "allow", before: slowWorkers });
  page.setDefaultTimeout(PATIENCE_MS);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  // the first visit's worker takes hold of the page with the next load
  await page.reload();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.context().setOffline(true);
  await page.reload();
  // what draws in 3D and what traces light are there
  await page.waitForSelector(".piece-canvas[data-state=ready] canvas", { state: "attached" });
  await guideTo(page).goTo("look");
  await page.locator(".traced[data-shows]").waitFor();
  await guideTo(page).goTo("plan");
  // all else needs neither, and is walked far faster without
  await page.context().addInitScript(NO_3D);
  await page.reload();
  const seen: string[] = [];
  const broken: string[] = [];
  const serious: Record<string, string[]> = {};
  await walkEverywhere(page, async (where) => {
    // nothing is still being fetched, and nothing has broken off
    await expect.poll(() => page.locator(".waiting").count()).toBe(0);
    if ((await page.locator(".broken").count()) > 0) broken.push(where);
    const found = await seriousInBothThemes(page);
    if (found.length > 0) serious[where] = found;
    seen.push(where);
    // the bench of a plan with a rig, whose parts have all that they can have
    if (where === "Ideas") {
      await dropFile(page, "bench.json", JSON.stringify(BENCH_PLAN));
      // it goes to Plan: only then does the walk go on, else it is called back from where it went
      await expect.poll(() => nameField(page).inputValue()).toBe(BENCH_PLAN.name);
    }
  });
  return { page, errors, foreign, close, seen, broken, serious };
}

describe("on one walk without a network", () => {
  let begun: ReturnType<typeof walk> | undefined;
  const walked = () => {
    begun ??= walk();
    return begun;
  };
  afterEach(({ task }) => {
    if (task.result?.state === "fail") begun = undefined;
  });
  afterAll(async () => (await begun)?.close());

  it("has every place, part and sheet once visited", async () => {
    const { seen, broken } = await walked();
    expect(seen).toHaveLength(STATIONS);
    expect(broken).toEqual([]);
  });

  it("finds nothing serious anywhere", async () => {
    const { seen, serious } = await walked();
    expect(seen).toHaveLength(STATIONS);
    expect(serious).toEqual({});
  });

  it("asks nothing of another origin, keeps a change, and runs no script that a stranger brings in", async () => {
    const { page, errors, foreign } = await walked();
    await renamePlan(page, "Made offline");
    await page.getByText("Kept on this device", { exact: true }).first().waitFor();
    await page.reload();
    await expect.poll(() => nameField(page).inputValue()).toBe("Made offline");
    expect(foreign).toEqual([]);
    expect(errors).toEqual([]);
    const ran = await page.evaluate(() => {
      const script = document.createElement("script");
      script.textContent = "window.strangerRan = true";
      document.head.append(script);
      return "strangerRan" in window;
    });
    expect(ran).toBe(false);
  });

  it("opens the page for the lap from its own address as a phone's bookmark does, at the step where the work stood", async () => {
    const { page, foreign } = await walked();
    await renamePlan(page, "Kept for the lap");
    await page.getByText("Kept on this device", { exact: true }).first().waitFor();
    const address = `${new URL(page.url()).origin}/#lap`;
    const context = page.context();
    await page.close();
    const wrong: string[] = [];
    const fresh = async () => {
      const opened = await context.newPage();
      opened.setDefaultTimeout(PATIENCE_MS);
      opened.on("pageerror", (error) => wrong.push(error.message));
      await opened.setViewportSize({ width: 390, height: 844 });
      await opened.goto(address);
      return opened;
    };
    const at = (on: Page, step: number) => on.locator(`.lap-foot [data-step="${step}"]`).waitFor();
    const holdTo = async (on: Page, step: number) => {
      await on.keyboard.down("b");
      await at(on, step);
      await on.keyboard.up("b");
    };
    const first = await fresh();
    await at(first, 1);
    for (const step of [2, 3, 4]) await holdTo(first, step);
    const stop = await first.locator(".lap-stop b").textContent();
    await first.reload();
    await at(first, 4);
    expect(await first.locator(".lap-stop b").textContent()).toBe(stop);
    await holdTo(first, 5);
    await first.close();

    // The phone put the page away and has to load it anew.
    const again = await fresh();
    await at(again, 5);
    expect(await again.locator(".lap-head").textContent()).toContain("Kept for the lap");
    expect(wrong).toEqual([]);
    expect(foreign).toEqual([]);
  });
});

it("has nothing serious on the plan with its 3D picture and a tier picked, wide and on a phone", async () => {
  const { page, close } = await app.visit();
  await page.getByRole("spinbutton", { name: "Arm angle" }).first().focus();
  await page.locator(".tier[data-picked]").waitFor();
  expect(await seriousInBothThemes(page)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.locator(".picture-names").waitFor();
  expect(await seriousInBothThemes(page)).toEqual([]);
  await close();
});
