/** A person can rely on it: plans are kept, links carry them, names are text. That nothing leaves the origin and all works without a network is held by `whole-app.test.ts`. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { parsePlan } from "../../src/core/plan/file.ts";
import { qrCodeOf } from "../../src/core/plan/link.ts";
import { closeSheet, fileOf, giveFile, openFromMenu, planFile } from "./built-app.ts";
import { noise } from "./noise.ts";
import type { ProfileOptions } from "./profiles.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const app = sharedApp();

const QUICK: ProfileOptions = { without3d: true };
const nameField = { name: "Name of the plan" };

const savedPlan = async (page: Page): Promise<Plan> =>
  parsePlan((await fileOf(page, () => openFromMenu(page, "Save plan to a file"))).bytes.toString("utf8"))
    .plan;

describe("one person's plans", () => {
  const visit = sharedVisit(app, QUICK);

  it("keeps a changed plan on the shelf, with its name as text, and throws it out with undo", async () => {
    const { page, errors } = visit;
    const name = "<img src=x onerror=window.strangerRan=1> Mine";
    await page.getByRole("textbox", nameField).fill(name);
    await page.keyboard.press("Enter");
    await page.getByText("Kept on this device").first().waitFor();
    await openFromMenu(page, "Examples");
    await page.getByRole("button", { name: "Open First ring" }).click();
    await openFromMenu(page, "Your plans");
    const shelf = page.getByRole("dialog");
    await shelf.getByRole("button", { name: `Open ${name}` }).waitFor();
    await shelf.getByRole("button", { name: `More for ${name}` }).click();
    await page.getByRole("menuitem", { name: "Throw out" }).click();
    await shelf.getByText("Nothing here yet", { exact: false }).waitFor();
    await shelf.getByRole("button", { name: "Take it back" }).click();
    await shelf.getByRole("button", { name: `Open ${name}` }).click();
    await page.getByRole("dialog").waitFor({ state: "detached" });
    expect(await page.getByRole("textbox", nameField).inputValue()).toBe(name);
    expect(await page.evaluate(() => "strangerRan" in window)).toBe(false);
    expect(errors).toEqual([]);
  });

  it("keeps a version, tells what changed since, brings it back, and leaves the sheet to the keyboard", async () => {
    const { page, errors } = visit;
    const angle = page.getByRole("spinbutton", { name: "Arm angle" }).first();
    const before = await angle.inputValue();
    await page.getByRole("textbox", nameField).fill("Alpha");
    await page.keyboard.press("Enter");
    await page.getByText("Kept on this device").first().waitFor();
    await openFromMenu(page, "Your plans");
    const shelf = page.getByRole("dialog");
    await shelf.getByRole("textbox", { name: "Name of this version" }).fill("first");
    await shelf.getByRole("button", { name: "Keep this version" }).click();
    await shelf.getByRole("button", { name: "Compare: first" }).waitFor();
    await page.keyboard.press("Escape");
    await shelf.waitFor({ state: "detached" });
    await angle.fill("33");
    await angle.press("Enter");
    await openFromMenu(page, "Your plans");
    await shelf.getByRole("button", { name: "Compare: first" }).click();
    const differences = shelf.locator(".differences");
    await expect.poll(() => differences.textContent()).toMatch(/then .*now 33/);
    // two versions with one another, whatever is on the bench
    await shelf.getByRole("textbox", { name: "Name of this version" }).fill("second");
    await shelf.getByRole("button", { name: "Keep this version" }).click();
    await shelf.getByRole("button", { name: "Bring back: second" }).waitFor();
    await shelf.getByRole("button", { name: "Bring back: first" }).click();
    await shelf.getByText("Nothing differs from what is on the bench.").waitFor();
    await shelf.getByRole("button", { name: /Compare with/ }).click();
    await page.getByRole("option", { name: "second" }).click();
    await shelf.getByText("Differs from second:").waitFor();
    expect(await differences.textContent()).toMatch(/in this one .*in the other 33/);
    await shelf.getByRole("button", { name: "Bring back: second" }).click();
    await shelf.getByRole("button", { name: /Compare with/ }).click();
    await page.getByRole("option", { name: "what is on the bench" }).click();
    await shelf.getByRole("button", { name: "Bring back: first" }).click();
    await shelf.getByText("Nothing differs").waitFor();
    await page.keyboard.press("Escape");
    await shelf.waitFor({ state: "detached" });
    expect(await angle.inputValue()).toBe(before);
    expect(errors).toEqual([]);
  });

  it("carries the plan in a link, and says what is wrong with a broken one", async () => {
    const { page } = visit;
    await page.getByRole("textbox", nameField).fill("By post");
    await page.keyboard.press("Enter");
    await openFromMenu(page, "Models and links");
    const link = await page.getByRole("textbox", { name: "Link to this plan" }).inputValue();
    expect(await page.locator(".link-code path").getAttribute("d")).toBe(qrCodeOf(link).path);
    await page.keyboard.press("Escape");
    await openFromMenu(page, "Examples");
    await page.getByRole("button", { name: "Open First ring" }).click();
    await page.evaluate((hash) => {
      location.hash = hash;
    }, new URL(link).hash);
    await page.getByText("Opened from a link: By post").waitFor();
    expect(await page.getByRole("textbox", nameField).inputValue()).toBe("By post");
    await page.evaluate(() => {
      location.hash = "#plan=1.!!!";
    });
    await page.getByText("The link can't be opened").waitFor();
    expect(await page.getByRole("textbox", nameField).inputValue()).toBe("By post");
  });

  it("says of a plan what is too long for a code, and what for a link, and offers neither then", async () => {
    const { page, errors } = visit;
    const sheet = page.getByRole("dialog");
    const link = sheet.getByRole("textbox", { name: "Link to this plan" });
    for (const [characters, words, links] of [
      [4000, "This plan is too long for a code; the link itself works.", 1],
      [19_000, "This plan is too long for a link. Save it to a file and send that.", 0],
    ] as const) {
      const plan = { ...(await savedPlan(page)), notes: noise(characters) };
      await giveFile(page, () => openFromMenu(page, "Open a plan file"), planFile(plan, "long.json"));
      await page.getByText(`Opened ${plan.name}`).first().waitFor();
      await openFromMenu(page, "Models and links");
      await sheet.getByText(words).waitFor();
      expect(await link.count()).toBe(links);
      expect(await sheet.locator(".link-code").count()).toBe(0);
      await closeSheet(page);
    }
    expect(errors).toEqual([]);
  });
});
