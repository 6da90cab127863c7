/**
 * How large a thing inside a glass ball really is when it looks so large from the front, far away. A parallel ray that
 * strikes the ball at height b (radius 1) runs on inside along a line that passes the centre at distance b / n and is tilted by
 * i - t, with sin i = b and sin t = b / n (Snell). A centred ball of radius r is therefore seen n times as large, exactly.
 */
import type { Piece } from "../plan/document.ts";

interface Sized {
  readonly diameterMm: number;
  readonly sizeAs?: "real" | "seen";
  readonly atMm?: readonly [number, number, number];
}

/** Distance from the point (y, z) to the line that the ray of signed height b takes inside, positive above the point's centre side. */
function passes(b: number, y: number, z: number, n: number): number {
  const tilt = Math.asin(b) - Math.asin(b / n);
  return b / n - y * Math.cos(tilt) + z * Math.sin(tilt);
}

/** Height of the ray, -1 .. 1, that passes the point at signed distance `r`; held at the rim when none does. */
function heightPassing(r: number, y: number, z: number, n: number): number {
  let [low, high] = [-1, 1];
  if (passes(low, y, z, n) >= r) return low;
  if (passes(high, y, z, n) <= r) return high;
  // passes grows with b while z > -1, so halving closes in; 60 halvings reach a double's end.
  for (let i = 0; i < 60; i++) {
    const mid = 0.5 * (low + high);
    if (passes(mid, y, z, n) < r) low = mid;
    else high = mid;
  }
  return 0.5 * (low + high);
}

/**
 * Extent, as seen from the front through the uncut ball of radius 1, of a ball of radius r at distance y from the axis and
 * height z towards the viewer. 2 n r when centred and within the rim; never more than 2.
 */
export const seenExtent = (r: number, y: number, z: number, n: number): number =>
  heightPassing(r, y, z, n) - heightPassing(-r, y, z, n);

/**
 * Real extent (2 r) of what is seen with extent `seen`, 0 .. 2; the inverse of `seenExtent`. What would look larger than the
 * place allows gets the least size that fills the view there.
 */
export function realExtent(seen: number, y: number, z: number, n: number): number {
  if (y === 0 && z === 0) return Math.min(seen, 2) / n;
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const mid = 0.5 * (low + high);
    if (seenExtent(mid, y, z, n) < seen) low = mid;
    else high = mid;
  }
  return low + high;
}

/** Real diameter in mm of a design whose size was typed as real or as seen through the uncut ball; `n` of the glass at d. */
export function realSizeMm(piece: Piece, design: Sized, n: number): number {
  if (design.sizeAs !== "seen") return design.diameterMm;
  const radius = piece.diameterMm / 2;
  const [x, y, z] = design.atMm ?? [0, 0, 0];
  return radius * realExtent(design.diameterMm / radius, Math.hypot(x, y) / radius, z / radius, n);
}
