/**
 * A hand that edits at random, the same way for the same seed: it types, drags, adds, takes away, undoes, changes places,
 * keeps versions and saves, through the page as a person does. Each deed is told by its name.
 */
import type { Locator, Page } from "playwright-core";
import { closeSheet, fileOf, openFromMenu } from "./built-app.ts";

/** Uniform numbers in [0, 1) from a seed: mulberry32, T. Ettinger, public domain. */
export function chanceFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** More tiers than this make a plan that nobody grinds and that is slow to draw in software. */
const MOST_TIERS = 9;
const DRAG_STEPS = 5;
/** A press that did nothing for so long went beside: the page moved under the hand while it pressed. */
const SLIPPED_MS = 20_000;
export const PLACES = ["Plan", "Look", "Bench"] as const;

export async function goTo(page: Page, place: (typeof PLACES)[number]): Promise<void> {
  await page.getByRole("navigation", { name: "Places" }).getByRole("button", { name: place }).click();
  if (place === "Plan") await page.locator(".recipe").waitFor();
}

/** The plan on the bench as the file that the app writes. */
export const savedPlan = async (page: Page): Promise<string> =>
  (await fileOf(page, () => page.keyboard.press("Control+s"))).bytes.toString("utf8");

/** A press on the page's bare corner, so that keys reach no field. */
const leaveFields = (page: Page) => page.locator(".head-left").click();

/** Presses undo or redo until there is nothing more to do. @returns the presses */
export async function walk(page: Page, way: "Undo" | "Redo"): Promise<number> {
  const end = page.locator(".head").getByRole("button", { name: `Nothing to ${way.toLowerCase()}` });
  const chord = way === "Undo" ? "Control+z" : "Control+Shift+z";
  await leaveFields(page);
  for (let presses = 0; presses < 2000; presses++) {
    if ((await end.count()) > 0) return presses;
    await page.keyboard.press(chord);
  }
  throw new Error(`${way} never came to an end`);
}

