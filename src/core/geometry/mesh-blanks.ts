/** Blanks to cut: the ball, and bodies turned about the z axis (egg, disc, drop). All closed and convex. */
import { type Blank, blankOf } from "./mesh.ts";

/**
 * The unit ball as an octahedron with every edge parted `segments / 4` times. A point with barycentric numbers i, j, k
 * (sum n) stands in direction (sin(i q), sin(j q), sin(k q)), q = 90 degrees / n, so that the great circles through the
 * axes are parted evenly.
 * @param segments edges round such a circle, rounded up to a multiple of 4, at least 4
 */
export function sphereBlank(segments: number): Blank {
  const n = Math.max(1, Math.ceil(segments / 4));
  const at: number[] = [];
  const known = new Map<number, number>();
  const side = 2 * n + 1;
  const vertex = (x: number, y: number, z: number): number => {
    const key = ((x + n) * side + y + n) * side + z + n;
    const old = known.get(key);
    if (old !== undefined) return old;
    const [sx, sy, sz] = [x, y, z].map((i) =>
      Math.abs(i) === n ? Math.sign(i) : Math.sin((i * Math.PI) / 2 / n),
    );
    const l = Math.hypot(sx, sy, sz);
    at.push(sx / l, sy / l, sz / l);
    known.set(key, at.length / 3 - 1);
    return at.length / 3 - 1;
  };
  const faces: number[][] = [];
  for (const [sx, sy, sz] of OCTANTS) {
    const corner = (i: number, j: number): number => vertex(sx * i, sy * j, sz * (n - i - j));
    // a mirrored octant turns its triangles round
    const add = (a: number, b: number, c: number): void => {
      faces.push(sx * sy * sz > 0 ? [a, b, c] : [a, c, b]);
    };
    for (let i = 0; i < n; i++)
      for (let j = 0; i + j < n; j++) {
        add(corner(i, j), corner(i + 1, j), corner(i, j + 1));
        if (i + j + 2 <= n) add(corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1));
      }
  }
  const points = Float64Array.from(at);
  return blankOf(points, points, faces, true);
}

const OCTANTS = [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [-1, 1].map((z) => [x, y, z] as const)));

/** Segments at which the ball's mesh stands off the true sphere by less than `chordError` (both in radii). */
export function segmentsFor(chordError: number): number {
  // the longest edges stand at the middle of an octant: pi / sqrt(2) / n; a triangle of edge L stands off by L^2 / 6
  const n = Math.ceil(Math.PI / Math.sqrt(12 * chordError));
  return 4 * Math.max(n, MIN_QUARTER);
}
const MIN_QUARTER = 6;

/** A point of the outline that is turned about the z axis: distance from the axis, height, and outward normal. */
export interface ProfilePoint {
  readonly r: number;
  readonly z: number;
  readonly nr: number;
  readonly nz: number;
}

/**
 * A body turned about the z axis. Exactly convex when the outline is.
 * @param profile from the lowest point (r = 0) to the highest (r = 0), heights rising or level
 * @param segments edges round the axis, at least 3
 */
export function turnedBlank(profile: readonly ProfilePoint[], segments: number): Blank {
  const n = Math.max(3, Math.round(segments));
  const at: number[] = [];
  const normal: number[] = [];
  const rings = profile.map(({ r, z, nr, nz }) => {
    const first = at.length / 3;
    for (let k = 0; k < (r === 0 ? 1 : n); k++) {
      const t = (2 * Math.PI * k) / n;
      at.push(r * Math.cos(t), r * Math.sin(t), z);
      normal.push(nr * Math.cos(t), nr * Math.sin(t), nz);
    }
    return (k: number): number => (r === 0 ? first : first + (k % n));
  });
  const faces: number[][] = [];
  for (let i = 0; i + 1 < rings.length; i++)
    for (let k = 0; k < n; k++) {
      const [low, high] = [rings[i], rings[i + 1]];
      const ring = [low(k), low(k + 1), high(k + 1), high(k)];
      faces.push(ring.filter((v, j) => v !== ring[(j + 1) % 4]));
    }
  return blankOf(Float64Array.from(at), Float64Array.from(normal), faces);
}

/** Points of a quarter-turn or more of an ellipse about (r0, z0), by its angle from straight down, both ends included. */
function ellipsePoints(
  [r0, z0]: readonly [number, number],
  [a, c]: readonly [number, number],
  [from, to]: readonly [number, number],
  steps: number,
): ProfilePoint[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = from + ((to - from) * i) / steps;
    const [s, k] = [Math.sin(t), -Math.cos(t)];
    const l = Math.hypot(s / a, k / c);
    // straight down and straight up the outline meets the axis, whatever the sine of pi rounds to
    const isEnd = t === 0 || t === Math.PI;
    return { r: isEnd ? r0 : r0 + a * s, z: z0 + c * k, nr: isEnd ? 0 : s / a / l, nz: k / c / l };
  });
}

/** An egg, two half ellipsoids joined at the widest circle. @param radius of that circle; `below`, `above`: its half lengths */
export const eggBlank = (radius: number, below: number, above: number, segments: number): Blank => {
  const steps = Math.max(2, Math.round(segments / 4));
  return turnedBlank(
    [
      ...ellipsePoints([0, 0], [radius, below], [0, Math.PI / 2], steps),
      ...ellipsePoints([0, 0], [radius, above], [Math.PI / 2, Math.PI], steps).slice(1),
    ],
    segments,
  );
};

/** A flat disc with a rounded rim. @param thickness less than twice the radius; the rim is a half circle of that height */
export const discBlank = (radius: number, thickness: number, segments: number): Blank => {
  const rim = thickness / 2;
  const steps = Math.max(4, Math.round(segments / 4));
  return turnedBlank(
    [
      { r: 0, z: -rim, nr: 0, nz: -1 },
      ...ellipsePoints([radius - rim, 0], [rim, rim], [0, Math.PI], steps),
      { r: 0, z: rim, nr: 0, nz: 1 },
    ],
    segments,
  );
};

/** A drop: the ball of `radius` about the origin and the cone from it to a point at height `tip` > radius. */
export const dropBlank = (radius: number, tip: number, segments: number): Blank => {
  const steps = Math.max(4, Math.round(segments / 3));
  // the cone touches the ball where the normal stands asin(radius / tip) above level
  const touch = Math.PI / 2 + Math.asin(radius / tip);
  return turnedBlank(
    [...ellipsePoints([0, 0], [radius, radius], [0, touch], steps), { r: 0, z: tip, nr: 0, nz: 1 }],
    segments,
  );
};
