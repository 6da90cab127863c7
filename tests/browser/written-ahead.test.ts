/** Leaving the page in the middle of things: an edit a moment ago, a text not entered yet; a reload never asks for what is safe. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { fileOf, openFromMenu } from "./built-app.ts";
import { guideTo } from "./everywhere.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();
const nameOf = (page: Page) => page.getByRole("textbox", { name: "Name of the plan" });

/** Loads the page anew at once. @returns whether it asked first */
async function reload(page: Page): Promise<boolean> {
  let asked = false;
  page.once("dialog", (dialog) => {
    asked = true;
    void dialog.accept();
  });
  await page.reload();
  await page.waitForSelector(".recipe, .bench");
  return asked;
}

/** The plan on the bench, by the file that is saved of it. */
const planOf = async (page: Page): Promise<Plan> =>
  JSON.parse((await fileOf(page, () => page.keyboard.press("Control+s"))).bytes.toString("utf8"));

/** What is done last before the page is gone, on the first example, one after the other; and what is to be found of it. */
const DEEDS: readonly (readonly [
  string,
  (page: Page) => Promise<unknown>,
  (plan: Plan) => unknown,
  unknown,
])[] = [
  [
    "a figure typed on a handle of the profile",
    async (page) => {
      await page.locator(".profile [role=slider]").nth(1).focus();
      await page.keyboard.type("33.5");
    },
    ({ tiers }) => tiers[1].armAngleDeg,
    33.5,
  ],
  [
    "a tier deleted",
    async (page) => {
      await page.getByRole("button", { name: "More about Table", exact: true }).click();
      await page.getByRole("menuitem", { name: "Delete" }).click();
    },
    ({ tiers }) => tiers.length,
    7,
  ],
  ["a step back", (page) => page.keyboard.press("Control+z"), ({ tiers }) => tiers.length, 8],
  ["a step forward again", (page) => page.keyboard.press("Control+Shift+z"), ({ tiers }) => tiers.length, 7],
  [
    "a name typed for a customer",
    async (page) => {
      await openFromMenu(page, "For a customer");
      await page.getByRole("textbox", { name: "Your name" }).fill("Only typed");
    },
    ({ maker }) => maker?.name,
    "Only typed",
  ],
  [
    "an hour's price typed",
    async (page) => {
      await guideTo(page).goTo("bench");
      await page.locator(".bench-parts").getByRole("button", { name: "Price", exact: true }).click();
      await page.getByLabel("An hour of yours", { exact: true }).fill("45");
    },
    ({ offer }) => offer?.hourly,
    45,
  ],
];

describe("a reload right after", () => {
  it("any kind of edit finds it again, steps back and forward too", async () => {
    const { page, errors, close } = await app.visit({ without3d: true });
    for (const [what, deed, found, expected] of DEEDS) {
      await deed(page);
      expect(await reload(page), what).toBe(false);
      await expect.poll(async () => found(await planOf(page)), { message: what }).toBe(expected);
    }
    expect(errors).toEqual([]);
    await close();
  });

  it("an edit finds the edit again, and doesn't ask", async () => {
    const { page, errors, close } = await app.visit({ without3d: true });
    await nameOf(page).fill("Entered");
    await nameOf(page).press("Enter");
    expect(await reload(page)).toBe(false);
    await expect.poll(() => nameOf(page).inputValue()).toBe("Entered");
    expect(errors).toEqual([]);
    await close();
  });

  it("typing finds the text again that was not entered", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await nameOf(page).fill("Only typed");
    expect(await reload(page)).toBe(false);
    await expect.poll(() => nameOf(page).inputValue()).toBe("Only typed");
    await close();
  });

  it("typing finds it again also where the storage had not answered yet", async () => {
    // on the first load it never answers, and nothing waits for it in vain
    const before = () => {
      const ANY_LONGER_MS = 4000;
      if (sessionStorage.getItem("loaded") !== null) return;
      sessionStorage.setItem("loaded", "once");
      const open = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (...given) {
        const request = open.apply(this, given);
        request.addEventListener("success", (event) => event.stopImmediatePropagation());
        return request;
      };
      window.setTimeout = new Proxy(window.setTimeout, {
        apply: (later, page, [run, ms, ...given]) =>
          ms >= ANY_LONGER_MS ? 0 : Reflect.apply(later, page, [run, ms, ...given]),
      });
    };
    const { page, close } = await app.visit({ without3d: true, before });
    await nameOf(page).fill("Typed early");
    expect(await reload(page)).toBe(false);
    await expect.poll(() => nameOf(page).inputValue()).toBe("Typed early");
    await close();
  });

  it("an edit that the browser keeps nowhere asks first", async () => {
    const before = () => {
      Object.defineProperty(window, "indexedDB", { value: undefined });
    };
    const { page, close } = await app.visit({ without3d: true, before });
    // what the browser keeps is known a moment after the page shows, and told at once
    await page.getByRole("alert").filter({ hasText: "no storage to offer" }).waitFor();
    await nameOf(page).fill("Nowhere");
    await nameOf(page).press("Enter");
    expect(await reload(page)).toBe(true);
    await close();
  });
});
