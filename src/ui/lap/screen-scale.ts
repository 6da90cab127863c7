/** How many CSS pixels this screen needs for a real millimetre, found once by holding a ruler against it. */
import type { TextShelf } from "../../state/preferences.ts";

const SHELF_KEY = "glintwright-screen-scale";
/** CSS says 96 px an inch; real screens are off by a third and more. */
export const NOMINAL_PX_PER_MM = 96 / 25.4;
export const SCALE_RANGE = { min: 1.5, max: 12 } as const;
export const CALIBRATION_MM = 50;

const isUsable = (value: number): boolean => value >= SCALE_RANGE.min && value <= SCALE_RANGE.max;

/** Null while this screen has not been calibrated. */
export function loadScale(shelf: TextShelf | null): number | null {
  try {
    const value = Number(shelf?.getItem(SHELF_KEY) ?? Number.NaN);
    return isUsable(value) ? value : null;
  } catch {
    return null; // refused: the gauge asks for a ruler again
  }
}

/** @returns whether the browser kept it */
export function saveScale(shelf: TextShelf | null, pxPerMm: number): boolean {
  try {
    shelf?.setItem(SHELF_KEY, String(pxPerMm));
    return shelf !== null;
  } catch {
    return false;
  }
}
