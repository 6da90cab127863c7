/** Lists of numbers cut to what a sentence can hold. */

/** Wheels to name: as many as one looks through. */
const WHEELS_NAMED = 4;
export const namedWheels = (wheels: readonly number[]): string => wheels.slice(0, WHEELS_NAMED).join(", ");

/** Counts that a tier can have, of those that a wheel divides. */
export const usableCounts = (counts: readonly number[]): string =>
  counts.filter((count) => count >= 2 && count <= 120).join(", ");
