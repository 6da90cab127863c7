/**
 * How a picture on a table is exposed: as a photographer meters and balances, by the light that falls on the table and not by
 * what is in the frame.
 */
import type { Scene } from "./scene.ts";
import { luminance, type Rgb } from "./spectrum.ts";

/** What a table of reflectance 1 shows as, linear: white paper stands below the brightest that a screen has. */
const WHITE_SHOWN = 0.83;
/** How much of the light's own colour is taken out: people leave some of a lamp's warmth in a picture. */
const BALANCED = 0.75;
const AS_IT_IS: Rgb = [1, 1, 1];

/**
 * What radiance of a scene is multiplied by before it is shown: on a table a white card shows as white paper does, and nearly without
 * colour; 1 without a table, since our lights are made to suit that.
 */
export function meteredGain({ tabletop }: Pick<Scene, "tabletop">): Rgb {
  if (!tabletop) return AS_IT_IS;
  const white = luminance(tabletop.bare);
  if (!(white > 0)) return AS_IT_IS;
  const level = WHITE_SHOWN / white;
  const gain = (c: 0 | 1 | 2) =>
    tabletop.bare[c] > 0 ? level * (white / tabletop.bare[c]) ** BALANCED : level;
  return [gain(0), gain(1), gain(2)];
}
