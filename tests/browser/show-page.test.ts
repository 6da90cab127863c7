/** The page that a customer gets, as the command line writes it, opened from a folder with the network cut. */
import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { plan, tier } from "../core/bench/plans.ts";
import { NO_3D, openBrowser } from "./support.ts";

const exec = promisify(execFile);
const HOSTILE = `</script><script>alert(1)</script><b>"'&`;
const SIZES = [
  { width: 390, height: 844 },
  { width: 1280, height: 800 },
] as const;
/** Few of a screen's pixels for one of the page, on which nothing here depends: traced in software, each costs. */
const COARSE_SCREEN = 0.25;

let folder = "";
let file = "";
let browser: Browser;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "show-"));
  file = join(folder, "show.html");
  const own = plan([tier({ count: 8, name: HOSTILE, depth: { rule: "depth", mm: 1 } })]);
  const path = join(folder, "plan.json");
  await writeFile(path, JSON.stringify({ ...own, name: HOSTILE, maker: { name: HOSTILE } }));
  const words = ["show", path, "--out", file, "--caption", HOSTILE, "--price", HOSTILE];
  const small = ["--pictures", "6", "--size", "24"];
  const { stdout } = await exec(process.execPath, ["src/cli/run.mjs", ...words, ...small]);
  const { bytes, scriptBytes } = JSON.parse(stdout);
  expect(bytes).toBeLessThan(900_000);
  expect(scriptBytes).toBeLessThan(300_000);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true });
});

/** What a visit must never have: requests beyond the file, errors, questions. */
interface Visited {
  readonly page: Page;
  readonly faults: readonly string[];
}

async function visit(options: BrowserContextOptions, without3d: boolean): Promise<Visited> {
  const context = await browser.newContext({ offline: true, ...options });
  const page = await context.newPage();
  if (without3d) await page.addInitScript(NO_3D);
  const faults: string[] = [];
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith("data:") && url !== pathToFileURL(file).href) faults.push(`asked for ${url}`);
  });
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => message.type() === "error" && faults.push(message.text()));
  page.on("dialog", (dialog) => {
    faults.push(`said ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.goto(pathToFileURL(file).href);
  return { page, faults };
}

const turnOf = async (page: Page) => Number(await page.getAttribute("#picture", "aria-valuenow"));
const fits = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

describe("a customer's page, from a folder without a network", () => {
  // one visit on a phone and on a desk: made in software, programs take longer than all the rest
  it("is traced where light can be, and turned by keys and hand, at both sizes", async () => {
    const [phone, desk] = SIZES;
    const { page, faults } = await visit(
      { viewport: phone, deviceScaleFactor: COARSE_SCREEN, locale: "de-AT", reducedMotion: "reduce" },
      false,
    );
    expect(await page.textContent("h1")).toBe(HOSTILE);
    expect(await page.textContent(".price")).toBe(HOSTILE);
    expect(await page.textContent(".caption")).toBe(HOSTILE);
    expect(await page.textContent(".maker")).toBe(`von ${HOSTILE}`);
    expect(await page.getAttribute("html", "lang")).toBe("de");
    expect(await fits(page)).toBe(true);
    await expect.poll(() => page.isVisible("#glass"), { timeout: 240_000 }).toBe(true);
    expect(await page.isVisible("#still")).toBe(false);
    // with reduced motion it stands still until it is turned
    expect(await turnOf(page)).toBe(0);
    await page.focus("#picture");
    await page.keyboard.press("ArrowRight");
    expect(await turnOf(page)).toBe(15);
    const turnByHand = async () => {
      const box = await page.locator("#picture").boundingBox();
      if (!box) throw new Error("no picture");
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.move(box.x, box.y + box.height / 2);
      await page.mouse.up();
    };
    await turnByHand();
    expect(await turnOf(page)).toBe(105);
    // no picture made beforehand knows another light: once traced, none of them shows again, also when it is turned
    await expect.poll(() => page.isVisible("#glass"), { timeout: 240_000 }).toBe(true);
    await page.evaluate(() => {
      const still = document.querySelector("#still");
      if (!still) throw new Error("no picture");
      const seen = () => document.body.classList.add("went-back");
      new MutationObserver(() => still.hasAttribute("hidden") || seen()).observe(still, { attributes: true });
    });
    await page.fill("#light", "90");
    await page.fill("#uncut", "50");
    await page.focus("#picture");
    await page.keyboard.press("ArrowLeft");
    expect(await turnOf(page)).toBe(90);
    await expect.poll(() => page.isVisible("#glass"), { timeout: 240_000 }).toBe(true);
    expect(await page.evaluate(() => document.body.classList.contains("went-back"))).toBe(false);
    await page.setViewportSize(desk);
    expect(await fits(page)).toBe(true);
    await turnByHand();
    expect(await turnOf(page)).toBe(180);
    await expect.poll(() => page.isVisible("#glass"), { timeout: 240_000 }).toBe(true);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it.each(SIZES)(
    "turns pictures where light can't be traced, by itself until touched, at $width",
    async (viewport) => {
      const { page, faults } = await visit(
        { viewport, locale: "fr-FR", reducedMotion: "no-preference" },
        true,
      );
      await expect.poll(() => page.isVisible("#made")).toBe(true);
      expect(await page.getAttribute("html", "lang")).toBe("en");
      expect(await page.isVisible("#light")).toBe(false);
      await expect.poll(() => turnOf(page)).toBeGreaterThan(0);
      await page.click("#picture");
      const touchedAt = await turnOf(page);
      // half a second by the page's own clock
      await page.clock.install();
      await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1000);
      await page.clock.runFor(500);
      expect(await turnOf(page)).toBe(touchedAt);
      await page.keyboard.press("Home");
      const front = await page.getAttribute("#still", "src");
      for (let k = 0; k < 4; k++) await page.keyboard.press("ArrowRight");
      expect(await turnOf(page)).toBe(60);
      expect(await page.getAttribute("#still", "src")).not.toBe(front);
      expect(
        await page.evaluate(() => document.querySelector<HTMLImageElement>("#still")?.naturalWidth),
      ).toBe(24);
      expect(await fits(page)).toBe(true);
      expect(faults).toEqual([]);
      await page.context().close();
    },
  );

  it("shows its first picture and says why it stands still where no script runs", async () => {
    const { page } = await visit({ javaScriptEnabled: false }, false);
    expect(await page.isVisible("#still")).toBe(true);
    expect(await page.isVisible("#controls")).toBe(false);
    expect(await page.textContent("noscript")).toContain("made beforehand");
    expect(await readFile(file, "utf8")).not.toMatch(/https?:/);
    await page.context().close();
  });
});
