/** Editing by typing: the sentence is the form, every change is one step back. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { ruleWords } from "../../src/ui/messages/rules.ts";
import { fileOf, openFromMenu } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

const openExample = async (page: Page, name: string) => {
  await openFromMenu(page, "Examples");
  await page.getByRole("button", { name: `Open ${name}` }).click();
  await page.waitForFunction(
    (wanted) => (document.querySelector(".recipe-title input") as HTMLInputElement | null)?.value === wanted,
    name,
  );
};
const field = (page: Page, name: string, nth = 0) => page.getByRole("spinbutton", { name }).nth(nth);
const truth = (page: Page, nth = 0) => page.locator(".tier-truth").nth(nth).textContent();

describe("a tier's sentence", () => {
  it("cuts anew when a number is typed, and undo brings the old one back by name", async () => {
    const { page, errors, close } = await app.visit({ without3d: true });
    await openExample(page, "First ring");
    const before = await truth(page);
    await field(page, "Arm angle").fill("42.5");
    await field(page, "Arm angle").press("Enter");
    await expect.poll(() => truth(page)).not.toBe(before);
    await page.getByRole("button", { name: "Undo: angle of tier 1" }).click();
    expect(await truth(page)).toBe(before);
    expect(await field(page, "Arm angle").inputValue()).toBe("30.0°");
    await page.getByRole("button", { name: "Redo: angle of tier 1" }).click();
    expect(await field(page, "Arm angle").inputValue()).toBe("42.5°");
    expect(errors).toEqual([]);
    await close();
  });

  it("keeps what was typed when it can't be used, says what can, and leaves the piece as it was", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await openExample(page, "First ring");
    const before = await truth(page);
    const angle = field(page, "Arm angle");
    await angle.fill("140");
    await angle.press("Enter");
    expect(await angle.inputValue()).toBe("140");
    expect(await angle.getAttribute("aria-invalid")).toBe("true");
    expect(await page.locator(".field-caption[data-shown]").textContent()).toContain("0° to 90°");
    expect(await truth(page)).toBe(before);
    await angle.press("Escape");
    expect(await angle.inputValue()).toBe("30.0°");
    await close();
  });

  it("takes one of a few by keys, keeps it when it is chosen again, and leaves undo to the page", async () => {
    const { page, errors, close } = await app.visit({ without3d: true });
    const side = page.getByRole("button", { name: "front Side" }).first();
    const back = page.getByRole("button", { name: "back Side" }).first();
    const list = page.getByRole("listbox");
    await side.focus();
    await page.keyboard.press("ArrowDown");
    await page.waitForFunction(() => document.activeElement?.role === "option");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await list.waitFor({ state: "detached" });
    await page.waitForFunction(() => document.activeElement?.getAttribute("aria-haspopup") === "listbox");
    expect(await back.evaluate((button) => button === document.activeElement)).toBe(true);
    await back.press("Enter");
    await page.getByRole("option", { name: "back", selected: true }).press("Enter");
    await list.waitFor({ state: "detached" });
    // chosen again it is no change: one step goes back to what was before
    await page.keyboard.press("Control+z");
    await side.waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it("says that a rule can't be met, and why, under the sentence it belongs to", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await openExample(page, "Dew on a dome");
    await field(page, "Gap").fill("25");
    await field(page, "Gap").press("Enter");
    await page.waitForSelector(".tier[data-unmet]");
    const finding = page.locator(".tier").first().locator(".finding[data-severity=stop]").first();
    expect(await finding.textContent()).toMatch(
      /Can't be ground\..*can't leave gaps of 25.0.*apart before they are cut/,
    );
    await close();
  });

  it("takes a width that is typed back as one step, by its name", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await openExample(page, "First ring");
    await page
      .getByRole("button", { name: /How deep/ })
      .first()
      .click();
    await page.getByRole("option", { name: ruleWords.en.width.name }).click();
    const width = field(page, ruleWords.en.width.amount);
    await width.waitFor();
    const [first, before] = [await width.inputValue(), await truth(page)];
    await width.fill("4.2");
    await width.press("Enter");
    await expect.poll(() => truth(page)).toMatch(/4\.2\smm wide/);
    await page.keyboard.press("Control+z");
    await expect.poll(() => width.inputValue()).toBe(first);
    await expect.poll(() => truth(page)).toBe(before);
    await page.getByRole("button", { name: "Redo: depth of tier 1" }).click();
    await expect.poll(() => width.inputValue()).toBe("4.20");
    await close();
  });

  it("is left ground from the tier's own menu on the plan and from the one on Look, each one step back", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await openExample(page, "First ring");
    const finish = async () => {
      const { bytes } = await fileOf(page, () => page.keyboard.press("Control+s"));
      return JSON.parse(bytes.toString("utf8")).tiers[0].finish;
    };
    const leave = async (how: string) => {
      await page.getByRole("button", { name: "More about Ring", exact: true }).click();
      await page.getByRole("menuitem", { name: how }).click();
    };
    await leave("Leave it ground");
    expect(await finish()).toBe("ground");
    await page.getByRole("navigation", { name: "Places" }).getByText("Look", { exact: true }).click();
    await page.getByText("Recipe", { exact: true }).click();
    await leave("Leave it pre-polished");
    expect(await finish()).toBe("prepolished");
    await page.getByText("Light and picture", { exact: true }).click();
    await page.getByRole("button", { name: "pre-polished Finish: Ring" }).click();
    await page.getByRole("option", { name: "polished", exact: true }).click();
    expect(await finish()).toBe("polished");
    for (const expected of ["prepolished", "ground", undefined]) {
      await page.keyboard.press("Control+z");
      expect(await finish()).toBe(expected);
    }
    await close();
  });

  it("takes inches and fractions of an inch wherever a length is typed", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await openFromMenu(page, "Piece and wheel");
    const diameter = page.getByRole("spinbutton", { name: "Diameter", exact: true });
    await diameter.fill("1 1/2 in");
    await diameter.press("Enter");
    expect(await diameter.inputValue()).toBe("38.1");
    await close();
  });

  it("goes back and forth by keys, step by step, each document to the bit", async () => {
    const { page, errors, close } = await app.visit({ without3d: true });
    await openExample(page, "First ring");
    const plan = async () =>
      (await fileOf(page, () => page.keyboard.press("Control+s"))).bytes.toString("utf8");
    const angle = field(page, "Arm angle");
    await angle.focus();
    // the state's own test looks at each of 200 steps; the browser drops what a page saves beyond ten files a second
    const LOOKED_AT = [0, 1, 20];
    /** Holds a chord until so many steps are done, and tells the document at each of the steps looked at on the way. */
    const walk = async (held: readonly string[], key: string, steps: readonly number[]) => {
      const seen = new Map<number, string>();
      for (const [i, step] of steps.entries()) {
        for (const one of held) await page.keyboard.down(one);
        // a key that is held down says so again and again
        for (let k = 0; i > 0 && k < Math.abs(step - steps[i - 1]); k++) await page.keyboard.down(key);
        for (const one of [key, ...held]) await page.keyboard.up(one);
        seen.set(step, await plan());
      }
      return seen;
    };
    const made = await walk(["Alt"], "ArrowUp", LOOKED_AT);
    expect(new Set(made.values()).size).toBe(LOOKED_AT.length);
    expect(await walk(["Control"], "z", LOOKED_AT.toReversed())).toEqual(made);
    expect(await page.locator(".undo").getAttribute("aria-label")).toBe("Nothing to undo");
    expect(await walk(["Control", "Shift"], "Z", LOOKED_AT)).toEqual(made);
    expect(errors).toEqual([]);
    await close();
  });

  it("adds, duplicates, moves and deletes tiers, each undone by its name", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await openExample(page, "First ring");
    const tiers = page.locator(".tier");
    await page.getByRole("button", { name: "Add a tier" }).click();
    await expect.poll(() => tiers.count()).toBe(2);
    const choose = async (name: string, item: string) => {
      await page.getByRole("button", { name: `More about ${name}`, exact: true }).click();
      await page.getByRole("menuitem", { name: item }).click();
    };
    await choose("Ring", "Duplicate");
    await expect.poll(() => tiers.count()).toBe(3);
    await choose("Ring, again", "Cut earlier");
    await page.waitForSelector("[aria-label='Undo: order of tier 2']");
    await choose("Ring, again", "Delete");
    await expect.poll(() => tiers.count()).toBe(2);
    await page.getByRole("button", { name: "Undo: deleting tier 1" }).click();
    await expect.poll(() => tiers.count()).toBe(3);
    await close();
  });
});
