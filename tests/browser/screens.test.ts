/**
 * Laws of every screen, in German, whose words are the longest, at every size there is a layout for: in each place, part and
 * sheet no words lie on others, nothing scrolls sideways, and a column has one left edge.
 */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { RIG_PLAN } from "./bench-plan.ts";
import { dropFile } from "./built-app.ts";
import { guideTo, walkEverywhere } from "./everywhere.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

/** A phone, on its side, a tablet, what a window of 1280 by 800 shows at 200 per cent (WCAG 2.2, 1.4.4 and 1.4.10), a large one. */
const SIZES = ["390x844", "844x390", "820x1180", "640x400", "1920x1080"];

/** Words that lie on other words, in pairs. What a panel with a ground of its own covers is not seen, and no overlap. */
const overlaps = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    /** Letters stand within their line: this much of two lines' boxes may overlap. */
    const LINE_PX = 3;
    const root = document.querySelector("[role=dialog]") ?? document.body;
    const isUnseen = (element: Element) =>
      element.closest(".unseen, .skip, .drawing-said, [aria-hidden=true] option") !== null ||
      !element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    interface Clip {
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    }
    const within = (a: Clip, b: Clip): Clip => ({
      left: Math.max(a.left, b.left),
      top: Math.max(a.top, b.top),
      right: Math.min(a.right, b.right),
      bottom: Math.min(a.bottom, b.bottom),
    });
    const clips = new Map<Element, Clip>();
    /** What of an element's inside its ancestors and itself let through. */
    const clipOf = (element: Element): Clip => {
      const known = clips.get(element);
      if (known) return known;
      const parent = element.parentElement;
      const outer = parent ? clipOf(parent) : { left: 0, top: 0, right: innerWidth, bottom: innerHeight };
      const { overflow, clipPath } = getComputedStyle(element);
      // a part of a drawing that is clipped is clipped to the drawing at least
      const clipping = clipPath !== "none" ? element.closest("svg") : overflow === "visible" ? null : element;
      const own = clipping ? within(outer, clipping.getBoundingClientRect()) : outer;
      clips.set(element, own);
      return own;
    };
    interface Words {
      readonly element: Element;
      readonly text: string;
      readonly box: Clip;
    }
    const words: Words[] = [];
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const node = walker.currentNode;
      const element = node.parentElement;
      const text = node.textContent?.trim() ?? "";
      if (!element || text === "" || isUnseen(element)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const line of range.getClientRects()) {
        const box = within(line, clipOf(element));
        if (box.right - box.left > LINE_PX && box.bottom - box.top > LINE_PX)
          words.push({ element, text: text.slice(0, 30), box });
      }
    }
    /** Whether the one on top has a ground of its own, or of a panel that the other one is no part of. */
    const isCovered = (top: Element, below: Element): boolean => {
      for (let at: Element | null = top; at && !at.contains(below); at = at.parentElement) {
        const { backgroundColor, backgroundImage } = getComputedStyle(at);
        const isClear = backgroundColor === "transparent" || /, 0\)$|\/ 0\)$/.test(backgroundColor);
        if (!isClear || backgroundImage !== "none") return true;
      }
      return false;
    };
    const found: string[] = [];
    words.forEach((a, i) => {
      for (const b of words.slice(0, i)) {
        if (a.element === b.element) continue;
        const [left, right] = [Math.max(a.box.left, b.box.left), Math.min(a.box.right, b.box.right)];
        const [top, bottom] = [Math.max(a.box.top, b.box.top), Math.min(a.box.bottom, b.box.bottom)];
        // as tall as the lines of a paragraph come near each other
        const least = Math.min(a.box.bottom - a.box.top, b.box.bottom - b.box.top) * 0.3;
        if (right - left < LINE_PX || bottom - top < least) continue;
        if (isCovered(a.element, b.element) || isCovered(b.element, a.element)) continue;
        found.push(`"${a.text}" on "${b.text}"`);
      }
    });
    return found;
  });

/** Left edges of the headings in the column beside or below the piece, when there is more than one. */
const edges = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const column = document.querySelector(".side");
    if (!column || document.querySelector("[role=dialog]")) return [];
    const at = new Map<number, string>();
    // a wide bench has columns of its own beside its first
    const headings = column.querySelector(".bench")?.checkVisibility()
      ? ".verdict > *, .bench-head h1, .bench-parts > :first-child"
      : ".verdict > *, h1, h2, .piece-line, .tier-place, .tier-truth";
    for (const heading of column.querySelectorAll(headings))
      if (heading.checkVisibility()) {
        const padding = Number.parseFloat(getComputedStyle(heading).paddingLeft);
        at.set(Math.round(heading.getBoundingClientRect().left + padding), heading.textContent ?? "");
      }
    return at.size > 1 ? [...at].map(([x, text]) => `${x}: ${text}`) : [];
  });

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Looks at the page as it is in every size, and notes what is wrong. */
/** Two frames: one in which sizes are measured, one in which what follows from them is drawn. */
const settled = (page: Page) =>
  page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null)))),
  );

function lookAtAllSizes(page: Page, wrong: Record<string, unknown>) {
  return async (where: string) => {
    for (const size of SIZES) {
      const [width, height] = size.split("x").map(Number);
      await page.setViewportSize({ width, height });
      await settled(page);
      const found = [...(await overlaps(page)), ...(await edges(page))];
      const out = await sideways(page);
      if (out > 0) found.push(`scrolls sideways by ${out} px`);
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

it("lays no words on others, scrolls nothing sideways and keeps one left edge, in every place and sheet", async () => {
  const { page, close } = await app.visit({ locale: "de-DE", without3d: true });
  const wrong: Record<string, unknown> = {};
  const look = lookAtAllSizes(page, wrong);
  await walkEverywhere(page, look, "de");
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
    await look(`${picture} large`);
  }
  expect(wrong).toEqual({});
  await close();
});
