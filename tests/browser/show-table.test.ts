/** A customer's page of a piece that lies on a table: from a folder without a network, and from a link. */
import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { decode } from "fast-png";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { showFragment } from "../../src/core/show/show-link.ts";
import { plan, tier } from "../core/bench/plans.ts";
import { BUILT } from "./built-app.ts";
import { NO_3D, serve, sharedBrowser } from "./support.ts";

const exec = promisify(execFile);
const OWN = { ...plan([tier({ count: 8, depth: { rule: "depth", mm: 1 } })]), name: "Quay" };
const SIZES = [
  { width: 390, height: 844 },
  { width: 1280, height: 800 },
] as const;
const TRACED_MS = 240_000;
/** Few of a screen's pixels for one of the page: traced in software, each costs. */
const COARSE_SCREEN = 0.25;

let folder = "";
let address = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "show-table-"));
  await writeFile(join(folder, "plan.json"), JSON.stringify(OWN));
  const words = ["show", join(folder, "plan.json"), "--out", join(folder, "show.html")];
  const table = ["--stage", "linen", "--rest", "back", "--pictures", "4", "--size", "32"];
  await exec(process.execPath, ["src/cli/run.mjs", ...words, ...table]);
  address = pathToFileURL(join(folder, "show.html")).href;
});
afterAll(() => rm(folder, { recursive: true }));

async function visit(at: string, options: BrowserContextOptions, without3d: boolean) {
  const browser = await sharedBrowser();
  const context = await browser.newContext({ locale: "de-DE", reducedMotion: "reduce", ...options });
  const page = await context.newPage();
  if (without3d) await page.addInitScript(NO_3D);
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => message.type() === "error" && faults.push(message.text()));
  await page.goto(at);
  return { page, faults };
}

/** Mean red, green and blue of the picture's four corners, where nothing but the table is. */
async function cornersOf(page: Page, what: string): Promise<number[]> {
  const { width, height, data, channels } = decode(await page.locator(what).screenshot());
  const side = Math.floor(width / 16);
  const sums = [0, 0, 0];
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++)
      for (const px of [x + 4, width - 5 - x])
        for (const py of [y + 4, height - 5 - y])
          for (let c = 0; c < 3; c++) sums[c] += data[channels * (py * width + px) + c];
  return sums.map((sum) => sum / (4 * side * side));
}

/** Linen of the stated reflectance (0.6, 0.51, 0.4) is warmer than any ground of the page, whose red and blue differ by 10 at most. */
const isLinen = ([red, green, blue]: readonly number[]): boolean =>
  red > green && green > blue && red - blue > 18;

describe("a piece on a table, as a customer's page shows it", () => {
  // one visit: made in software, the programs of a table take longer than all the rest
  it("lies there traced, and when it is turned, on a phone and on a desk", async () => {
    const [phone, desk] = SIZES;
    const { page, faults } = await visit(
      address,
      { viewport: phone, deviceScaleFactor: COARSE_SCREEN, offline: true },
      false,
    );
    const isTraced = async () => {
      await expect.poll(() => page.isVisible("#glass"), { timeout: TRACED_MS }).toBe(true);
      expect(isLinen(await cornersOf(page, "#glass"))).toBe(true);
      expect(
        await page.evaluate(
          () => document.documentElement.scrollWidth <= document.documentElement.clientWidth,
        ),
      ).toBe(true);
    };
    await isTraced();
    await page.focus("#picture");
    // the eye never goes below a table's level: what shows then is still the table
    for (let k = 0; k < 8; k++) await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowRight");
    expect(await page.getAttribute("#picture", "aria-valuenow")).toBe("15");
    await isTraced();
    await page.setViewportSize(desk);
    await page.keyboard.press("ArrowRight");
    expect(await page.getAttribute("#picture", "aria-valuenow")).toBe("30");
    await isTraced();
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it.each(["light", "dark"] as const)(
    "lies there in pictures where light can't be traced, %s",
    async (colorScheme) => {
      const { page, faults } = await visit(address, { viewport: SIZES[0], colorScheme, offline: true }, true);
      await expect.poll(() => page.isVisible("#made")).toBe(true);
      expect(isLinen(await cornersOf(page, "#still"))).toBe(true);
      const first = await page.getAttribute("#still", "src");
      await page.focus("#picture");
      for (let k = 0; k < 6; k++) await page.keyboard.press("ArrowRight");
      expect(await page.getAttribute("#still", "src")).not.toBe(first);
      expect(isLinen(await cornersOf(page, "#still"))).toBe(true);
      expect(faults).toEqual([]);
      await page.context().close();
    },
  );

  it("lies there when a link opens it", async () => {
    const texts = { caption: "", price: "", light: "north-window" } as const;
    const table = { material: "linen", up: [0, 0, 1], floor: -1, onRing: false } as const;
    const link = `${await serve(BUILT)}#${showFragment(solvePlan(OWN), { ...texts, table })}`;
    const { page, faults } = await visit(
      link,
      { viewport: SIZES[0], deviceScaleFactor: COARSE_SCREEN, serviceWorkers: "block" },
      false,
    );
    await expect.poll(() => page.isVisible("#glass"), { timeout: TRACED_MS }).toBe(true);
    expect(isLinen(await cornersOf(page, "#glass"))).toBe(true);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
