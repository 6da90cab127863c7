/** The screen's tokens as colours for three: linear sRGB, of the theme that is showing. */
import { modeOklch, modeRgb, useMode as register } from "culori/fn";
import { Color } from "three";

register(modeOklch);
const toRgb = register(modeRgb);

const isDark = (): boolean => {
  const { theme } = document.documentElement.dataset;
  if (theme) return theme === "dark";
  return window.matchMedia("(prefers-color-scheme: dark)").matches;
};

/** Takes the half of `light-dark(day, lamp)` that shows; a token without it is the same in both. */
export function themed(value: string, dark: boolean): string {
  const both = /light-dark\(\s*(oklch\([^)]*\))\s*,\s*(oklch\([^)]*\))\s*\)/.exec(value);
  return both ? both[dark ? 2 : 1] : value.trim();
}

/** A token of tokens.css, without its alpha. @throws when there is no such colour: a mistake in the code */
export function tokenColor(name: string): Color {
  const value = getComputedStyle(document.documentElement).getPropertyValue(`--${name}`);
  const rgb = toRgb(themed(value, isDark()));
  if (!rgb) throw new Error(`there is no colour --${name}`);
  return new Color().setRGB(rgb.r, rgb.g, rgb.b, "srgb");
}

const NAMES = [
  "ground",
  "ground-lit",
  "paper",
  "sunk",
  "line",
  "ink",
  "ink-soft",
  "skin",
  "facet",
  "outline",
  "outline-far",
  "ink-mark",
  "shadow",
  "grip",
  "stop-ink",
] as const;

export type Palette = Readonly<Record<(typeof NAMES)[number], Color>> & { readonly isDark: boolean };

export function readPalette(): Palette {
  const colors = Object.fromEntries(NAMES.map((name) => [name, tokenColor(name)]));
  return { ...(colors as Record<(typeof NAMES)[number], Color>), isDark: isDark() };
}
