/** How a saved picture is cut, and where the piece stands in it. */
import type { Orbit } from "../piece/camera.ts";

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

/** Seen from the same side, with the piece well placed; as it is where the screen says how. */
export const placed = (eye: Orbit, crop: Crop): Orbit =>
  crop === "screen" ? eye : { ...eye, distance: PLACED_DISTANCE, panX: 0, panY: PLACED_Y };
