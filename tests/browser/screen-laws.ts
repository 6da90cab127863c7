/** What holds of every screen, asked of the page as it stands: what breaks it, in words. */
import type { Page } from "playwright-core";

/** Words that lie on other words, in pairs. What a panel with a ground of its own covers is not seen, and no overlap. */
export const overlaps = (page: Page): Promise<string[]> =>
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
export const edges = (page: Page): Promise<string[]> =>
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

/** By how much a page scrolls sideways, px. */
export const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/**
 * Everything to press or fill that can be seen and is smaller than a finger, where it stands.
 * @param least side of what a finger meets, px
 * @param except a selector of what does nothing that a field beside it doesn't do too
 */
export const smallTargets = (page: Page, least: number, except: string): Promise<string[]> =>
  page.evaluate(
    ([px, except]) => {
      const within = document.querySelector("[role=dialog]") ?? document;
      const pressable =
        "button, a[href]:not(.skip), input:not([type=radio], [type=checkbox], [type=range], [type=file]), select, textarea, " +
        "label:has(input[type=radio]), label:has(input[type=checkbox]), summary, [role=slider], .diary-moment";
      return (
        [...within.querySelectorAll<HTMLElement>(pressable)]
          // what a library keeps for forms behind its own fields is not there to be pressed
          .filter((element) => element.closest("[aria-hidden=true]") === null && !element.matches(except))
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
    },
    [least, except] as const,
  );

/** How many elements would move by themselves, or change slowly. */
export const moving = (page: Page) =>
  page.evaluate(() => {
    const lasts = ({ transitionDuration, animationName }: CSSStyleDeclaration) =>
      animationName !== "none" || transitionDuration.split(",").some((one) => Number.parseFloat(one) > 0);
    return [...document.querySelectorAll("body *")].filter(
      (element) => lasts(getComputedStyle(element)) || lasts(getComputedStyle(element, "::after")),
    ).length;
  });
