/** The screen's tokens as colours for three: linear sRGB, of the theme that is showing. */
import { Color, SRGBColorSpace } from "three";

/** How a browser writes what it has mixed in sRGB, whatever the colours were written in (CSS Color 5, color-mix). */
const MIXED = /^color\(srgb (\S+) (\S+) ([^\s/)]+)/;

const isDark = (): boolean => {
  const { theme } = document.documentElement.dataset;
  if (theme) return theme === "dark";
  return window.matchMedia("(prefers-color-scheme: dark)").matches;
};

/** What the browser makes of a token on the page as it is now. @throws when there is no such colour: a mistake in the code */
function tokenColor(name: string, probe: HTMLElement): Color {
  probe.style.color = `color-mix(in srgb, var(--${name}), var(--${name}))`;
  const mixed = MIXED.exec(getComputedStyle(probe).color);
  if (!mixed) throw new Error(`there is no colour --${name}`);
  return new Color().setRGB(Number(mixed[1]), Number(mixed[2]), Number(mixed[3]), SRGBColorSpace);
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
