/** The hand on the piece: a press picks, a drag turns, a drag on what is picked moves its tier, as one step. */
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { openFromMenu, pictureAtRest } from "./built-app.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const app = sharedApp();

/** A little right of the middle of the picture, where a facet of the shoulder lies. */
async function middleOf(page: Page): Promise<{ x: number; y: number }> {
  const box = await page.locator(".piece-canvas").boundingBox();
  if (!box) throw new Error("there is no canvas");
  return { x: box.x + box.width * 0.54, y: box.y + box.height * 0.56 };
}
const sentences = (page: Page) =>
  page
    .locator(".tier")
    .evaluateAll((tiers) =>
      tiers.map((tier) => [...tier.querySelectorAll("input")].map((input) => input.value).join(" ")),
    );
const undoName = (page: Page) => page.locator(".undo").getAttribute("aria-label");

async function drag(page: Page, from: { x: number; y: number }, dx: number, dy: number, release = true) {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let i = 1; i <= 6; i++) await page.mouse.move(from.x + (dx * i) / 6, from.y + (dy * i) / 6);
  if (release) await page.mouse.up();
}

/** Few pixels: the piece is drawn in software here. */
const SMALL = { viewport: { width: 820, height: 640 } };

/** Counts the pictures that are drawn: each begins with a clear canvas. */
const countPictures = () => {
  Object.assign(window, { pictures: 0 });
  WebGL2RenderingContext.prototype.clear = new Proxy(WebGL2RenderingContext.prototype.clear, {
    apply: (clear, gl, given) => {
      Object.assign(window, { pictures: Reflect.get(window, "pictures") + 1 });
      Reflect.apply(clear, gl, given);
    },
  });
};

describe("the piece under the hand", () => {
  const visit = sharedVisit(app, { ...SMALL, before: countPictures });
  let page: Page;
  beforeEach(() => {
    page = visit.page;
  });

  it("draws nothing while nothing moves, and again when it is turned", async () => {
    const drawn = () => page.evaluate(() => Reflect.get(window, "pictures") as number);
    await pictureAtRest(page.locator(".piece-canvas canvas"));
    const before = await drawn();
    expect(before).toBeGreaterThan(0);
    // as long as a hundred pictures of something that moves would take
    await page.evaluate(async () => {
      for (let i = 0; i < 100; i++) await new Promise((next) => requestAnimationFrame(next));
    });
    expect(await drawn()).toBe(before);
    await page.locator(".piece-canvas").focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(drawn).toBeGreaterThan(before);
    await page.keyboard.press("ArrowLeft");
  });

  it("is turned by a drag, which leaves the plan alone", async () => {
    const before = await sentences(page);
    const picture = await pictureAtRest(page.locator(".piece-canvas canvas"));
    await drag(page, await middleOf(page), 90, 20);
    await expect
      .poll(async () => (await page.locator(".piece-canvas canvas").screenshot()).equals(picture))
      .toBe(false);
    expect(await sentences(page)).toEqual(before);
    expect(await undoName(page)).toBe("Nothing to undo");
  });
});

it("moves the picked tier by a drag as one step; undo and Escape bring it back", async () => {
  const { page, errors, close } = await app.visit(SMALL);
  const before = await sentences(page);
  const at = await middleOf(page);
  await page.mouse.click(at.x, at.y);
  await page.waitForSelector(".facet-line");
  await drag(page, at, 70, 0, false);
  await expect.poll(() => sentences(page)).not.toEqual(before);
  await page.keyboard.press("Escape");
  await expect.poll(() => sentences(page)).toEqual(before);
  await page.mouse.up();
  expect(await undoName(page)).toBe("Nothing to undo");

  await drag(page, at, 70, 0);
  await expect.poll(() => undoName(page)).toMatch(/^Undo: (start|angle) of tier \d$/);
  expect(await sentences(page)).not.toEqual(before);
  await page.locator(".undo").click();
  await expect.poll(() => sentences(page)).toEqual(before);
  expect(await undoName(page)).toBe("Nothing to undo");
  expect(errors).toEqual([]);
  await close();
});

/** A finger through the browser's own input, so that pointer events come as they do on a tablet. */
async function finger(page: Page) {
  const session = await page.context().newCDPSession(page);
  const send = (type: "touchStart" | "touchMove" | "touchEnd", at?: { x: number; y: number }) =>
    session.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [at] : [] });
  return {
    down: (at: { x: number; y: number }) => send("touchStart", at),
    move: (at: { x: number; y: number }) => send("touchMove", at),
    up: () => send("touchEnd"),
  };
}
const truths = (page: Page) => page.locator(".tier-truth").allTextContents();

