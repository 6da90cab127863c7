/** A normal that sways or is turned, where a ray may go by it. */
import { dot, type Vec3 } from "../geometry/vec.ts";

/**
 * The turned normal for a ray along d, or the surface's own `n` where the ray runs so flat that the turned face would look away
 * from it or would throw it through the surface: no light is lost or made.
 */
export function facing(turned: Vec3, n: Vec3, d: Vec3): Vec3 {
  const towards = dot(d, n);
  const onTurned = dot(d, turned);
  // what a mirror image does along n
  const back = towards - 2 * onTurned * dot(turned, n);
  return onTurned * towards > 0 && back * towards < 0 ? turned : n;
}
