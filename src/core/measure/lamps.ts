/** Twelve lamps in the corners of an icosahedron about the viewer; a ray that leaves within 8 degrees of one is lit. */

export const GOLDEN = (1 + Math.sqrt(5)) / 2;
/** Of a lamp's angle, times the length of the corners' own coordinates (0, 1, GOLDEN). */
export const LIT_COSINE = Math.cos((8 * Math.PI) / 180) * Math.hypot(1, GOLDEN);

/** Whether a lamp stands in the direction that is so far from the viewer's right, up and view, to either side. @param a of a unit direction */
export const isLamp = (a: number, b: number, c: number): boolean =>
  Math.max(b + GOLDEN * c, a + GOLDEN * b, c + GOLDEN * a) >= LIT_COSINE;
