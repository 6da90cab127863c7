/** The page for the lap, opened from the bench: a held press, coming back, a gauge for the screen, the screen kept on. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { benchOf } from "../../src/core/bench/bench.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { HELD_MS, openBench, pressPart, SHORT_MS, SLOW, severeFindings } from "./bench-page.ts";
import { BENCH_PLAN } from "./bench-plan.ts";
import type { OpenPage } from "./support.ts";

let opened: OpenPage;
let page: Page;
const part = (name: string) => pressPart(page, name);
const bench = benchOf(solvePlan(BENCH_PLAN));

async function hold(name: RegExp): Promise<void> {
  const box = await page.getByRole("button", { name }).boundingBox();
  if (!box) throw new Error(`no button ${name}`);
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.waitForTimeout(HELD_MS);
  await page.mouse.up();
}
const stepNow = (): Promise<string | null> => page.locator(".lap-foot [data-step]").getAttribute("data-step");
const reachStep = (n: number) => page.locator(`.lap-foot [data-step="${n}"]`).waitFor(SLOW);

beforeAll(async () => {
  opened = await openBench(BENCH_PLAN);
  page = opened.page;
}, 300_000);
afterAll(() => opened?.close());

describe("at the lap", () => {
  it("moves on with a held press only, and comes back to its place after a reload", async () => {
    // A change makes the plan one that is kept.
    await part("Set-up");
    await page.getByRole("spinbutton", { name: "Speed" }).fill("300");
    await page.keyboard.press("Enter");
    await page.getByText("Kept on this device").waitFor(SLOW);
    await page.setViewportSize({ width: 390, height: 844 });
    await part("At the lap");
    await reachStep(1);
    expect(await severeFindings(page)).toEqual([]);

    // A droplet: short. A brush: long, but it wanders.
    await page.getByRole("button", { name: /^Next step/ }).click({ delay: SHORT_MS });
    await page.waitForTimeout(HELD_MS);
    expect(await stepNow()).toBe("1");
    const box = await page.getByRole("button", { name: /^Next step/ }).boundingBox();
    if (!box) throw new Error("nothing to hold");
    await page.mouse.move(box.x + 40, box.y + 40);
    await page.mouse.down();
    await page.mouse.move(box.x + 140, box.y + 60, { steps: 4 });
    await page.waitForTimeout(HELD_MS);
    await page.mouse.up();
    expect(await stepNow()).toBe("1");

    // A palm or water beside the finger: a second touch while the first is held.
    await page.getByRole("button", { name: /^Next step/ }).evaluate((button) => {
      const at = { bubbles: true, button: 0, clientX: 200, clientY: 760 };
      button.dispatchEvent(new PointerEvent("pointerdown", { ...at, pointerId: 7, isPrimary: true }));
      button.dispatchEvent(new PointerEvent("pointerdown", { ...at, pointerId: 8, isPrimary: false }));
    });
    await page.waitForTimeout(HELD_MS);
    expect(await stepNow()).toBe("1");
    // A knock against the pedal.
    await page.keyboard.press("b", { delay: SHORT_MS });
    await page.waitForTimeout(HELD_MS);
    expect(await stepNow()).toBe("1");

    await hold(/^Next step/);
    await reachStep(2);
    // A pedal sends a key.
    await page.keyboard.down("b");
    await page.waitForTimeout(HELD_MS);
    await page.keyboard.up("b");
    await reachStep(3);
    await hold(/^Next step/);
    await reachStep(4);
    const first = bench.tiers[0].facets[0];
    expect(await page.locator(".lap-stop b").textContent()).toBe(first.read.label);
    const size = await page
      .locator(".lap-stop b")
      .evaluate((b) => Number.parseFloat(getComputedStyle(b).fontSize));
    expect(size).toBeGreaterThanOrEqual(96);

    await page.reload({ waitUntil: "load" });
    await reachStep(4);
    expect(await page.locator(".lap-stop b").textContent()).toBe(first.read.label);
    await hold(/^Undo the last step/);
    await reachStep(3);
  });

  it("shows a gauge as wide as its ruler says", async () => {
    await hold(/^Next step/);
    await reachStep(4);
    await page.getByRole("button", { name: "Make a true-size gauge" }).click();
    await page.getByRole("slider").fill("5");
    await page.getByRole("button", { name: "It fits" }).click();
    const slot = page.locator(".lap-gauge-slot");
    const mm = Number(await slot.getAttribute("data-mm"));
    const { width } = (await slot.boundingBox()) ?? { width: 0 };
    expect(Math.abs(width / (5 * mm) - 1)).toBeLessThan(0.005);
    await part("Close");
  });
});

describe("the screen at the lap", () => {
  /** Stands in for the device: counts the locks that are held; refuses when told to. */
  const stub = (refuses: boolean) =>
    page.evaluate((no) => {
      const held = new Set<object>();
      Object.assign(window, { locksHeld: held });
      const request = async () => {
        if (no) throw new DOMException("low battery", "NotAllowedError");
        const lock = { release: async () => void held.delete(lock) };
        held.add(lock);
        return lock;
      };
      Object.defineProperty(navigator, "wakeLock", { configurable: true, value: { request } });
    }, refuses);
  const untilHeld = (count: number) =>
    page.waitForFunction(
      (wanted) => (window as unknown as { locksHeld: ReadonlySet<object> }).locksHeld.size === wanted,
      count,
      SLOW,
    );

  it("is kept on, asked for again when the page is seen again, and let go when it is closed", async () => {
    await stub(false);
    await part("At the lap");
    await untilHeld(1);
    // Whenever a page is hidden the device lets go by itself.
    await page.evaluate(() => {
      (window as unknown as { locksHeld: Set<object> }).locksHeld.clear();
      document.dispatchEvent(new Event("visibilitychange"));
    });
    await untilHeld(1);
    await part("Close");
    await untilHeld(0);
  });

  it("is said not to stay on where the device refuses", async () => {
    await stub(true);
    await part("At the lap");
    await page.getByText("This browser can't keep the screen on").waitFor(SLOW);
    await part("Close");
  });
});

