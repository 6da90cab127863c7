/** Which numbers in a storage or a backup are moments. */

/** The last moment that a date can name, ms since 1970 (ECMA-262, time values). */
export const LAST_MOMENT = 8.64e15;

export const momentOf = (value: unknown): number | null =>
  typeof value === "number" && value >= 0 && value <= LAST_MOMENT ? value : null;
