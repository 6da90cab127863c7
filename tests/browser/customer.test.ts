/** The app makes the page for a customer, and what it hands over opens from a folder and shows the piece. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, it } from "vitest";
import { plan, tier } from "../core/bench/plans.ts";
import { dropFile, fileOf, giveFile, nameField, openFromMenu, renamePlan } from "./built-app.ts";
import { handedOver, takeFiles } from "./hand-over.ts";
import { sharedApp } from "./shared.ts";
import { NO_3D } from "./support.ts";

const app = sharedApp();
/** Few facets: a dozen pictures of it are traced in software. */
const FEW = { ...plan([tier({ count: 3, armAngleDeg: 30, depth: { rule: "depth", mm: 4 } })]), name: "Few" };
const NAME = `Quay </script><script>alert(1)</script>`;

it("makes a page that stands alone, with the maker's name, a price, and no recipe", async () => {
  const { page, errors, foreign, close } = await app.visit({ viewport: { width: 820, height: 640 } });
  await dropFile(page, "few.json", JSON.stringify(FEW));
  await expect.poll(() => nameField(page).inputValue()).toBe(FEW.name);
  await renamePlan(page, NAME);
  await takeFiles(page);
  await openFromMenu(page, "For a customer");
  const sheet = page.getByRole("dialog");
  await sheet.getByLabel("Your name").fill("Kiln Lane");
  await sheet.getByLabel("Price, as it is to be read").fill("210 €");
  const make = sheet.getByRole("button", { name: "Make the page" });
  // they are traced beside all else that the machine does
  page.context().setDefaultTimeout(500_000);
  const stop = sheet.getByRole("button", { name: "Stop", exact: true });
  const file = await fileOf(page, async () => {
    await make.press("Enter");
    // who works by key still stands where the work is stopped
    await expect.poll(() => stop.evaluate((button) => button === document.activeElement)).toBe(true);
  });
  const html = file.bytes.toString("utf8");
  expect(file.name).toMatch(/^Quay.*\.html$/);
  expect(file.bytes.length).toBeLessThan(900_000);
  await sheet.getByRole("button", { name: "Send it" }).click();
  await expect.poll(() => handedOver(page)).toEqual([[file.name, "text/html", file.bytes.length]]);
  const data = JSON.parse(/id="data">(.*)<\/script>/.exec(html)?.[1] ?? "");
  expect(data.pictures).toHaveLength(12);
  expect(new Set(data.pictures).size).toBe(12);
  for (const secret of ["armAngleDeg", "wheelStops", "tiers"]) expect(html).not.toContain(`"${secret}"`);
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);

  const folder = await mkdtemp(join(tmpdir(), "customer-"));
  await writeFile(join(folder, "page.html"), file.bytes);
  const context = await page.context().browser()?.newContext({ offline: true, reducedMotion: "reduce" });
  const shown = await context?.newPage();
  if (!context || !shown) throw new Error("no browser");
  await shown.addInitScript(NO_3D);
  await shown.goto(pathToFileURL(join(folder, "page.html")).href);
  expect(await shown.textContent("h1")).toBe(NAME);
  expect(await shown.textContent(".maker")).toBe("by Kiln Lane");
  expect(await shown.textContent(".price")).toBe("210 €");
  await expect.poll(() => shown.isVisible("#made")).toBe(true);
  await context.close();
  await rm(folder, { recursive: true });

  // the price and the maker's name are the plan's, and can be taken back
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Undo: words for a customer" }).click();
  await page.getByRole("button", { name: "Undo: who made it" }).click();
  await openFromMenu(page, "For a customer");
  expect(await sheet.getByLabel("Price, as it is to be read").inputValue()).toBe("");
  expect(await sheet.getByLabel("Your name").inputValue()).toBe("");
  await close();
});

it("gives a link that opens the piece and nothing of the workshop, traced or drawn", async () => {
  const { page, errors, foreign, close } = await app.visit({ viewport: { width: 820, height: 640 } });
  await dropFile(page, "few.json", JSON.stringify(FEW));
  await expect.poll(() => nameField(page).inputValue()).toBe(FEW.name);
  await openFromMenu(page, "For a customer");
  const sheet = page.getByRole("dialog");
  // the plan's name heads the page, and is the plan's
  await sheet.getByLabel("Name of the piece").fill(NAME);
  await sheet.getByLabel("Name of the piece").press("Tab");
  expect(await nameField(page).inputValue()).toBe(NAME);
  await sheet.getByLabel("A line or two about it").fill("Blue <i>inside</i>");
  // a mark of one's own, and taken away again
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><circle r="4"/></svg>';
  await giveFile(page, () => sheet.getByRole("button", { name: "Choose a picture" }).click(), {
    name: "mark.svg",
    mimeType: "image/svg+xml",
    buffer: Buffer.from(svg),
  });
  await sheet.getByRole("img", { name: "Your mark" }).waitFor();
  await sheet.getByRole("button", { name: "Take it away" }).click();
  expect(await sheet.getByRole("img", { name: "Your mark" }).count()).toBe(0);
  const link = await sheet.getByLabel("Link for a customer").inputValue();
  const hash = link.slice(link.indexOf("#"));
  expect(hash).toMatch(/^#show=1\./);

  const browser = page.context().browser();
  if (!browser) throw new Error("no browser");
  for (const without3d of [true, false]) {
    const context = await browser.newContext({
      locale: "de-DE",
      reducedMotion: "reduce",
      serviceWorkers: "block",
      // few of a screen's pixels for one of the page: traced in software, each costs
      deviceScaleFactor: 0.25,
    });
    const shown = await context.newPage();
    const faults: string[] = [];
    shown.on("pageerror", (error) => faults.push(String(error)));
    shown.on("console", (message) => message.type() === "error" && faults.push(message.text()));
    if (without3d) await shown.addInitScript(NO_3D);
    await shown.goto(link);
    await shown.locator("h1").waitFor();
    expect(await shown.textContent("h1")).toBe(NAME);
    expect(await shown.textContent(".caption")).toBe("Blue <i>inside</i>");
    expect(await shown.getAttribute("html", "lang")).toBe("de");
    if (without3d) {
      await expect.poll(() => shown.textContent("#made")).toContain("eine Zeichnung");
      expect(await shown.isVisible("#made")).toBe(true);
    } else await expect.poll(() => shown.isVisible("#glass"), { timeout: 240_000 }).toBe(true);
    expect(await shown.locator(".frame").count()).toBe(0);
    expect(await shown.evaluate(async () => (await indexedDB.databases()).length)).toBe(0);
    expect(faults).toEqual([]);
    await shown.goto(`${link.slice(0, link.indexOf("#"))}#show=1.damaged`);
    await expect.poll(() => shown.textContent("main")).toMatch(/Link/);
    await context.close();
  }
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
});
