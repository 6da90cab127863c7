// A rough facet, dry or under a thin level film of water. Local frame, weight 1. Twin: src/core/optics/finish.ts.

#include "microfacet.glsl"

const float WATER_INDEX = 1.333;
const int MOST_FILM_MEETINGS = 64;

// Crosses the smooth top of the film; eta = index left / index entered.
vec3 crossFilmTop(vec3 d, float eta, inout uint random) {
  float cosI = abs(d.z);
  if (nextRandom(random) < fresnel(cosI, eta)) return vec3(d.xy, -d.z);
  return vec3(eta * d.xy, sign(d.z) * cosRefracted(cosI, eta));
}

// Smooth air-water top, rough water-glass below, to and fro as chance has it; the place does not change.
Crossing crossWetFacet(vec3 d, bool outside, float alpha, float index, inout uint random) {
  vec3 w = d;
  if (outside) {
    w = crossFilmTop(w, 1.0 / WATER_INDEX, random);
    if (w.z > 0.0) return Crossing(w, true);
  }
  bool fromFilm = outside;
  for (int meeting = 0; meeting < MOST_FILM_MEETINGS; meeting++) {
    Crossing below = walkMicrosurface(w, fromFilm, alpha, WATER_INDEX / index, random);
    if (!below.outside) return below;
    w = crossFilmTop(below.d, WATER_INDEX, random);
    if (w.z > 0.0) return Crossing(w, true);
    fromFilm = true;
  }
  return Crossing(vec3(w.xy, -w.z), true);
}

// `index` of the glass against air.
Crossing crossRoughFacet(vec3 d, bool outside, float alpha, float index, bool wet, inout uint random) {
  if (wet) return crossWetFacet(d, outside, alpha, index, random);
  return walkMicrosurface(d, outside, alpha, 1.0 / index, random);
}
