/** Angles on a circle, radians. */

const TURN = 2 * Math.PI;

/** Angle from `a` on to `b`, counter-clockwise, in (0, 2 pi]. */
export const sweep = (a: number, b: number): number => {
  const d = (b - a) % TURN;
  return d <= 0 ? d + TURN : d;
};