/** All that the hand can do, each deed with its weight. */
export function createHand(page: Page, chance: () => number) {
  let slipped = 0;
  const below = (n: number): number => Math.floor(chance() * n);
  const between = (least: number, most: number): number => least + chance() * (most - least);
  const oneOf = async (found: Locator): Promise<Locator | null> => {
    const count = await found.count();
    return count === 0 ? null : found.nth(below(count));
  };
  const field = (name: string) => page.locator(".recipe").getByRole("spinbutton", { name, exact: true });

  const type = (name: string, value: () => string) => async () => {
    const chosen = await oneOf(field(name));
    if (!chosen) return;
    await chosen.fill(value());
    await chosen.press("Enter");
    // what is not allowed stays in the field until it is taken back
    await chosen.press("Escape");
  };

  async function step(): Promise<void> {
    const chosen = await oneOf(page.locator(".tier").getByRole("spinbutton"));
    await chosen?.press(chance() < 0.5 ? "ArrowUp" : "ArrowDown");
  }

  async function drag(on: Locator, reach: number): Promise<void> {
    const box = (await on.count()) > 0 ? await on.boundingBox() : null;
    if (!box) return;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const [dx, dy] = [between(-reach, reach), between(-reach, reach)];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= DRAG_STEPS; i++)
      await page.mouse.move(x + (dx * i) / DRAG_STEPS, y + (dy * i) / DRAG_STEPS);
    if (chance() < 0.2) await page.keyboard.press("Escape");
    await page.mouse.up();
  }
  const dragGrip = async () => {
    const grip = await oneOf(page.locator(".profile .grip-knob"));
    if (grip) await drag(grip, 25);
  };

  async function rule(): Promise<void> {
    const chosen = await oneOf(page.locator(".tier").getByRole("button", { name: /How deep/ }));
    if (!chosen) return;
    await chosen.click();
    const options = page.getByRole("option").and(page.locator(":not([aria-disabled=true])"));
    await options.first().waitFor();
    const option = options.nth(below(await options.count()));
    await option.click();
    const list = page.getByRole("listbox");
    await list.waitFor({ state: "detached", timeout: SLIPPED_MS }).catch(async () => {
      slipped++;
      await option.click();
      await list.waitFor({ state: "detached" });
    });
  }

  async function addTier(): Promise<void> {
    if ((await page.locator(".tier").count()) < MOST_TIERS)
      await page
        .locator(".recipe")
        .getByRole("button", { name: /Add (a|the first) tier/ })
        .click();
  }

  async function tierMenu(): Promise<void> {
    const count = await page.locator(".tier").count();
    const more = await oneOf(page.locator(".tier").getByRole("button", { name: /^More about/ }));
    if (!more) return;
    const wanted = count < MOST_TIERS ? ["Duplicate", "Cut earlier", "Cut later", "Delete"] : ["Delete"];
    await more.click();
    const item = page.getByRole("menuitem", { name: wanted[below(wanted.length)] });
    await item.waitFor();
    if ((await item.getAttribute("aria-disabled")) === "true") await page.keyboard.press("Escape");
    else await item.click();
    await page.getByRole("menu").waitFor({ state: "detached" });
  }

  async function rename(): Promise<void> {
    const names = page.getByRole("textbox", { name: /^Name of the (plan|tier)$/ });
    const chosen = await oneOf(names);
    await chosen?.fill(`Name ${below(1000)}`);
    await chosen?.press("Enter");
  }

  const press = (chord: string) => async () => {
    await leaveFields(page);
    for (let i = below(4); i >= 0; i--) await page.keyboard.press(chord);
  };

  async function otherPlace(): Promise<void> {
    const place = PLACES[1 + below(2)];
    await goTo(page, place);
    await page
      .locator(place === "Look" ? ".look-page" : ".bench")
      .first()
      .waitFor();
    await goTo(page, "Plan");
  }

  async function sheet(): Promise<void> {
    const names = ["Piece and wheel", "Settings", "Examples", "Models and links", "Keyboard", "Help"];
    await openFromMenu(page, names[below(names.length)]);
    await page.getByRole("dialog").locator(".sheet-body > *").first().waitFor();
    await closeSheet(page);
  }

  /** Keeps a version, compares with it, brings one back. */
  async function version(): Promise<void> {
    await openFromMenu(page, "Your plans");
    const dialog = page.getByRole("dialog");
    await dialog.getByRole("heading", { name: "Versions of this plan" }).waitFor();
    const shelve = dialog.getByRole("button", { name: "Put this plan on the shelf" });
    const name = dialog.getByRole("textbox", { name: "Name of this version" });
    if ((await shelve.count()) === 0) {
      await name.fill(`version ${below(1000)}`);
      await dialog.getByRole("button", { name: "Keep this version" }).click();
      await dialog.locator(".version").first().waitFor();
      await dialog
        .getByRole("button", { name: /^Compare:/ })
        .first()
        .click();
      if (chance() < 0.5)
        await dialog
          .getByRole("button", { name: /^Bring back/ })
          .last()
          .click();
    }
    await closeSheet(page);
  }

  const deeds: readonly (readonly [name: string, weight: number, run: () => Promise<unknown>])[] = [
    ["type an angle", 4, type("Arm angle", () => between(-5, 95).toFixed(1))],
    ["type a count", 3, type("Number of facets", () => String(below(26)))],
    ["type a start", 2, type("Start", () => String(below(96)))],
    ["type an amount", 2, type("Depth", () => between(0, 6).toFixed(2))],
    ["step a number", 3, step],
    ["drag a grip", 5, dragGrip],
    ["drag the piece", 2, () => drag(page.locator(".piece-canvas"), 60)],
    ["drag on the skin", 3, () => drag(page.locator(".skin svg").first(), 30)],
    ["choose a rule", 3, rule],
    ["add a tier", 2, addTier],
    ["tier menu", 3, tierMenu],
    ["rename", 1, rename],
    ["undo", 4, press("Control+z")],
    ["redo", 3, press("Control+Shift+z")],
    ["another place", 1, otherPlace],
    ["a sheet", 1, sheet],
    ["a version", 1, version],
    ["save to a file", 1, () => savedPlan(page)],
  ];
  const all = deeds.reduce((sum, [, weight]) => sum + weight, 0);

  return {
    /** Presses that had to be made twice. */
    slipped: () => slipped,
    /** Does one thing. @returns its name */
    act: async (): Promise<string> => {
      let at = chance() * all;
      const [name, , run] = deeds.find(([, weight]) => {
        at -= weight;
        return at < 0;
      })!;
      try {
        await run();
      } catch (error) {
        throw new Error(`${name}: ${error instanceof Error ? error.message : error}`);
      }
      return name;
    },
  };
}
