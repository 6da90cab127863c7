/** A person can rely on it: nothing leaves the origin, it works without a network, plans are kept, links carry them, names are text. */
import { afterAll, beforeAll, expect, it } from "vitest";
import { type BuiltApp, openFromMenu, serveBuiltApp } from "./built-app.ts";
import { walkEverywhere } from "./everywhere.ts";

let app: BuiltApp;
beforeAll(async () => {
  app = await serveBuiltApp();
});
afterAll(() => app?.close());

const nameField = { name: "Name of the plan" };

it("asks nothing of another origin in any place, part or sheet, and lets no foreign script in", async () => {
  const { page, errors, foreign, close } = await app.visit();
  await walkEverywhere(page, async () => undefined);
  expect(foreign).toEqual([]);
  expect(errors).toEqual([]);
  const ran = await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "window.strangerRan = true";
    document.head.append(script);
    return "strangerRan" in window;
  });
  expect(ran).toBe(false);
  await close();
});

it("works with the network cut once it has been visited", async () => {
  const { page, close } = await app.visit();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(async () => (await caches.keys()).length > 0);
  // The first visit's worker takes hold of the page with the next load.
  await page.reload();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.context().setOffline(true);
  await page.reload();
  await page.waitForSelector(".tier-sentence");
  expect(await page.locator(".tier-sentence").count()).toBeGreaterThanOrEqual(5);
  await close();
});

it("keeps a changed plan on the shelf, with its name as text, and throws it out with undo", async () => {
  const { page, errors, close } = await app.visit();
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
  await close();
});

it("keeps a version, tells what changed since, brings it back, and leaves the sheet to the keyboard", async () => {
  const { page, errors, close } = await app.visit();
  const angle = page.getByRole("spinbutton", { name: "Arm angle" }).first();
  const before = await angle.inputValue();
  await page.getByRole("textbox", nameField).fill("Alpha");
  await page.keyboard.press("Enter");
  await page.getByText("Kept on this device").first().waitFor();
  await openFromMenu(page, "Your plans");
  const shelf = page.getByRole("dialog");
  await shelf.getByRole("textbox", { name: "Name of this version" }).fill("first");
  await shelf.getByRole("button", { name: "Keep this version" }).click();
  await shelf.getByRole("button", { name: "Compare with now: first" }).waitFor();
  await page.keyboard.press("Escape");
  await shelf.waitFor({ state: "detached" });
  await angle.fill("33");
  await angle.press("Enter");
  await openFromMenu(page, "Your plans");
  await shelf.getByRole("button", { name: "Compare with now: first" }).click();
  expect(await shelf.locator(".differences").textContent()).toMatch(/then .*now 33/);
  await shelf.getByRole("button", { name: "Bring back: first" }).click();
  await shelf.getByText("Nothing differs").waitFor();
  await page.keyboard.press("Escape");
  await shelf.waitFor({ state: "detached" });
  expect(await angle.inputValue()).toBe(before);
  expect(errors).toEqual([]);
  await close();
});

it("carries the plan in a link, and says what is wrong with a broken one", async () => {
  const { page, close } = await app.visit();
  await page.getByRole("textbox", nameField).fill("By post");
  await page.keyboard.press("Enter");
  await openFromMenu(page, "Models and links");
  const link = await page.getByRole("textbox", { name: "Link to this plan" }).inputValue();
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
  await close();
});
