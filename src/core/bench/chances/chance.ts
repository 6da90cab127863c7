/** Chance from outside: every routine takes its generator, a function that gives uniform numbers in [0, 1). */
import type { Vec3 } from "../../geometry/vec.ts";
import { nextRandom, streamOf } from "../../optics/random.ts";

export type Random = () => number;

/** One draw from the normal distribution with deviation 1 (Box and Muller 1958). */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** A uniformly random rotation as three orthonormal rows (Shoemake 1992, from a uniform unit quaternion). */
export function randomRotation(random: Random): readonly [Vec3, Vec3, Vec3] {
  const [u, v, w] = [random(), 2 * Math.PI * random(), 2 * Math.PI * random()];
  const [a, b] = [Math.sqrt(1 - u), Math.sqrt(u)];
  const [x, y, z, s] = [a * Math.sin(v), a * Math.cos(v), b * Math.sin(w), b * Math.cos(w)];
  return [
    [1 - 2 * (y * y + z * z), 2 * (x * y - s * z), 2 * (x * z + s * y)],
    [2 * (x * y + s * z), 1 - 2 * (x * x + z * z), 2 * (y * z - s * x)],
    [2 * (x * z - s * y), 2 * (y * z + s * x), 1 - 2 * (x * x + y * y)],
  ];
}

/** A generator with a seed: the same seed gives the same numbers. */
export function seeded(seed: number): Random {
  const stream = streamOf(0, 0, seed, 0);
  return () => nextRandom(stream);
}
