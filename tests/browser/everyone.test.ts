/**
 * For everyone: the page for the lap without a fault that React finds, depths that can be chosen, what the page says of scripts, motion
 * as one wants it. The way round is offered, taken, left and taken again. (Laws of every screen: `screens.test.ts`.)
 */
import { describe, expect, it } from "vitest";
import { closeSheet, openFromMenu } from "./built-app.ts";
import { guideTo } from "./everywhere.ts";
import { hold } from "./lap-hand.ts";
import { moving } from "./screen-laws.ts";
import { sharedApp, sharedDevelopedApp, sharedVisit } from "./shared.ts";

const app = sharedApp();

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

describe("as it is developed, so that what React finds wrong is an error", () => {
  const developed = sharedDevelopedApp();

  it("goes to the page for the lap, through its steps, and back to one at a glance", async () => {
    const { page, errors, foreign, close } = await developed.visit({ ...PHONE, without3d: true });
    // what is fitted, what is set, and a facet
    const { goTo, press } = guideTo(page);
    await goTo("bench");
    await press("At the lap");
    const at = (step: number) => page.locator(`.lap-foot [data-step="${step}"]`).waitFor();
    await at(1);
    for (const step of [2, 3, 4]) {
      await page.keyboard.down("b");
      await at(step);
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
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';");
    expect(policy).not.toMatch(/https?:|(?<!wasm-)unsafe-eval|script-src[^;]*unsafe-inline|\*/);
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
