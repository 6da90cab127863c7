/** The page for the lap, opened from the bench: a held press, coming back, a gauge for the screen, the screen kept on. */
import type { Locator, Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { benchOf } from "../../src/core/bench/bench.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { pressPart, SLOW, severeFindings, sharedBench } from "./bench-page.ts";
import { BENCH_PLAN } from "./bench-plan.ts";
import { hold, touchFor } from "./lap-hand.ts";

const PHONE = { width: 390, height: 844 };

const opened = sharedBench(BENCH_PLAN);
let page: Page;
beforeEach(async () => {
  page = opened.page;
  await page.setViewportSize(PHONE);
});
const part = (name: string) => pressPart(page, name);
const bench = benchOf(solvePlan(BENCH_PLAN));

const step = () => page.locator(".lap-foot [data-step]");
const stepNow = async (): Promise<number> => Number(await step().getAttribute("data-step", SLOW));
const reachStep = (n: number) => page.locator(`.lap-foot [data-step="${n}"]`).waitFor(SLOW);
const next = () => page.getByRole("button", { name: /^Next step/ });
const back = () => page.getByRole("button", { name: /^Undo the last step/ });
const holdTo = (button: Locator, n: number) => hold(button, () => reachStep(n));

/** The page for the lap, wherever one was before. */
async function atTheLap(): Promise<void> {
  if (!(await page.locator(".lap").isVisible())) await part("At the lap");
  await page.locator(".lap-head").waitFor(SLOW);
}
/** The page for the lap at a step, by as many held presses as it takes. */
async function atStep(n: number): Promise<void> {
  await atTheLap();
  for (let now = await stepNow(); now < n; now++) await holdTo(next(), now + 1);
  for (let now = await stepNow(); now > n; now--) await holdTo(back(), now - 1);
}
/** All steps at a glance. */
async function atAllSteps(): Promise<void> {
  await atTheLap();
  await part("All steps");
  await page.locator(".lap-pass").first().waitFor(SLOW);
}
async function openPass(nth: number): Promise<void> {
  const pass = page.locator(".lap-pass").nth(nth);
  if ((await pass.getAttribute("aria-expanded")) !== "true") await pass.click();
}
/** A held press that leaves the view of all steps. */
const holdAway = (name: string) =>
  hold(page.getByRole("button", { name, exact: true }), () => step().waitFor(SLOW));

describe("at the lap", () => {
  it("moves on with a held press only, and comes back to its place after a reload", async () => {
    // A change makes the plan one that is kept.
    await part("Set-up");
    await page.getByRole("spinbutton", { name: "Speed" }).fill("300");
    await page.keyboard.press("Enter");
    await page.getByText("Kept on this device").waitFor(SLOW);
    await atTheLap();
    await reachStep(1);
    expect(await severeFindings(page)).toEqual([]);

    const box = await next().boundingBox();
    if (!box) throw new Error("nothing to hold");
    const [x, y] = [box.x + 40, box.y + 40];
    await page.mouse.move(x, y);
    // A droplet: short.
    await touchFor(
      page,
      "short",
      () => page.mouse.down(),
      () => page.mouse.up(),
    );
    expect(await stepNow()).toBe(1);
    // A brush: long, but it wanders.
    const wander = async () => {
      await page.mouse.down();
      await page.mouse.move(x + 100, y + 20, { steps: 4 });
    };
    await touchFor(page, "long", wander, () => page.mouse.up());
    expect(await stepNow()).toBe(1);
    // A palm or water beside the finger: a second touch while the first is held.
    const touches = () =>
      next().evaluate((button) => {
        const at = { bubbles: true, button: 0, clientX: 200, clientY: 760 };
        button.dispatchEvent(new PointerEvent("pointerdown", { ...at, pointerId: 7, isPrimary: true }));
        button.dispatchEvent(new PointerEvent("pointerdown", { ...at, pointerId: 8, isPrimary: false }));
      });
    await touchFor(page, "long", touches, async () => undefined);
    expect(await stepNow()).toBe(1);
    // A knock against the pedal.
    await touchFor(
      page,
      "short",
      () => page.keyboard.down("b"),
      () => page.keyboard.up("b"),
    );
    expect(await stepNow()).toBe(1);

    await holdTo(next(), 2);
    // A pedal sends a key.
    await page.keyboard.down("b");
    await reachStep(3);
    await page.keyboard.up("b");
    await holdTo(next(), 4);
    const first = bench.tiers[0].facets[0];
    expect(await page.locator(".lap-stop b").textContent()).toBe(first.read.label);
    const size = await page
      .locator(".lap-stop b")
      .evaluate((b) => Number.parseFloat(getComputedStyle(b).fontSize));
    expect(size).toBeGreaterThanOrEqual(96);

    await page.reload({ waitUntil: "load" });
    await reachStep(4);
    expect(await page.locator(".lap-stop b").textContent()).toBe(first.read.label);
    await holdTo(back(), 3);
  });

  it("shows a gauge as wide as its ruler says", async () => {
    await atStep(4);
    await page.getByRole("button", { name: "Make a true-size gauge" }).click();
    await page.getByRole("slider").fill("5");
    await page.getByRole("button", { name: "It fits" }).click();
    const slot = page.locator(".lap-gauge-slot");
    await slot.waitFor(SLOW);
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
    await atTheLap();
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
    await atTheLap();
    await page.getByText("This browser can't keep the screen on").waitFor(SLOW);
    await part("Close");
  });
});

describe("finding one's way at the lap", () => {
  it("goes to any stop by a held press, and a knock does nothing", async () => {
    await atAllSteps();
    expect(await severeFindings(page)).toEqual([]);
    await openPass(4);
    const stop = page.locator(".lap-to button").nth(2);
    const label = (await stop.textContent()) ?? "";
    await stop.hover();
    await touchFor(
      page,
      "short",
      () => page.mouse.down(),
      () => page.mouse.up(),
    );
    expect(await page.locator(".lap-foot").count()).toBe(0);
    await holdAway(`Go on at stop ${label}. Press and hold`);
    await page.locator(".lap-stop b").waitFor(SLOW);
    expect(await page.locator(".lap-stop b").textContent()).toBe(label);
    expect(await page.locator(".lap-pivot").textContent()).toMatch(/^Arm angle .*Pivot /);
    // Its tier, and hours instead of steps.
    expect(await step().textContent()).toMatch(/^Tier \d of \d\. About .* h/);
  });

  it("tells the arm's setting as large as the stop", async () => {
    await atAllSteps();
    // the second tier's first pass: what is cleaned and fitted comes before its arm
    await openPass(3);
    await holdAway("Hold: from setting up for it");
    while ((await page.locator(".lap-arm").count()) === 0) await holdTo(next(), (await stepNow()) + 1);
    const sizes = await page
      .locator(".lap-arm b")
      .evaluateAll((all) => all.map((b) => Number.parseFloat(getComputedStyle(b).fontSize)));
    expect(sizes).toHaveLength(2);
    for (const size of sizes) expect(size).toBeGreaterThanOrEqual(96);
  });

  it("takes a measured width on large keys, keeps it as cut, and leaves the plan as it is", async () => {
    await atAllSteps();
    // Open the passes until the one that ends its tier.
    const measure = page.getByRole("button", { name: "Hold: measure this tier" });
    for (let i = 0; (await measure.count()) === 0; i++) {
      await openPass(i);
      await page.locator(".lap-pass[aria-expanded=true]").waitFor();
    }
    await holdAway("Hold: measure this tier");
    await part("Type the width");
    expect(await severeFindings(page)).toEqual([]);
    for (const key of ["9", "9", "9"]) await part(key);
    await page.getByText("the piece itself").waitFor(SLOW);
    const keep = page.getByRole("button", { name: /^Keep the width/ });
    expect(await keep.isDisabled()).toBe(true);
    for (let i = 0; i < 3; i++) await part("Take the last key back");
    for (const key of ["7", ".", "3"]) await part(key);
    for (const key of await page.locator(".lap-keypad button").all()) {
      const box = await key.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(64);
    }
    await hold(keep, () => page.getByText("Kept: 7.30 mm wide.").waitFor(SLOW));
    await part("Close");
  });

  it("never cuts a caution, on any screen", async () => {
    await atAllSteps();
    await openPass(0);
    await holdAway("Hold: from setting up for it");
    await atStep(1);
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
    await page.setViewportSize(PHONE);
    await part("Close");
  });
});