describe("finding one's way at the lap", () => {
  const holdIt = async (name: string | RegExp) => {
    const button = page.getByRole("button", { name, exact: typeof name === "string" });
    await button.scrollIntoViewIfNeeded();
    const box = await button.boundingBox();
    if (!box) throw new Error(`no button ${name}`);
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.waitForTimeout(HELD_MS);
    await page.mouse.up();
  };

  it("goes to any stop by a held press, and a knock does nothing", async () => {
    await part("At the lap");
    await part("All steps");
    expect(await severeFindings(page)).toEqual([]);
    const pass = page.locator(".lap-pass").nth(4);
    await pass.click();
    const stop = page.locator(".lap-to button").nth(2);
    const label = (await stop.textContent()) ?? "";
    await stop.click({ delay: SHORT_MS });
    await page.waitForTimeout(HELD_MS);
    expect(await page.locator(".lap-foot").count()).toBe(0);
    await holdIt(`Go on at stop ${label}. Press and hold`);
    await page.locator(".lap-stop b").waitFor(SLOW);
    expect(await page.locator(".lap-stop b").textContent()).toBe(label);
    expect(await page.locator(".lap-pivot").textContent()).toMatch(/^Arm angle .*Pivot /);
    // Its tier, and hours instead of steps.
    expect(await page.locator(".lap-foot [data-step]").textContent()).toMatch(/^Tier \d of \d\. About .* h/);
  });

  it("tells the arm's setting as large as the stop", async () => {
    await part("All steps");
    await holdIt("Hold: from setting up for it");
    while ((await page.locator(".lap-arm").count()) === 0) await holdIt(/^Next step/);
    const sizes = await page
      .locator(".lap-arm b")
      .evaluateAll((all) => all.map((b) => Number.parseFloat(getComputedStyle(b).fontSize)));
    expect(sizes).toHaveLength(2);
    for (const size of sizes) expect(size).toBeGreaterThanOrEqual(96);
  });

  it("takes a measured width on large keys, keeps it as cut, and leaves the plan as it is", async () => {
    await part("All steps");
    // Open the passes until the one that ends its tier.
    for (let i = 0; (await page.getByRole("button", { name: "Hold: measure this tier" }).count()) === 0; i++)
      await page.locator(".lap-pass").nth(i).click();
    await holdIt("Hold: measure this tier");
    await part("Type the width");
    expect(await severeFindings(page)).toEqual([]);
    for (const key of ["9", "9", "9"]) await part(key);
    await page.getByText("the piece itself").waitFor(SLOW);
    expect(await page.getByRole("button", { name: /^Keep the width/ }).isDisabled()).toBe(true);
    for (let i = 0; i < 3; i++) await part("Take the last key back");
    for (const key of ["7", ".", "3"]) await part(key);
    for (const key of await page.locator(".lap-keypad button").all()) {
      const box = await key.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(64);
    }
    await holdIt(/^Keep the width/);
    await page.getByText("Kept: 7.30 mm wide.").waitFor(SLOW);
    await part("Close");
  });

  it("never cuts a caution, on any screen", async () => {
    await part("At the lap");
    await part("All steps");
    await page.locator(".lap-pass").first().click();
    await holdIt("Hold: from setting up for it");
    for (let n = Number(await stepNow()); n > 1; n--) {
      await holdIt(/^Undo the last step/);
      await reachStep(n - 1);
    }
    for (const [width, height] of [
      [390, 844],
      [844, 390],
      [820, 1180],
      [1440, 900],
    ]) {
      await page.setViewportSize({ width, height });
      for (const line of await page.locator(".lap-care li").all()) {
        const box = await line.boundingBox();
        expect(box && box.y >= 0 && box.y + box.height <= height + 0.5, `${width} x ${height}`).toBe(true);
      }
      expect(await page.locator(".lap-care li").count()).toBe(5);
      expect(await page.locator(".lap-step").evaluate((box) => getComputedStyle(box).maskImage)).toBe("none");
    }
    await page.setViewportSize({ width: 390, height: 844 });
    await part("Close");
  });
});
