/**
 * `npm run soak -- --minutes 30 [--seed 1]`: random editing of the built app in Chromium, as long as is asked for, never part
 * of `npm test`. In rounds: an example, thirty deeds, then back to the first document and forward to the last one by
 * undo and redo alone, then a measurement with the same example on the bench. Prints one JSON object; ends with 1 when
 * there was an error, a lost step or growing memory. `--walls 20 [--traced]` begins so many walls of ideas one after the other
 * instead, and says what is alive after each.
 */
import { parseArgs } from "node:util";
import type { Page } from "playwright-core";
import { openFromMenu, serveBuiltApp } from "./built-app.ts";
import { chanceFrom, createHand, goTo, savedPlan, walk } from "./soak-hand.ts";
import { createMeter, type Measured, trend } from "./soak-meter.ts";
import { soakWalls } from "./soak-walls.ts";
import { endBrowser } from "./support.ts";

/** Small, since every pixel is drawn by the processor; wide enough for all three pictures. */
const VIEWPORT = { width: 760, height: 900 };
const DEEDS_A_ROUND = 30;
const EXAMPLE = "First ring";
/** A deed that takes longer than this has got stuck; drawing in software is slow. */
const STUCK_MS = 60_000;
/** So many deeds may get stuck before the run is given up. */
const MOST_STUCK = 5;

async function openExample(page: Page): Promise<void> {
  await openFromMenu(page, "Examples");
  await page.getByRole("button", { name: `Open ${EXAMPLE}` }).click();
  await page.getByRole("dialog").waitFor({ state: "detached" });
  await goTo(page, "Plan");
}

/** Throws out and erases every plan on the shelf, so that each round finds the same library. */
async function clearShelf(page: Page): Promise<void> {
  await openFromMenu(page, "Your plans");
  const dialog = page.getByRole("dialog");
  for (const [shelf, deed] of [
    ["On the shelf", "Throw out"],
    ["Thrown out", "Erase for good"],
  ]) {
    await dialog.getByText(shelf, { exact: true }).click();
    const plans = dialog.locator(".shelf-plan");
    await dialog.locator(".shelf-plan, .shelf-empty").first().waitFor();
    for (let left = await plans.count(); left > 0; left--) {
      await plans
        .first()
        .getByRole("button", { name: /^More for/ })
        .click();
      await page.getByRole("menuitem", { name: deed }).click();
      await page.waitForFunction((most) => document.querySelectorAll(".shelf-plan").length < most, left);
    }
  }
  await dialog.getByRole("button", { name: "Close" }).click();
  await dialog.waitFor({ state: "detached" });
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
async function soak(minutes: number, seed: number) {
  const app = await serveBuiltApp();
  const { page, errors, foreign } = await app.visit({ viewport: VIEWPORT });
  page.setDefaultTimeout(STUCK_MS);
  const began = Date.now();
  const measure = await createMeter(page, began);
  const hand = createHand(page, chanceFrom(seed));
  const deeds: Record<string, number> = {};
  const lost: string[] = [];
  const stuck: string[] = [];
  const measured: Measured[] = [];
  let steps = 0;

  async function round(): Promise<void> {
    await openExample(page);
    await clearShelf(page);
    measured.push(await measure());
    process.stderr.write(`${JSON.stringify(measured.at(-1))}\n`);
    const first = await savedPlan(page);
    for (let i = 0; i < DEEDS_A_ROUND; i++) {
      const before = errors.length;
      try {
        const name = await hand.act();
        deeds[name] = (deeds[name] ?? 0) + 1;
        for (const error of errors.slice(before))
          process.stderr.write(`while or just after "${name}": ${error}\n`);
      } catch (error) {
        if (stuck.length >= MOST_STUCK) throw error;
        // told at the end; what it left open is closed, and the hand goes on
        stuck.push(messageOf(error));
        for (let k = 0; k < 2; k++) await page.keyboard.press("Escape");
        await goTo(page, "Plan");
      }
    }
    await walk(page, "Redo");
    const last = await savedPlan(page);
    steps += await walk(page, "Undo");
    if ((await savedPlan(page)) !== first)
      lost.push(`round ${measured.length}: undo does not end at the first`);
    await walk(page, "Redo");
    if ((await savedPlan(page)) !== last)
      lost.push(`round ${measured.length}: redo does not end at the last`);
  }

  try {
    await page.getByRole("button", { name: "Not now" }).click();
    while (Date.now() - began < minutes * 60_000) await round();
  } catch (error) {
    stuck.push(messageOf(error));
  }
  await app.close();
  await endBrowser();
  return {
    minutes: (Date.now() - began) / 60_000,
    seed,
    viewport: VIEWPORT,
    rounds: measured.length,
    deeds: Object.values(deeds).reduce((sum, count) => sum + count, 0),
    deedsByName: deeds,
    stepsUndoneAtTheEndOfRounds: steps,
    slipped: hand.slipped(),
    lost,
    stuck,
    errors,
    foreign,
    heapMB: trend(measured, "heapMB"),
    nodes: trend(measured, "nodes"),
    listeners: trend(measured, "listeners"),
    pageMB: trend(measured, "pageMB"),
    gpuMB: trend(measured, "gpuMB"),
    measured,
  };
}

const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "30" },
    seed: { type: "string", default: "1" },
    walls: { type: "string" },
    traced: { type: "boolean", default: false },
  },
});
const minutes = Number(values.minutes);
if (values.walls !== undefined) {
  const answer = await soakWalls(Number(values.walls), values.traced);
  process.stdout.write(`${JSON.stringify(answer, null, 1)}\n`);
  const { errors, foreign, heapMB, nodes, listeners } = answer;
  const isFlat = [heapMB, nodes, listeners].every(({ flat }) => flat !== false);
  process.exitCode = errors.length + foreign.length === 0 && isFlat ? 0 : 1;
} else if (!(minutes > 0 && minutes <= 600)) {
  process.stderr.write("npm run soak -- --minutes N, where N is more than 0 and at most 600\n");
  process.exitCode = 2;
} else {
  const answer = await soak(minutes, Number(values.seed));
  process.stdout.write(`${JSON.stringify(answer, null, 1)}\n`);
  const { lost, stuck, errors, foreign, heapMB, nodes, listeners } = answer;
  const isClean = [lost, stuck, errors, foreign].every((list) => list.length === 0);
  const isFlat = [heapMB, nodes, listeners].every(({ flat }) => flat !== false);
  process.exitCode = isClean && isFlat ? 0 : 1;
}
