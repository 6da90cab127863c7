/** How offers stand in rows. */

/** As many pictures as a row holds before they become too small to tell apart. */
const MOST = 4;

/** Columns for so many offers, at most four, so that the rows are as equally full as can be: six stand three and three. */
export const offerColumns = (offers: number): number =>
  Math.ceil(offers / Math.max(1, Math.ceil(offers / MOST)));
