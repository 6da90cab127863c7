/**
 * The waviness of a fire-polished skin: glass that flowed is never quite round, and what is seen through it swims. The skin stays a
 * ball, only its normal sways, as the slope of a few waves in fixed directions that a seed draws. Unit sphere.
 */
import { normalize, type Vec3 } from "../geometry/vec.ts";
import type { Piece } from "../plan/document.ts";
import { facing } from "./facing.ts";
import { hash, unitOf } from "./hash.ts";

/** How long each wave is, as a share of what was asked for: spread, so that no pattern repeats. */
const LENGTHS = [0.72, 0.84, 0.95, 1.06, 1.19, 1.36] as const;
export const WAVES = LENGTHS.length;

export interface Waviness {
  /** Greatest slope of one wave. */
  readonly slope: number;
  /** Four numbers a wave: radians per unit length along x, y, z, and its phase. */
  readonly waves: Float64Array;
}

/**
 * Waves whose slopes together have the root mean square tan(slopeDeg): the mean square of one along the skin is
 * slope^2 / 2 x 2/3 (half for the wave, two thirds for how much of a direction lies in the skin, averaged over the ball).
 */
export function wavinessOf({ waviness, diameterMm }: Piece): Waviness | null {
  if (!waviness) return null;
  const { slopeDeg, acrossMm, seed = 1 } = waviness;
  const slope = Math.tan((slopeDeg * Math.PI) / 180) * Math.sqrt(3 / WAVES);
  const waves = new Float64Array(4 * WAVES);
  let state = hash(seed);
  const next = (): number => {
    state = hash(state);
    return unitOf(state);
  };
  LENGTHS.forEach((share, k) => {
    const z = 2 * next() - 1;
    const turn = 2 * Math.PI * next();
    const level = Math.sqrt(1 - z * z);
    const perUnit = (2 * Math.PI * (diameterMm / 2)) / (share * acrossMm);
    const along = [level * Math.cos(turn), level * Math.sin(turn), z].map((v) => v * perUnit);
    waves.set([...along, 2 * Math.PI * next()], 4 * k);
  });
  return { slope, waves };
}

/** Outward normal of the wavy skin at p, a point of the ball. */
export function wavyNormal({ slope, waves }: Waviness, p: Vec3): Vec3 {
  let [x, y, z] = [0, 0, 0];
  for (let k = 0; k < 4 * WAVES; k += 4) {
    const [a, b, c] = [waves[k], waves[k + 1], waves[k + 2]];
    const here = Math.cos(a * p[0] + b * p[1] + c * p[2] + waves[k + 3]) / Math.sqrt(a * a + b * b + c * c);
    x += a * here;
    y += b * here;
    z += c * here;
  }
  const outwards = x * p[0] + y * p[1] + z * p[2];
  const tilt = (v: number, along: number) => along - slope * (v - outwards * along);
  return normalize([tilt(x, p[0]), tilt(y, p[1]), tilt(z, p[2])]);
}

/** The wavy normal for a ray along d, or the ball's own `n`, see `facing.ts`. */
export const facingNormal = (waviness: Waviness, p: Vec3, n: Vec3, d: Vec3): Vec3 =>
  facing(wavyNormal(waviness, p), n, d);
