/** How a saved picture is cut, and where the piece stands in it. */
import type { Plan } from "../../core/plan/document.ts";
import type { Orbit } from "../piece/camera.ts";
import type { LookSettings } from "./look-settings.ts";
import { flatOf, restood, standOf } from "./lying.ts";

export type Crop = "screen" | "shop" | "square" | "story";
export const CROPS: readonly Crop[] = ["screen", "shop", "square", "story"];

/** Width to height. */
const ASPECTS: Readonly<Record<Crop, number>> = { screen: 1, shop: 4 / 5, square: 1, story: 9 / 16 };
/** The eye from which the ball takes nearly three quarters of the shorter side; a little below the middle, where things rest. */
const [PLACED_DISTANCE, PLACED_Y] = [5.7, -0.12];

/** Pixels; `size` is the longer side. */
export function sizeOf(crop: Crop, size: number): { readonly width: number; readonly height: number } {
  return { width: Math.round(size * Math.min(1, ASPECTS[crop])), height: size };
}

/**
 * How the piece lies in a picture for a shop or a story: where Look has no table on white paper, on its largest flat, or on a
 * ring where it has none to lie on.
 */
export function onPaper(plan: Plan, settings: LookSettings): LookSettings {
  if (settings.table !== "none") return settings;
  return { ...settings, table: "paper", rest: flatOf(plan) ? "flat" : "ring" };
}

/** From so high, degrees, one looks at a thing on a table; what lies flat would else be seen from straight above. */
const [LOW, HIGH] = [10, 40];

/** The eye from the same side, going round the table that the piece lies on in the picture. */
export function onTableOf(plan: Plan, lying: LookSettings, seen: Orbit): Orbit {
  const stand = standOf(plan, lying);
  if (seen.stand === stand) return seen;
  const over = restood(seen, stand);
  return { ...over, elevationDeg: Math.min(HIGH, Math.max(LOW, over.elevationDeg)) };
}

/** Seen from the same side, with the piece well placed; as it is where the screen says how. */
export const placed = (eye: Orbit, crop: Crop): Orbit =>
  crop === "screen" ? eye : { ...eye, distance: PLACED_DISTANCE, panX: 0, panY: PLACED_Y };
