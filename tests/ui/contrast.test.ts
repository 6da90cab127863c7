/**
 * Colours of the screens: text and meaning stand out as WCAG 2.2 asks (success criteria 1.4.3: 4.5 to 1 for text,
 * 1.4.11: 3 to 1 for marks and edges of fields). Ratios by culori from the tokens themselves, in both themes.
 */
import { readFileSync } from "node:fs";
import { type Color, converter, parse, wcagContrast } from "culori";
import { describe, expect, it } from "vitest";

const css = readFileSync(new URL("../../src/ui/theme/tokens.css", import.meta.url), "utf8");
const TOKEN = /--([\w-]+):\s*light-dark\(\s*(oklch\([^)]*\))\s*,\s*(oklch\([^)]*\))\s*\)/g;
const tokens = new Map([...css.matchAll(TOKEN)].map(([, name, day, lamp]) => [name, { day, lamp }]));

const colorOf = (name: string, theme: "day" | "lamp"): Color => {
  const color = parse(tokens.get(name)?.[theme] ?? "");
  if (!color) throw new Error(`there is no colour --${name}`);
  return color;
};

const TEXT_ON = ["ground", "ground-lit", "paper"];
const TEXT = ["ink", "ink-soft", "ink-faint", "grip", "grip-strong", "warn-ink", "stop-ink"];
const MARKS = ["line", "outline", "ink-mark", "grip"];

describe.each(["day", "lamp"] as const)("by %s", (theme) => {
  it.each(TEXT.flatMap((ink) => TEXT_ON.map((paper) => [ink, paper])))("%s is text on %s", (ink, paper) => {
    expect(wcagContrast(colorOf(ink, theme), colorOf(paper, theme))).toBeGreaterThanOrEqual(4.5);
  });
  it.each([
    ["on-grip", "grip"],
    ["on-grip", "grip-strong"],
    ["grip", "grip-wash"],
    ["ink", "grip-wash"],
    ["ground", "ink"],
    ["ink", "skin"],
    ["ink", "facet"],
    ["ink-soft", "skin"],
  ])("%s is text on %s", (ink, paper) => {
    expect(wcagContrast(colorOf(ink, theme), colorOf(paper, theme))).toBeGreaterThanOrEqual(4.5);
  });
  it.each(MARKS.flatMap((mark) => TEXT_ON.map((paper) => [mark, paper])))(
    "%s is a mark on %s",
    (mark, paper) => {
      expect(wcagContrast(colorOf(mark, theme), colorOf(paper, theme))).toBeGreaterThanOrEqual(3);
    },
  );
  it.each([
    ["outline", "facet"],
    ["outline", "skin"],
    ["ink-mark", "skin"],
    ["ink-soft", "skin"],
    ["stop-ink", "facet"],
    ["stop-ink", "skin"],
  ])("%s is a line on %s", (line, glass) => {
    expect(wcagContrast(colorOf(line, theme), colorOf(glass, theme))).toBeGreaterThanOrEqual(3);
  });
});

it("keeps one accent: every colour but it, the findings and the ink mark is nearly grey", () => {
  const oklch = converter("oklch");
  const allowed = /^(grip|warn-ink|stop-ink|ink-mark|on-grip)/;
  const loud = [...tokens.keys()].filter((name) =>
    (["day", "lamp"] as const).some(
      (theme) => !allowed.test(name) && (oklch(colorOf(name, theme))?.c ?? 0) > 0.032,
    ),
  );
  expect(loud).toEqual([]);
});
