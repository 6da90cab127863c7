/** The screen's tokens as colours for three: linear sRGB, of the theme that is showing. */
import { converter, modeLab, modeOklch, parseRgbLegacy, useMode as register } from "culori/fn";
import { Color } from "three";

register(modeOklch);
register(modeLab);
const fromOther = converter("rgb");
/** As computed styles write it: never by name, so that the list of all names is not loaded with the first view. */
const toRgb = (computed: string) => parseRgbLegacy(computed) ?? fromOther(computed);

const isDark = (): boolean => {
  const { theme } = document.documentElement.dataset;
  if (theme) return theme === "dark";
  return window.matchMedia("(prefers-color-scheme: dark)").matches;
};

/** What the browser makes of a token on the page as it is now. @throws when there is no such colour: a mistake in the code */
function tokenColor(name: string, probe: HTMLElement): Color {
  probe.style.color = `var(--${name})`;
  const rgb = toRgb(getComputedStyle(probe).color);
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
  "ink-mark",
  "shadow",
  "grip",
  "stop-ink",
] as const;

export type Palette = Readonly<Record<(typeof NAMES)[number], Color>> & { readonly isDark: boolean };

export function readPalette(): Palette {
  const probe = document.body.appendChild(document.createElement("span"));
  const colors = Object.fromEntries(NAMES.map((name) => [name, tokenColor(name, probe)]));
  probe.remove();
  return { ...(colors as Record<(typeof NAMES)[number], Color>), isDark: isDark() };
}
