// Which way a path goes on where chance decides: across a boundary, or scattered. Twin: src/core/optics/crossing.ts.

#include "walker.glsl"

#if ROUGH > 0
// Sends a ray across a rough facet; true when it goes on outside.
bool crossRough(inout vec3 d, vec3 n, float alpha, bool outside, float index, inout uint random) {
  mat3 frame = frameOf(n);
  Crossing crossing = crossRoughFacet(d * frame, outside, alpha, index, ROUGH == 2, random);
  d = normalize(frame * crossing.d);
  return crossing.outside;
}
#endif

// Chance takes the mirrored or the refracted way at a smooth boundary; true when it went through. `n` stands against d.
bool crossByChance(inout vec3 d, vec3 n, float eta, inout uint random) {
  float cosI = -dot(d, n);
  bool through = nextRandom(random) >= fresnel(cosI, eta);
  d = through ? refractRay(d, n, cosI, eta) : reflectRay(d, n, cosI);
  return through;
}

#if SEEDS
// Walls of one seed that a path may meet: what is still in it then is next to nothing.
const int MOST_WALLS = 16;

// Comes to a seed's wall and, mirrored there or through its air, leaves it again.
void crossSeed(inout Walker w, SeedHit seed, float index, inout uint random) {
  w.p += seed.t * w.d;
  w.design = NONE;
  if (!crossByChance(w.d, normalize(w.p - seed.centre), index, random)) return;
  for (int k = 0; k < MOST_WALLS; k++) {
    w.p -= 2.0 * dot(w.d, w.p - seed.centre) * w.d;
    if (crossByChance(w.d, normalize(seed.centre - w.p), 1.0 / index, random)) return;
  }
}
#endif

// Sobol numbers of this sample for the first scattering, their bits turned round; the same for all pixels.
uniform uint scatterSobol1;
uniform uint scatterSobol2;

vec2 firstScatterPair(uint scramble) {
  return vec2(radicalInverse(scatterSobol1, hash(scramble + 3u)), radicalInverse(scatterSobol2, hash(scramble + 4u)));
}

#if DESIGNS > 0 || RING
// Direction about n with density cos / pi.
vec3 scatterDiffuse(vec3 n, vec2 pair) {
  float phi = 2.0 * PI * pair.y;
  return frameOf(n) * vec3(sqrt(pair.x) * cos(phi), sqrt(pair.x) * sin(phi), sqrt(1.0 - pair.x));
}
#endif

#if RING
// From where the ring is met, on from it: some direction, by chance.
void leaveRing(RingHit ring, inout vec3 p, inout vec3 d, inout uint random) {
  p += ring.t * d + RING_LIFT * ring.n;
  float first = nextRandom(random);
  d = scatterDiffuse(ring.n, vec2(first, nextRandom(random)));
}
#endif
