/** Leaving the page in the middle of things: an edit a moment ago, a text not entered yet; a reload never asks for what is safe. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { customerWords } from "../../src/ui/messages/customer.ts";
import { glassColourWords } from "../../src/ui/messages/glass-colour.ts";
import { planWords } from "../../src/ui/messages/plan.ts";
import { png, raster } from "../core/optics/pictures.ts";
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

/** A dark ball on white. */
const BALL = raster(200, 200, (u, v) => {
  const r = Math.hypot(u - 0.5, v - 0.5);
  return r > 0.4 ? [235, 235, 235, 255] : r > 0.25 ? [70, 75, 80, 255] : [200, 40, 40, 255];
});

/** Takes a photograph of the ball as far as it can be put inside. */
async function choosePhoto(page: Page): Promise<void> {
  const line = page.getByRole("button", { name: /^Inside: / });
  if ((await line.getAttribute("aria-expanded")) !== "true") await line.click();
  const buffer = Buffer.from(png(BALL));
  await page
    .locator(".photo input[type=file]")
    .setInputFiles({ name: "ball.png", mimeType: "image/png", buffer });
  await page.getByRole("button", { name: "Put it inside" }).waitFor();
}

/** How long after an edit the page is gone, ms: at once, before the plan's rest is over, while it is being kept. */
const GONE_AFTER_MS = [0, 50, 400];

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
    "a glass chosen",
    async (page) => {
      await openFromMenu(page, "Piece and wheel");
      await page.getByRole("radio", { name: "Soda-lime" }).check({ force: true });
    },
    ({ piece }) => piece.glass,
    "soda-lime",
  ],
  [
    "a colour of the glass",
    async (page) => {
      await page.locator(".glass-part").getByRole("button", { name: planWords.en.piece.glassClear }).click();
      const honey = page.getByRole("radio", { name: glassColourWords.en.colours.honey });
      await page.locator(".glass-part label").filter({ has: honey }).click();
    },
    ({ piece }) => piece.tint !== undefined,
    true,
  ],
  [
    "a photograph put inside",
    async (page) => {
      await choosePhoto(page);
      await page.getByRole("button", { name: "Put it inside" }).click();
      await page.getByRole("button", { name: "Undo: a photograph inside" }).waitFor();
    },
    ({ piece, pictures }) => [
      piece.inside?.some(({ kind }) => kind === "picture"),
      Object.values(pictures ?? {}).map((url) => url.startsWith("data:image/png;base64,")),
    ],
    [true, [true]],
  ],
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
    "a caption typed for a customer",
    async (page) => {
      await openFromMenu(page, "For a customer");
      await page.getByRole("textbox", { name: customerWords.en.caption }).fill("From the third kiln");
    },
    ({ showing }) => showing,
    { caption: "From the third kiln" },
  ],
  [
    "a price typed for a customer, and the sheet closed by Escape",
    async (page) => {
      await openFromMenu(page, "For a customer");
      await page.getByRole("textbox", { name: customerWords.en.price }).fill("140");
      await page.keyboard.press("Escape");
      // the browser has gone back from the sheet's own entry: a reload on the way there would be broken off
      await expect
        .poll(() => page.evaluate(() => (history.state as { spot?: { over?: number } } | null)?.spot?.over))
        .toBe(0);
    },
    ({ showing }) => showing?.price,
    "140",
  ],
  [
    "a measured width typed as cut",
    async (page) => {
      await guideTo(page).goTo("bench");
      await page.locator(".bench-parts").getByRole("button", { name: "As cut", exact: true }).click();
      const tier = page.locator(".bench-tier").first();
      await tier.getByText("Type in measurements").click();
      await tier.getByLabel("Facet width", { exact: true }).first().fill("6.2");
    },
    ({ tiers }) => tiers[0].asCut?.widthMm,
    6.2,
  ],
  [
    "an hour's price typed",
    async (page) => {
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
    for (const [i, [what, deed, found, expected]] of DEEDS.entries()) {
      await deed(page);
      const goneAfterMs = GONE_AFTER_MS[i % GONE_AFTER_MS.length];
      const when = `${what}, ${goneAfterMs} ms after`;
      if (goneAfterMs > 0) await page.waitForTimeout(goneAfterMs);
      expect(await reload(page), when).toBe(false);
      await expect.poll(async () => found(await planOf(page)), { message: when }).toEqual(expected);
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

  it("choosing a photograph asks until it is put inside, and then no more", async () => {
    const { page, close } = await app.visit({ without3d: true });
    await choosePhoto(page);
    expect(await reload(page)).toBe(true);
    await page.locator(".tier").first().waitFor();
    expect((await planOf(page)).pictures).toBeUndefined();
    await choosePhoto(page);
    await page.getByRole("button", { name: "Put it inside" }).click();
    await page.getByRole("button", { name: "Undo: a photograph inside" }).waitFor();
    expect(await reload(page)).toBe(false);
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
