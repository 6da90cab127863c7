/** Numbers of strokes and discs, to the digits that are known. */

/** A disc that takes less than this of what it takes now is as good as worn out. */
const WORN_OUT = 0.05;
export const isWornOut = (share: number): boolean => share < WORN_OUT;

/** Strokes to two figures: more are not known. */
export const roundStrokes = (strokes: number): number => Number(strokes.toPrecision(2));

/** A share in steps of five per cent, never none. */
export const roundPercent = (share: number): number => Math.max(5, 5 * Math.round(20 * share));
