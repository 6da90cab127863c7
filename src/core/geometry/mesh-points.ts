/** A near-uniform set of points on the unit sphere: what the skin's mesh is made of away from its borders. */

/**
 * The octahedron with every edge parted `segments / 4` times. A point with barycentric numbers i, j, k (sum n) stands in
 * direction (sin(i q), sin(j q), sin(k q)), q = 90 degrees / n, so that the great circles through the axes are parted evenly.
 * @param segments points round such a circle, rounded up to a multiple of 4, at least 4
 * @returns three coordinates a point
 */
export function spherePoints(segments: number): Float64Array {
  const n = Math.max(1, Math.ceil(segments / 4));
  const sine = (i: number): number => (Math.abs(i) === n ? Math.sign(i) : Math.sin((i * Math.PI) / 2 / n));
  const points = new Float64Array(3 * (4 * n * n + 2));
  let at = 0;
  for (let i = -n; i <= n; i++) {
    const rest = n - Math.abs(i);
    for (let j = -rest; j <= rest; j++) {
      const height = rest - Math.abs(j);
      for (const k of height === 0 ? [0] : [-height, height]) {
        const [x, y, z] = [sine(i), sine(j), sine(k)];
        const l = Math.sqrt(x * x + y * y + z * z);
        points[at++] = x / l;
        points[at++] = y / l;
        points[at++] = z / l;
      }
    }
  }
  return points;
}

/** Segments at which the ball's mesh stands off the true sphere by less than `chordError` (both in radii). */
export function segmentsFor(chordError: number): number {
  // the longest edges stand at the middle of an octant: pi / sqrt(2) / n; a triangle of edge L stands off by L^2 / 6
  const n = Math.ceil(Math.PI / Math.sqrt(12 * chordError));
  return 4 * Math.max(n, MIN_QUARTER);
}
const MIN_QUARTER = 6;
