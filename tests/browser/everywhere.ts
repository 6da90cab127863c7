/** A walk through the whole app, in either language: every place, every part of the bench, every sheet, and what opens on the plan itself. */
import type { Page } from "playwright-core";
import { drawingWords } from "../../src/ui/messages/drawings.ts";
import { planWords } from "../../src/ui/messages/plan.ts";
import { shellWords } from "../../src/ui/messages/shell.ts";
import type { Language } from "../../src/words/language.ts";

/** Sheets of the menu: how a station is called in reports, and its entry among the menu's words. */
const MENU = {
  "Your plans": "plans",
  Examples: "examples",
  "Piece and wheel": "piece",
  "Models and links": "exportModel",
  "For a customer": "customer",
  "Film of the piece": "film",
  "Sheet of variants": "variants",
  Settings: "settings",
  Keyboard: "keys",
  Help: "help",
} as const;
/** What a plan opens beside the sheets of the menu. */
const ON_PLAN = ["What works for a tier", "Facet card", "Diary"];
/** Four places, one with six parts of the bench, the sheets, and what opens on the plan. */
export const STATIONS = 3 + 6 + Object.keys(MENU).length + ON_PLAN.length;

/** One who knows the way about the app, by the words of its language. */
export function guideTo(page: Page, language: Language = "en") {
  const shell = shellWords[language];
  const drawings = drawingWords[language];
  const press = (name: string) => page.getByRole("button", { name, exact: true }).click();
  return {
    shell,
    drawings,
    press,
    goTo: (place: "plan" | "look" | "bench" | "ideas") =>
      page
        .getByRole("navigation", { name: shell.places.label })
        .getByRole("button", { name: shell.places[place], exact: true })
        .click(),
    openMenu: () => page.locator(".head").getByRole("button", { name: shell.more, exact: true }).click(),
    closeSheet: async () => {
      await page.getByRole("dialog").getByRole("button", { name: shell.close, exact: true }).click();
      await page.getByRole("dialog").waitFor({ state: "detached" });
    },
    openFacetCard: async () => {
      await page.getByRole("application", { name: shell.piecePicture }).focus();
      await page.keyboard.press("PageDown");
      await press(planWords[language].card.open);
      await page.locator(".card-drawing").waitFor();
    },
  };
}

type Guide = ReturnType<typeof guideTo>;
type LookRound = (where: string) => Promise<void>;

/** Opens what a tier, a facet and the work itself have to show, one after the other. */
async function walkOnPlan(page: Page, guide: Guide, look: LookRound): Promise<void> {
  const [suggestions, card, diary] = ON_PLAN;
  await page.locator(".tier-name").first().focus();
  await guide.press(guide.drawings.suggest.open);
  await page.locator(".offer").first().waitFor();
  await look(suggestions);
  await guide.closeSheet();

  await guide.openFacetCard();
  await look(card);
  await guide.closeSheet();

  await guide.press(guide.drawings.diary.open);
  await page.locator(".diary-strip").waitFor();
  await look(diary);
  await guide.press(guide.drawings.diary.close);
  await page.locator(".diary-strip").waitFor({ state: "detached" });
}

/** Goes everywhere, looks round at each station, and ends where it began, on the plan. */
export async function walkEverywhere(page: Page, look: LookRound, language: Language = "en"): Promise<void> {
  const guide = guideTo(page, language);
  await page.locator(".tier").first().waitFor();
  await look("Plan");
  await walkOnPlan(page, guide, look);
  for (const [name, entry] of Object.entries(MENU)) {
    await guide.openMenu();
    await page.getByRole("menuitem", { name: guide.shell.menu[entry] }).click();
    await page.getByRole("dialog").locator(".sheet-body > *").first().waitFor();
    await look(name);
    await guide.closeSheet();
  }
  await guide.goTo("look");
  await page.locator(".look-parts").waitFor();
  await look("Look");
  await guide.goTo("ideas");
  await page.locator(".idea-wish").waitFor();
  await look("Ideas");
  await guide.goTo("bench");
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
  await guide.goTo("plan");
}
