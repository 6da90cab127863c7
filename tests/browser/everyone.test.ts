/**
 * For everyone, everywhere in the app: in each place, each part of the bench and each sheet, targets of 44 px on touch,
 * nothing that moves by itself for who wants no motion, nothing asked of another origin.
 * The way round is offered, taken, left and taken again.
 */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { closeSheet, openFromMenu } from "./built-app.ts";
import { guideTo, walkEverywhere } from "./everywhere.ts";
import { hold } from "./lap-hand.ts";
import { sharedApp, sharedDevelopedApp, sharedVisit } from "./shared.ts";

const app = sharedApp();

const LEAST_TARGET = 44;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** Everything to press or fill that can be seen and is smaller than a finger, where it stands. */
const smallTargets = (page: Page, least: number) =>
  page.evaluate((px) => {
    const within = document.querySelector("[role=dialog]") ?? document;
    const pressable =
      "button, a[href]:not(.skip), input:not([type=radio], [type=checkbox], [type=range], [type=file]), select, textarea, " +
      "label:has(input[type=radio]), label:has(input[type=checkbox]), summary, [role=slider], .diary-moment";
    return (
      [...within.querySelectorAll<HTMLElement>(pressable)]
        // what a library keeps for forms behind its own fields is not there to be pressed
        .filter((element) => element.closest("[aria-hidden=true]") === null)
        .filter((element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
        .map((element) => ({
          element,
          box: (element.closest(".number-box") ?? element).getBoundingClientRect(),
        }))
        .filter(({ box }) => box.width > 1 && box.height > 1)
        .filter(({ box }) => box.height < px - 0.5 || box.width < px - 0.5)
        .map(
          ({ element, box }) =>
            `${element.tagName} ${element.className} "${element.textContent?.slice(0, 30)}" ${box.width.toFixed(0)}x${box.height.toFixed(0)}`,
        )
    );
  }, least);

const wider = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** How many elements would move by themselves, or change slowly. */
const moving = (page: Page) =>
  page.evaluate(() => {
    const lasts = ({ transitionDuration, animationName }: CSSStyleDeclaration) =>
      animationName !== "none" || transitionDuration.split(",").some((one) => Number.parseFloat(one) > 0);
    return [...document.querySelectorAll("body *")].filter(
      (element) => lasts(getComputedStyle(element)) || lasts(getComputedStyle(element, "::after")),
    ).length;
  });

/** Letters on the facet card keep their size, px. */
const LEAST_LETTER = 14;

describe("as it is developed, so that what React finds wrong is an error", () => {
  const developed = sharedDevelopedApp();

  it("gives a finger 44 pixels for everything there is to press, in every place, part and sheet of a phone", async () => {
    const { page, errors, foreign, close } = await developed.visit({ ...PHONE, without3d: true });
    const small: Record<string, string[]> = {};
    await walkEverywhere(page, async (where) => {
      const found = await smallTargets(page, LEAST_TARGET);
      if (found.length > 0) small[where] = found;
      if ((await wider(page)) > 0) small[`${where} scrolls sideways`] = [];
      if ((await moving(page)) > 0) small[`${where} moves`] = [];
      if (where !== "Facet card") return;
      const letters = await page
        .locator(".card-drawing text")
        .evaluateAll((all) => all.map((text) => text.getBoundingClientRect().height));
      expect(Math.min(...letters)).toBeGreaterThan(LEAST_LETTER);
    });
    expect(small).toEqual({});
    // and the page for the lap: what is fitted, what is set, and a facet
    const { goTo, press } = guideTo(page);
    await goTo("bench");
    await press("At the lap");
    for (const step of [2, 3, 4]) {
      await page.keyboard.down("b");
      await page.locator(`.lap-foot [data-step="${step}"]`).waitFor();
      await page.keyboard.up("b");
    }
    // all steps at a glance, and from there what stands before the second pass: a step told in sentences
    await press("All steps");
    await page.locator(".lap-pass").nth(1).click();
    const setUp = page.getByRole("button", { name: "Hold: from setting up for it", exact: true });
    await hold(setUp, () => page.locator(".lap-foot [data-step]").waitFor());
    await page.locator(".lap-line").first().waitFor();
    expect(foreign).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});

describe("on one page", () => {
  const visit = sharedVisit(app, { reducedMotion: "no-preference", without3d: true });

  it("offers the first tier no depth that needs an earlier one, and the later ones every depth", async () => {
    const { page } = visit;
    const barred = async (tier: number): Promise<string[]> => {
      await page
        .locator(".tier")
        .nth(tier)
        .getByRole("button", { name: /How deep/ })
        .click();
      await page.getByRole("option").first().waitFor();
      const found = await page.locator("[role=option][aria-disabled=true]").allTextContents();
      await page.keyboard.press("Escape");
      await page.getByRole("listbox").waitFor({ state: "detached" });
      return found;
    };
    expect(await barred(0)).toEqual(["until they close up to", "to the corners of"]);
    expect(await barred(1)).toEqual([]);
  });

  it("says in the page itself that nothing may come from elsewhere, and has no script of its own inside", async () => {
    const { page } = visit;
    const [policy, inline, cookies] = await page.evaluate(() => [
      document.querySelector("meta[http-equiv=Content-Security-Policy]")?.getAttribute("content") ?? "",
      [...document.scripts].filter((script) => script.src === "").length,
      document.cookie,
    ]);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).not.toMatch(/https?:|unsafe-eval|script-src[^;]*unsafe-inline|\*/);
    expect(inline).toBe(0);
    expect(cookies).toBe("");
    const manifest = await page.evaluate(async () =>
      (await fetch(document.querySelector<HTMLLinkElement>("link[rel=manifest]")!.href)).json(),
    );
    expect(manifest).toMatchObject({ display: "standalone", name: "Glintwright" });
  });

  it("moves where the system has nothing against it, and no more once the settings say so", async () => {
    const { page } = visit;
    expect(await moving(page)).toBeGreaterThan(0);
    await openFromMenu(page, "Settings");
    await page.getByRole("radiogroup", { name: "Motion" }).getByText("None", { exact: true }).click();
    expect(await moving(page)).toBe(0);
    await closeSheet(page);
    expect(await moving(page)).toBe(0);
  });
});

it("offers the way round on the first visit, can be left at any step, and begins again from the help", async () => {
  const { page, errors, close } = await app.visit({ without3d: true });
  const offer = page.getByRole("complementary", { name: "A short way round" });
  await offer.getByRole("button", { name: "Show me round" }).click();
  await offer.getByText("1 of 6").waitFor();
  await offer.getByRole("button", { name: "Leave" }).click();
  await offer.waitFor({ state: "detached" });
  await page.reload();
  await page.locator(".tier").first().waitFor();
  expect(await offer.count()).toBe(0);

  await openFromMenu(page, "Help");
  await page.getByRole("button", { name: "Show me round the bench" }).click();
  for (let step = 1; step <= 6; step++) {
    await offer.getByText(`${step} of 6`).waitFor();
    if (step === 3) {
      await page.getByRole("spinbutton", { name: "Arm angle" }).first().focus();
      await page.keyboard.press("ArrowUp");
      await offer.getByRole("status").getByText("Done").waitFor();
    }
    if (step === 4) {
      await page.keyboard.press("Control+z");
      await offer.getByRole("status").getByText("Done").waitFor();
    }
    // what wasn't done is passed over by a press of its own; after the last step nothing is left to pass over to
    const next = offer
      .getByRole("button", { name: step === 6 ? "Leave" : "Next", disabled: false })
      .or(offer.getByRole("button", { name: "Skip", disabled: false }));
    // the keyboard is not left behind when a button stops being of use
    if (step === 2) {
      await offer.getByRole("button", { name: "Back" }).press("Enter");
      await offer.getByText("1 of 6").waitFor();
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Back");
      await next.click();
      await offer.getByText("2 of 6").waitFor();
    }
    await next.click();
  }
  await offer.waitFor({ state: "detached" });
  expect(errors).toEqual([]);
  await close();
});
