/** A walk through the whole app: every place, every part of the bench, every sheet of the menu. */
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
/** Three places with five parts of the bench, and the sheets. */
export const STATIONS = 2 + 5 + SHEETS.length;

const goTo = (page: Page, place: string) =>
  page.getByRole("navigation", { name: "Places" }).getByRole("button", { name: place }).click();

/** Goes everywhere, looks round at each station, and ends where it began, on the plan. */
export async function walkEverywhere(page: Page, look: (where: string) => Promise<void>): Promise<void> {
  await page.locator(".tier").first().waitFor();
  await look("Plan");
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
