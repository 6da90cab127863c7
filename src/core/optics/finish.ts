/** How rough a finish leaves the glass, and what a film of water does to it. */
import type { Vec3 } from "../geometry/vec.ts";
import type { Finish } from "../plan/document.ts";
import { cos2Refracted, fresnel } from "./fresnel.ts";
import { type Crossing, walkMicrosurface } from "./microfacet.ts";
import { nextRandom, type Random } from "./random.ts";

/**
 * GGX roughness by finish; 0 is perfectly smooth.
 * - ground: 0.394, the fit to ground glass in Walter et al., Microfacet Models for Refraction through Rough Surfaces, EGSR
 *   2007, measured samples (from memory; Mitsuba's documentation gives 0.3 .. 0.7 for ground finishes).
 * - prepolished: 0.1, "relatively rough" on the scale of Mitsuba's documentation; stated here for glass off a fine smoothing
 *   disc, where shapes show through but no mirror image (common practice, no source).
 * - polished: cerium polish leaves 0.5 .. 2 nm rms, far below a wavelength: smooth. So is the fire-polished natural skin.
 */
export const ROUGHNESS: Readonly<Record<Finish, number>> = { ground: 0.394, prepolished: 0.1, polished: 0 };

/** Water at 20 degC, d line (CRC Handbook of Chemistry and Physics, from memory). */
const WATER_INDEX = 1.333;

/** Meetings within a film of water after which a ray is let go along its last direction; ten are rare already. */
const MOST_FILM_MEETINGS = 64;

/** Crosses the smooth top of the film; local frame, eta = index left / index entered. */
function crossFilmTop(d: Vec3, eta: number, random: Random): Vec3 {
  const cosI = Math.abs(d[2]);
  if (nextRandom(random) < fresnel(cosI, eta)) return [d[0], d[1], -d[2]];
  return [eta * d[0], eta * d[1], Math.sign(d[2]) * Math.sqrt(Math.max(0, cos2Refracted(cosI, eta)))];
}

/**
 * Sends one ray across a rough facet that carries a thin level film of water: smooth air-water top, rough water-glass below,
 * as often to and fro as chance has it. The film is so thin that the place does not change. Weight stays 1.
 * Arguments as `walkMicrosurface`, with `index` of the glass.
 */
function crossWetFacet(d: Vec3, outside: boolean, alpha: number, index: number, random: Random): Crossing {
  let w = d;
  if (outside) {
    w = crossFilmTop(w, 1 / WATER_INDEX, random);
    if (w[2] > 0) return { d: w, outside: true };
  }
  let fromFilm = outside;
  for (let meeting = 0; meeting < MOST_FILM_MEETINGS; meeting++) {
    const below = walkMicrosurface(w, fromFilm, alpha, WATER_INDEX / index, random);
    if (!below.outside) return below;
    // In the film, running up.
    w = crossFilmTop(below.d, WATER_INDEX, random);
    if (w[2] > 0) return { d: w, outside: true };
    fromFilm = true;
  }
  return { d: [w[0], w[1], -w[2]], outside: true };
}

/** Sends one ray across a rough facet, dry or wet. Local frame, weight 1; `index` of the glass against air. */
export const crossRoughFacet = (
  d: Vec3,
  outside: boolean,
  alpha: number,
  index: number,
  wet: boolean,
  random: Random,
): Crossing =>
  wet
    ? crossWetFacet(d, outside, alpha, index, random)
    : walkMicrosurface(d, outside, alpha, 1 / index, random);
