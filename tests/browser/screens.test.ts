/**
 * Laws of every screen, in German, whose words are the longest, at every size there is a layout for: in each place, part and
 * sheet no words lie on others, nothing scrolls sideways, a column has one left edge, targets of 44 px on touch, nothing that moves
 * by itself for who wants no motion, nothing asked of another origin.
 */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { RIG_PLAN } from "./bench-plan.ts";
import { dropFile } from "./built-app.ts";
import { guideTo, walkEverywhere } from "./everywhere.ts";
import { edges, moving, overlaps, sideways, smallTargets } from "./screen-laws.ts";
import { sharedApp, sharedDevelopedApp } from "./shared.ts";

const app = sharedApp();
/** What React finds wrong is an error there. */
const developed = sharedDevelopedApp();

const PHONE = "390x844";
/** A phone, on its side, a tablet, what a window of 1280 by 800 shows at 200 per cent (WCAG 2.2, 1.4.4 and 1.4.10), a large one; and which are touched. */
const SIZES: readonly (readonly [string, boolean])[] = [
  [PHONE, true],
  ["844x390", true],
  ["820x1180", true],
  ["640x400", false],
  ["1920x1080", false],
];
const LEAST_TARGET = 44;
/** What drawings can be turned by, which phones don't have but in a drawing that is shown large: there are fields for each. */
const HANDLES = ".profile [role=slider], .skin [role=slider]";
/** Letters on the facet card keep their size, px. */
const LEAST_LETTER = 14;

/** Two frames: one in which sizes are measured, one in which what follows from them is drawn. */
const settled = (page: Page) =>
  page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null)))),
  );

/** Looks at the page as it is in every size, by touch where one has no other, and notes what is wrong. */
async function lookAtAllSizes(page: Page, wrong: Record<string, unknown>) {
  const devtools = await page.context().newCDPSession(page);
  return async (where: string, hasHandles = false) => {
    for (const [size, isTouched] of SIZES) {
      const [width, height] = size.split("x").map(Number);
      await devtools.send("Emulation.setTouchEmulationEnabled", { enabled: isTouched });
      await page.setViewportSize({ width, height });
      await settled(page);
      const found = [...(await overlaps(page)), ...(await edges(page))];
      if (isTouched) {
        const except = hasHandles || size !== PHONE ? HANDLES : "none";
        found.push(...(await smallTargets(page, LEAST_TARGET, except)));
      }
      const out = await sideways(page);
      if (out > 0) found.push(`scrolls sideways by ${out} px`);
      const moves = await moving(page);
      if (moves > 0) found.push(`${moves} move`);
      if (found.length > 0) wrong[`${where} at ${size}`] = found;
    }
  };
}

/** Every rule, so that every field with a caption is there: what a tier is made of, and what its depth is for. */
const ALL_RULES: Plan = {
  ...RIG_PLAN,
  tiers: [
    { ...RIG_PLAN.tiers[0], id: "a", name: "", armAngleDeg: 0, depth: { rule: "edge", mm: 3 } },
    { ...RIG_PLAN.tiers[0], id: "b", armAngleDeg: 25, depth: { rule: "touch" } },
    { ...RIG_PLAN.tiers[0], id: "c", armAngleDeg: 45, depth: { rule: "close", to: "b" } },
    { ...RIG_PLAN.tiers[0], id: "d", armAngleDeg: 65, count: 6, depth: { rule: "corners", of: "c" } },
    { ...RIG_PLAN.tiers[0], id: "e", side: "back", armAngleDeg: 40, depth: { rule: "gap", mm: 0.5 } },
    { ...RIG_PLAN.tiers[0], id: "f", side: "back", armAngleDeg: 60, depth: { rule: "width", mm: 5 } },
    {
      ...RIG_PLAN.tiers[0],
      id: "g",
      side: "back",
      armAngleDeg: 90,
      count: 1,
      depth: { rule: "depth", mm: 2 },
    },
  ],
};

/** What the captions of all fields on the screen lie on or stick out of, and how many fields were gone through. */
const captionsWrong = (page: Page): Promise<{ fields: number; wrong: string[] }> =>
  page.evaluate(async () => {
    const box = (element: Element) => element.getBoundingClientRect();
    const wrong: string[] = [];
    const fields = [...document.querySelectorAll<HTMLElement>(".number-inline input")].filter((field) =>
      field.checkVisibility(),
    );
    for (const field of fields) {
      field.focus();
      // what follows from a focus is there with the next turn, drawn or not
      await new Promise((done) => setTimeout(done));
      const caption = document.querySelector(".field-caption[data-shown]");
      if (!caption) {
        wrong.push(`no caption at field ${fields.indexOf(field)}`);
        continue;
      }
      const found = () => {
        const [said, column] = [box(caption), field.closest(".side") ?? document.documentElement];
        const over = (element: Element) =>
          box(element).left < said.right &&
          said.left < box(element).right &&
          box(element).top < said.bottom &&
          said.top < box(element).bottom;
        const own = field.closest(".tier") ?? document.body;
        const on = [
          ...own.querySelectorAll(".tier-truth, .findings"),
          ...document.querySelectorAll(".verdict"),
        ]
          .filter(over)
          .map((e) => e.className);
        if (over(field)) on.push("its own field");
        if (said.right > box(column).left + column.clientWidth) on.push("the column's end");
        if (said.top < 0 || said.left < 0 || said.bottom > innerHeight) on.push("the screen's end");
        return on;
      };
      // mends that came this moment above the field have moved it until the next frame
      if (found().length > 0)
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      wrong.push(...found().map((what) => `"${caption.textContent}" on ${what}`));
    }
    return { fields: fields.length, wrong };
  });

