/** The library of plans as a person uses it: found, copied, put away, thrown out and back, erased in time, backed up and merged. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { unzip } from "../core/models/model-support.ts";
import { closeSheet, fileOf, giveFile, nameField, openFromMenu, renamePlan } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

const DAY_MS = 86_400_000;
const sheet = (page: Page) => page.getByRole("dialog");
const shown = (page: Page) => sheet(page).locator(".shelf-plan b").allTextContents();
const deed = async (page: Page, plan: string, words: string) => {
  await sheet(page)
    .getByRole("button", { name: `More for ${plan}`, exact: true })
    .click();
  await page.getByRole("menuitem", { name: words }).click();
};
const shelf = (page: Page, words: string) => sheet(page).getByText(words, { exact: true }).click();

/** Keeps an example under a name of its own. */
async function keep(page: Page, name: string): Promise<void> {
  await openFromMenu(page, "Examples");
  await page.getByRole("button", { name: "Open First ring" }).click();
  await sheet(page).waitFor({ state: "detached" });
  await renamePlan(page, name);
  await page.getByText("Kept on this device", { exact: true }).first().waitFor();
}

it("finds, copies, puts away, throws out, takes back and erases plans, and merges a backup into what is there", async () => {
  const { page, errors, close } = await app.visit({ without3d: true });
  for (const name of ["Harbour", "Lighthouse"]) await keep(page, name);
  await openFromMenu(page, "Your plans");
  await expect.poll(() => shown(page)).toEqual(["Lighthouse", "Harbour"]);
  // the day as a British browser writes it, and the picture of the plan
  const day = new Intl.DateTimeFormat("en-GB", { dateStyle: "medium" }).format(Date.now());
  const card = sheet(page).locator(".shelf-plan").nth(1);
  expect(await card.textContent()).toContain(`kept ${day}, `);
  await expect.poll(() => card.locator("img").getAttribute("src")).toMatch(/^data:image\//);

  const search = sheet(page).getByRole("searchbox", { name: "Find a plan by name" });
  await search.fill("HARB");
  await expect.poll(() => shown(page)).toEqual(["Harbour"]);
  await search.fill("nothing");
  await sheet(page).getByText('No plan here has "nothing" in its name.').waitFor();
  await search.fill("");

  await deed(page, "Harbour", "Make a copy");
  await expect
    .poll(async () => (await shown(page)).sort())
    .toEqual(["Harbour", "Harbour, copy", "Lighthouse"]);
  await deed(page, "Harbour, copy", "Put away");
  await shelf(page, "Put away");
  await expect.poll(() => shown(page)).toEqual(["Harbour, copy"]);
  await deed(page, "Harbour, copy", "Take back out");
  await sheet(page).getByText("Nothing is put away.").waitFor();
  await shelf(page, "On the shelf");

  const backup = await fileOf(page, () => sheet(page).getByRole("button", { name: "Save a backup" }).click());
  expect(backup.name).toMatch(/^glintwright-library-\d{4}-\d\d-\d\d\.zip$/);
  // each plan is a file of its own in there, readable without this program
  const inside = [...unzip(backup.bytes)].filter(([path]) => path.startsWith("plans/"));
  expect(inside.map(([, bytes]) => JSON.parse(new TextDecoder().decode(bytes)).name).sort()).toEqual([
    "Harbour",
    "Harbour, copy",
    "Lighthouse",
  ]);

  await deed(page, "Harbour, copy", "Throw out");
  await sheet(page).getByRole("button", { name: "Take it back" }).click();
  await expect.poll(async () => (await shown(page)).length).toBe(3);
  await deed(page, "Harbour, copy", "Throw out");
  await shelf(page, "Thrown out");
  await expect.poll(() => shown(page)).toEqual(["Harbour, copy"]);
  await deed(page, "Harbour, copy", "Erase for good");
  await sheet(page).getByText("Nothing was thrown out.").waitFor();
  await closeSheet(page);

  // changed since, erased since, unchanged: none of the three is overwritten or doubled
  await renamePlan(page, "Lighthouse by night");
  await page.getByText("Kept on this device", { exact: true }).first().waitFor();
  await openFromMenu(page, "Your plans");
  const bringBack = sheet(page).getByRole("button", { name: "Bring a backup back" });
  await giveFile(page, () => bringBack.click(), {
    name: "b.zip",
    mimeType: "application/zip",
    buffer: backup.bytes,
  });
  await sheet(page).getByText("Lighthouse: added beside the one of yours that differs").waitFor();
  await sheet(page).getByText("Harbour, copy: added", { exact: true }).waitFor();
  await sheet(page).getByText("Harbour: was here already").waitFor();
  await expect
    .poll(async () => (await shown(page)).sort())
    .toEqual(["Harbour", "Harbour, copy", "Lighthouse", "Lighthouse by night"]);
  expect(errors).toEqual([]);
  await close();
});

it("erases what was thrown out after thirty days of visits, never by a clock that jumps, and brings undo through a reload", async () => {
  const { page, errors, close } = await app.visit({ without3d: true });
  const today = Date.now();
  await page.clock.setFixedTime(today);
  for (const name of ["Gone", "Stays"]) await keep(page, name);
  await openFromMenu(page, "Your plans");
  await deed(page, "Gone", "Throw out");
  await sheet(page).getByRole("button", { name: "Take it back" }).waitFor();

  const isKeptAfter = async (days: number) => {
    await page.clock.setFixedTime(today + days * DAY_MS);
    await page.reload();
    await expect.poll(() => nameField(page).inputValue()).toBe("Stays");
    await openFromMenu(page, "Your plans");
    await shelf(page, "Thrown out");
    await expect.poll(() => shown(page)).toEqual(["Gone"]);
  };
  for (const days of [0, 20_000, 1, 11]) await isKeptAfter(days);
  // ten days of the jump counted, twenty of visits: thirty
  await page.clock.setFixedTime(today + 21 * DAY_MS);
  await page.reload();
  await openFromMenu(page, "Your plans");
  await shelf(page, "Thrown out");
  await sheet(page).getByText("Nothing was thrown out.").waitFor();
  await closeSheet(page);
  await page.getByRole("button", { name: "Undo: name of the plan" }).click();
  expect(await nameField(page).inputValue()).toBe("First ring");
  expect(errors).toEqual([]);
  await close();
});
