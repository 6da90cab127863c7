// What a table is made of: patterns of a fixed size in mm, factors whose mean is 1. Twin: src/core/optics/materials.ts.
//
// Set from outside: MATERIAL, as there: 0 even, 1 paper, 2 linen, 3 slate, 4 oak.

#include "random.glsl"

const float THREAD_MM = 0.7;
// Farther on the table is even, as its twin says. Whole numbers of that size are not to be made: what is left of them is no place.
const float EVEN_BEYOND_MM = 20000.0;

// -1 .. 1 with mean 0 over a lattice of step 1.
float unevenness(vec2 p, uint seed) {
  ivec2 i = ivec2(floor(p));
  vec2 f = p - vec2(i);
  f = f * f * (3.0 - 2.0 * f);
  uint left = hash(hash(seed) + uint(i.x));
  uint right = hash(hash(seed) + uint(i.x + 1));
  uint y = uint(i.y);
  float low = mix(toUnit(hash(left + y)), toUnit(hash(right + y)), f.x);
  float high = mix(toUnit(hash(left + y + 1u)), toUnit(hash(right + y + 1u)), f.x);
  return 2.0 * mix(low, high, f.y) - 1.0;
}

#if MATERIAL == 2
// A thread's roundness across a width of 1, less its mean.
float roundedThread(float t) {
  return 1.0 - (2.0 * t - 1.0) * (2.0 * t - 1.0) - 2.0 / 3.0;
}
#endif

#if MATERIAL == 3 || MATERIAL == 4
// As in its twin: how many cells have a crumb of dust, their size, radii of crumbs.
const float DUSTY = 0.22;
const float DUST_CELL_MM = 3.5;
const float DUST_LEAST_MM = 0.05;
const float DUST_MOST_MM = 0.17;
const float DUST_SHARE = DUSTY * 3.141592653589793
  * (DUST_LEAST_MM * DUST_LEAST_MM + DUST_LEAST_MM * DUST_MOST_MM + DUST_MOST_MM * DUST_MOST_MM)
  / (3.0 * DUST_CELL_MM * DUST_CELL_MM);

// 1 on a crumb of dust and 0 beside it, less its mean.
float dust(vec2 p) {
  vec2 t = p / DUST_CELL_MM;
  ivec2 i = ivec2(floor(t));
  uint h = hash(hash(hash(51u) + uint(i.x)) + uint(i.y));
  if (toUnit(h) >= DUSTY) return -DUST_SHARE;
  float rim = mix(DUST_LEAST_MM, DUST_MOST_MM, toUnit(hash(h + 1u))) / DUST_CELL_MM;
  vec2 middle = rim + (1.0 - 2.0 * rim) * vec2(toUnit(hash(h + 2u)), toUnit(hash(h + 3u)));
  return (length(t - vec2(i) - middle) < rim ? 1.0 : 0.0) - DUST_SHARE;
}
#endif

float patternAt(vec2 p) {
  if (!(max(abs(p.x), abs(p.y)) < EVEN_BEYOND_MM)) return 1.0;
#if MATERIAL == 1
  return 1.0 + 0.015 * unevenness(p / 2.5, 11u) + 0.02 * unevenness(p / 0.3, 12u);
#elif MATERIAL == 2
  vec2 t = p / THREAD_MM;
  ivec2 i = ivec2(floor(t));
  vec2 f = t - vec2(i);
  bool isAlongY = ((i.x + i.y) & 1) == 0;
  float thick = unevenness(isAlongY ? vec2(i.x, p.y / 9.0) : vec2(i.y, p.x / 9.0), isAlongY ? 21u : 22u);
  if (!isAlongY) f = f.yx;
  return 1.0 + 0.4 * roundedThread(f.x) + 0.25 * roundedThread(f.y) + 0.1 * thick;
#elif MATERIAL == 3
  return 1.0
    + 1.4 * dust(p)
    + 0.16 * unevenness(p / vec2(30.0, 22.0), 31u)
    + 0.1 * unevenness(p / vec2(4.0, 3.4), 32u)
    + 0.12 * unevenness(p / 0.4, 33u);
#elif MATERIAL == 4
  float ring = p.y / 4.5 + 1.4 * unevenness(p / vec2(80.0, 22.0), 41u);
  return 1.0
    + 0.5 * dust(p)
    + 0.14 * cos(6.283185307179586 * ring)
    + 0.16 * unevenness(p / vec2(60.0, 1.8), 42u)
    + 0.14 * unevenness(p / vec2(7.0, 0.3), 43u);
#else
  return 1.0;
#endif
}