it("leaves the field that one is in where it is while mends are found for what stands above it", async () => {
  const { page, close } = await app.visit({ without3d: true });
  await dropFile(page, "rules.glintwright.json", JSON.stringify(ALL_RULES));
  const tiers = page.locator(".tier");
  await tiers.nth(ALL_RULES.tiers.length - 1).waitFor();
  const field = tiers.nth(4).locator(".number-inline input").first();
  await field.focus();
  // from when the page stands: what holds it comes after the piece
  await page.waitForFunction(() => document.getElementById("place")?.style.overflowAnchor === "none");
  const top = async () => (await field.boundingBox())?.y ?? 0;
  const reach = () => tiers.nth(3).evaluate((tier) => tier.getBoundingClientRect().height);
  const [at, before] = [await top(), await reach()];
  // three mends for the tier above it
  await tiers.nth(3).locator(".mend").nth(2).waitFor();
  await settled(page);
  expect(await reach()).toBeGreaterThan(before + 200);
  expect(Math.abs((await top()) - at)).toBeLessThan(1.5);
  // by hand it goes along
  await page.locator("#place").evaluate((column) => column.scrollBy(0, -100));
  await settled(page);
  expect((await top()) - at).toBeGreaterThan(90);
  await close();
});

it.each(["en-GB", "de-DE"])(
  "covers neither a field nor what comes of it with what is allowed there, and stays in the column (%s)",
  async (locale) => {
    const { page, close } = await app.visit({ locale, without3d: true });
    await dropFile(page, "rules.glintwright.json", JSON.stringify(ALL_RULES));
    await page
      .locator(".tier-name")
      .nth(ALL_RULES.tiers.length - 1)
      .waitFor();
    const guide = guideTo(page, locale === "de-DE" ? "de" : "en");
    const wrong: Record<string, unknown> = {};
    const fields: number[] = [];
    for (const place of ["plan", "ideas"] as const) {
      await guide.goTo(place);
      await page
        .locator(place === "plan" ? ".tier" : ".idea-wish")
        .first()
        .waitFor();
      for (const [width, height] of [
        [390, 844],
        [820, 1180],
        [1440, 900],
      ]) {
        await page.setViewportSize({ width, height });
        await settled(page);
        const found = await captionsWrong(page);
        fields.push(found.fields);
        if (found.wrong.length > 0) wrong[`${place} at ${width}`] = found.wrong;
      }
    }
    expect(wrong).toEqual({});
    // seven tiers' angles, all counts but the flat's, starts that are shown and sizes; a wish's five numbers
    expect(fields).toEqual([23, 23, 23, 5, 5, 5]);
    await close();
  },
);

it("lays no words on others, scrolls nothing sideways, keeps one left edge, gives a finger 44 pixels and moves nothing by itself, in every place, part and sheet", async () => {
  const { page, errors, foreign, close } = await developed.visit({ locale: "de-DE", without3d: true });
  const wrong: Record<string, unknown> = {};
  const look = await lookAtAllSizes(page, wrong);
  await walkEverywhere(
    page,
    async (where) => {
      await look(where);
      if (where !== "Facet card") return;
      await page.setViewportSize({ width: 390, height: 844 });
      const letters = await page
        .locator(".card-drawing text")
        .evaluateAll((all) => all.map((text) => text.getBoundingClientRect().height));
      expect(Math.min(...letters)).toBeGreaterThan(LEAST_LETTER);
    },
    "de",
  );
  await dropFile(page, "rig.glintwright.json", JSON.stringify(RIG_PLAN));
  await page
    .locator(".tier-name")
    .nth(RIG_PLAN.tiers.length - 1)
    .waitFor();
  await page.locator(".tier-name").nth(2).focus();
  await look("Another plan, a tier picked");
  for (const picture of ["Profil", "Haut"]) {
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.getByRole("button", { name: `Groß zeigen: ${picture}` }).click();
    await look(`${picture} large`, true);
  }
  expect(wrong).toEqual({});
  expect(foreign).toEqual([]);
  expect(errors).toEqual([]);
  await close();
});
