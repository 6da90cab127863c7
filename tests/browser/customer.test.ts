/** The app makes the page for a customer, and what it hands over opens from a folder and shows the piece. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, it } from "vitest";
import { fileOf, openFromMenu, renamePlan } from "./built-app.ts";
import { sharedApp } from "./shared.ts";
import { NO_3D } from "./support.ts";

const app = sharedApp();
const NAME = `Quay </script><script>alert(1)</script>`;

it("makes a page that stands alone, with the maker's name, a price, and no recipe", async () => {
  const { page, errors, foreign, close } = await app.visit();
  await renamePlan(page, NAME);
  await openFromMenu(page, "For a customer");
  const sheet = page.getByRole("dialog");
  await sheet.getByLabel("Your name").fill("Kiln Lane");
  await sheet.getByLabel("Price, as it is to be read").fill("210 €");
  const make = sheet.getByRole("button", { name: "Make the page" });
  // a dozen pictures are traced in software
  page.context().setDefaultTimeout(500_000);
  const file = await fileOf(page, () => make.click());
  const html = file.bytes.toString("utf8");
  expect(file.name).toMatch(/^Quay.*\.html$/);
  expect(file.bytes.length).toBeLessThan(900_000);
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

  // the maker's name is the plan's, and can be taken back
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await openFromMenu(page, "For a customer");
  expect(await page.getByRole("dialog").getByLabel("Your name").inputValue()).toBe("");
  await close();
});
