/**
 * One walk through the whole app without a network: every place, part of the bench and sheet is there, asks nothing of another
 * origin, and has no serious finding of axe-core (WCAG 2.2 A and AA), by day and by lamp.
 */
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
  await page.addInitScript(NO_3D);
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
    if (where === "Ideas") await dropFile(page, "bench.json", JSON.stringify(BENCH_PLAN));
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
