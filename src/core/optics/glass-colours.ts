/**
 * Colours of glass to begin with, our own choice: what of linear red, green and blue comes through 10 mm. By Bouguer-Lambert
 * the same glass is paler where it is thinner and deeper where it is thicker.
 */
import type { Tint } from "../plan/document.ts";

const THICKNESS_MM = 10;
const of = (r: number, g: number, b: number): Tint => ({ rgb: [r, g, b], atMm: THICKNESS_MM });

export const GLASS_COLOURS = {
  water: of(0.74, 0.9, 0.87),
  seaGreen: of(0.32, 0.66, 0.5),
  bottleGreen: of(0.08, 0.33, 0.13),
  moss: of(0.38, 0.46, 0.1),
  straw: of(0.92, 0.82, 0.42),
  honey: of(0.88, 0.56, 0.12),
  tea: of(0.55, 0.22, 0.04),
  ember: of(0.66, 0.06, 0.03),
  rose: of(0.9, 0.5, 0.54),
  plum: of(0.33, 0.1, 0.36),
  lilac: of(0.66, 0.54, 0.84),
  sky: of(0.5, 0.76, 0.93),
  inkBlue: of(0.05, 0.12, 0.58),
  lagoon: of(0.08, 0.47, 0.52),
  smoke: of(0.42, 0.4, 0.38),
} as const satisfies Readonly<Record<string, Tint>>;
export type GlassColour = keyof typeof GLASS_COLOURS;
export const GLASS_COLOUR_NAMES = Object.keys(GLASS_COLOURS) as readonly GlassColour[];

/** Share that comes through another thickness (Bouguer-Lambert), channel by channel. */
const throughThickness = ({ rgb, atMm }: Tint, mm: number): Tint["rgb"] => {
  const channel = (c: 0 | 1 | 2) => rgb[c] ** (mm / atMm);
  return [channel(0), channel(1), channel(2)];
};

/** The ready colour that a tint is, whatever thickness it is stated at; null for one of a person's own. */
export function readyColourOf(tint: Tint): GlassColour | null {
  const at = throughThickness(tint, THICKNESS_MM);
  const isIt = (name: GlassColour) => GLASS_COLOURS[name].rgb.every((v, c) => Math.abs(v - at[c]) < SAME);
  return GLASS_COLOUR_NAMES.find(isIt) ?? null;
}
/** A change of a colour that nobody sees. */
const SAME = 1e-3;
