/** The bench on a phone in German: what the rig says of each tier, and the back placed again after a trial facet. */
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { benchOf } from "../../src/core/bench/bench.ts";
import { afterTrialFacet, offsetTurn } from "../../src/core/bench/rig/set-up.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { RIG_PLAN } from "./bench-plan.ts";
import { giveFile, planFile } from "./built-app.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const PHONE = { width: 390, height: 844 };

let page: Page;
const button = (name: string) => page.getByRole("button", { name, exact: true });
const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");

const visit = sharedVisit(
  sharedApp(),
  { viewport: PHONE, hasTouch: true, isMobile: true, without3d: true, locale: "de-DE" },
  {
    prepare: async (opened) => {
      page = opened;
      const open = async () => {
        await button("Mehr").first().click();
        await page.getByRole("menuitem", { name: "Plandatei öffnen" }).click();
      };
      await giveFile(page, open, planFile(RIG_PLAN));
      await page.getByText(`${RIG_PLAN.name} geöffnet`).waitFor();
      // what was said goes by itself after a while: a press on its button would race with that
      await page.locator(".notice[data-shown]").waitFor({ state: "detached" });
      await button("Werkbank").click();
      await page.locator(".bench-tier").nth(5).waitFor();
    },
  },
);
beforeEach(() => {
  page = visit.page;
});

/** Stops of the first back tier as they stand on the page. */
const backStops = () => page.locator(".bench-tier").nth(4).locator(".bench-stop b").allTextContents();
const stopsOf = (plan: Plan) => benchOf(solvePlan(plan)).tiers[4].facets.map((facet) => facet.read.label);

describe("the bench in German on a phone", () => {
  it("says what stands against the arm at each tier, and the other way", async () => {
    const tiers = (await page.locator(".bench-tier").allTextContents()).map(plain);
    expect(tiers[0]).toContain("Das Futter stünde");
    expect(tiers[2]).toContain("gehen auf einem Rad mit 96 Rasten nicht auf");
    expect(tiers[2]).toMatch(/Außer Reichweite: Der Drehpunkt stünde auf .* schräg gebohrten Führungsblock/);
    expect(tiers[3]).toMatch(/Außer Reichweite.*senkrecht in einem rechtwinkligen Führungsblock/);
    for (const tier of [tiers[2], tiers[3]]) expect(tier).not.toContain("Drehpunkt 1");
    expect(tiers[4]).toMatch(/vor dem Umdrehen, der Arm um 5,0° nach oben gekippt: Drehpunkt 3,\d mm/);
    expect(tiers[4].match(/hier ist nichts mehr/g)).toHaveLength(4);
    // Nothing stands out of the phone sideways. Its page would grow with what does: the screen is the measure.
    const ends = await page
      .locator(".bench-tier, .bench-tier *")
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().right));
    expect(Math.max(...ends)).toBeLessThanOrEqual(PHONE.width);
  });

  it("draws a tier out of reach as it is held by hand, and marks what would stand in the lap", async () => {
    await button("Einrichten").click();
    await page.locator(".rig-chuck[data-stuck]").waitFor();
    await page.locator(".bench-beside button").first().click();
    await page.getByRole("option", { name: "Cap", exact: true }).click();
    await page.locator(".rig-guide .rig-block").waitFor();
  });

  it("places the back again by a trial facet's offset, and undoes it", async () => {
    await button("Einrichten").click();
    const trial = page.locator(".bench-trial");
    const offset = trial.getByRole("textbox");
    await offset.fill("1,5");
    await offset.press("Enter");
    const turn = offsetTurn(1.5, 16, 5) ?? 0;
    await trial.getByText(`${turn.toFixed(2).replace(".", ",")}° daneben`).waitFor();
    await trial.getByRole("button", { name: "Rückseite neu setzen" }).click();
    await button("Arbeit").click();
    const moved = stopsOf(afterTrialFacet(RIG_PLAN, turn));
    expect(moved).not.toEqual(stopsOf(RIG_PLAN));
    await expect.poll(backStops).toEqual(moved);
    await page
      .getByRole("button", { name: /^Rückgängig/ })
      .first()
      .click();
    await expect.poll(backStops).toEqual(stopsOf(RIG_PLAN));
    expect(visit.errors).toEqual([]);
  });
});
