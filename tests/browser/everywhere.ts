/** A walk through the whole app: every place, every part of the bench, every sheet, and what opens on the plan itself. */
import type { Page } from "playwright-core";
import { closeSheet, openFromMenu } from "./built-app.ts";

export const SHEETS = [
  "Your plans",
  "Examples",
  "Piece and wheel",
  "Models and links",
  "Settings",
  "Keyboard",
  "Help",
];
/** What a plan opens beside the sheets of the menu. */
const ON_PLAN = ["What works for a tier", "Facet card", "Diary"];
/** Three places with five parts of the bench, the sheets, and what opens on the plan. */
export const STATIONS = 2 + 5 + SHEETS.length + ON_PLAN.length;

const goTo = (page: Page, place: string) =>
  page.getByRole("navigation", { name: "Places" }).getByRole("button", { name: place }).click();

/** Opens what a tier, a facet and the work itself have to show, one after the other. */
async function walkOnPlan(page: Page, look: (where: string) => Promise<void>): Promise<void> {
  const [suggestions, card, diary] = ON_PLAN;
  await page.locator(".tier-name").first().focus();
  await page.getByRole("button", { name: "Counts and angles that work" }).click();
  await page.locator(".offer").first().waitFor();
  await look(suggestions);
  await closeSheet(page);

  await page.getByRole("application", { name: "The piece" }).focus();
  await page.keyboard.press("PageDown");
  await page.getByRole("button", { name: "Facet card" }).click();
  await page.locator(".card-drawing").waitFor();
  await look(card);
  await closeSheet(page);

  await page.getByRole("button", { name: "Diary of the work" }).click();
  await page.locator(".diary-strip").waitFor();
  await look(diary);
  await page.getByRole("button", { name: "Leave the diary" }).click();
  await page.locator(".diary-strip").waitFor({ state: "detached" });
}

/** Goes everywhere, looks round at each station, and ends where it began, on the plan. */
export async function walkEverywhere(page: Page, look: (where: string) => Promise<void>): Promise<void> {
  await page.locator(".tier").first().waitFor();
  await look("Plan");
  await walkOnPlan(page, look);
  for (const name of SHEETS) {
    await openFromMenu(page, name);
    await page.getByRole("dialog").locator(".sheet-body > *").first().waitFor();
    await look(name);
    await closeSheet(page);
  }
  await goTo(page, "Look");
  await page.locator(".look-parts").waitFor();
  await look("Look");
  await goTo(page, "Bench");
  const parts = page.locator(".bench-parts").getByRole("button");
  await parts.first().waitFor();
  for (const part of await parts.all()) {
    await part.click();
    await page
      .locator(".bench-parts [aria-current=page]", { hasText: (await part.textContent()) ?? "" })
      .waitFor();
    await page.locator(".bench > :nth-child(3)").waitFor();
    await look(`Bench: ${await part.textContent()}`);
  }
  await goTo(page, "Plan");
}