it("takes a finger's drag on the piece as what typing the same numbers gives", async () => {
  const { page, errors, close } = await app.visit({ ...SMALL, hasTouch: true });
  const hand = await finger(page);
  const at = await middleOf(page);
  await hand.down(at);
  await hand.up();
  await page.waitForSelector(".facet-line");
  await hand.down(at);
  for (let i = 1; i <= 5; i++) await hand.move({ x: at.x + 12 * i, y: at.y });
  await hand.up();
  await expect.poll(() => undoName(page)).toMatch(/^Undo: start of tier \d$/);
  const [dragged, draggedTruths] = [await sentences(page), await truths(page)];
  const tier = Number(/\d+$/.exec((await undoName(page)) ?? "")?.[0]);

  await page.locator(".undo").click();
  await expect.poll(() => undoName(page)).toBe("Nothing to undo");
  const start = page
    .locator(".tier")
    .nth(tier - 1)
    .getByRole("spinbutton", { name: "Start" });
  await start.fill(dragged[tier - 1].split(" ").at(-1) ?? "");
  await start.press("Enter");
  await expect.poll(() => sentences(page)).toEqual(dragged);
  expect(await truths(page)).toEqual(draggedTruths);
  expect(errors).toEqual([]);
  await close();
});

it("shows in every picture and in the recipe what is chosen in one", async () => {
  const { page, close } = await app.visit();
  const canvas = page.locator(".piece-canvas canvas");
  const before = await pictureAtRest(canvas);
  const facet = await page.locator('.skin [data-facet="shoulder/3"]').first().boundingBox();
  if (!facet) throw new Error("the strip does not show the facet");
  await page.mouse.click(facet.x + facet.width / 2, facet.y + facet.height / 2);
  expect(await page.locator(".facet-line h2").textContent()).toMatch(/^Shoulder, facet 3 of 12/);
  expect(await page.locator('.profile [data-tier="shoulder"][data-selected]').count()).toBe(1);
  expect(await page.locator(".tier[data-picked] .tier-name").inputValue()).toBe("Shoulder");
  await page.mouse.move(5, 5);
  await expect.poll(async () => (await canvas.screenshot()).equals(before)).toBe(false);

  // And from the piece: the strip and the profile follow.
  const at = await middleOf(page);
  await page.mouse.click(at.x, at.y);
  const title = (await page.locator(".facet-line h2").textContent()) ?? "";
  const name = title.split(",")[0];
  expect(await page.locator(".tier[data-picked] .tier-name").inputValue()).toBe(name);
  expect(await page.locator(".profile [data-selected]").count()).toBe(1);
  expect(await page.locator(".skin-selected-outer").count()).toBeGreaterThanOrEqual(1);
  await close();
});

it("lets a finger on a tablet pull three tiers in from the rim until they meet", async () => {
  const { page, errors, close } = await app.visit({
    viewport: { width: 820, height: 1180 },
    hasTouch: true,
    without3d: true,
  });
  const hand = await finger(page);
  await openFromMenu(page, "New plan");
  await expect.poll(() => page.locator(".tier").count()).toBe(0);
  for (const wanted of [
    /^just touch$/,
    /^comes to the corners of Tier 1$/,
    /^comes to the corners of Tier 2$/,
  ]) {
    const knob = await page.locator(".profile .fresh .grip-knob").boundingBox();
    const equator = await page.locator(".profile-equator").boundingBox();
    if (!knob || !equator) throw new Error("the profile has nothing to pull");
    const from = { x: knob.x + knob.width / 2, y: knob.y + knob.height / 2 };
    const way = { x: equator.x - from.x, y: equator.y - from.y };
    const length = Math.hypot(way.x, way.y);
    await hand.down(from);
    let said = "";
    for (let px = 5; px < length && !wanted.test(said); px += 2) {
      await hand.move({ x: from.x + (way.x * px) / length, y: from.y + (way.y * px) / length });
      const snap = page.locator(".profile .readout-snap");
      said = (await snap.count()) > 0 ? ((await snap.textContent()) ?? "") : "";
    }
    expect(said).toMatch(wanted);
    await hand.up();
    await page.locator(".profile .fresh").waitFor();
  }
  expect(await truths(page)).toEqual([
    expect.stringMatching(/^just touch/),
    expect.stringMatching(/^share .* edges/),
    expect.stringMatching(/wide/),
  ]);
  expect(await page.locator(".finding:not([data-severity=info])").count()).toBe(0);
  expect(errors).toEqual([]);
  await close();
});
