// What a table is made of: patterns of a fixed size in mm, factors whose mean is 1. Twin: src/core/optics/materials.ts.
//
// Set from outside: MATERIAL, as there: 0 even, 1 paper, 2 linen, 3 slate, 4 oak.

#include "random.glsl"

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
const float THREAD_MM = 0.62;
const float DRAWN = 0.9;

// A thread's roundness across a width of 1, less its mean.
float roundedThread(float t) {
  return 1.0 - (2.0 * t - 1.0) * (2.0 * t - 1.0) - 2.0 / 3.0;
}

float weave(vec2 p) {
  vec2 t = p / THREAD_MM + DRAWN * vec2(unevenness(p / vec2(2.1, 14.0), 23u), unevenness(p / vec2(14.0, 2.1), 24u));
  ivec2 i = ivec2(floor(t));
  vec2 f = t - vec2(i);
  bool isAlongY = ((i.x + i.y) & 1) == 0;
  if (!isAlongY) {
    f = f.yx;
    p = p.yx;
    i = i.yx;
  }
  float thick = unevenness(vec2(i.x, p.y / 5.0), isAlongY ? 21u : 22u);
  float fibre = unevenness(p / vec2(0.09, 0.7), isAlongY ? 25u : 26u);
  return 1.0 + 0.38 * roundedThread(f.x) + 0.24 * roundedThread(f.y) + 0.2 * thick + 0.12 * fibre;
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

#if MATERIAL == 3
const float SCARP = 0.07;

// -0.5 .. 0.5 with mean 0 over a whole way: a layer's broken edge is pale, with a dark line at its foot.
float scarp(float way) {
  float t = way - floor(way);
  return t >= 2.0 * SCARP ? 0.0 : t < SCARP ? -0.5 * (t / SCARP) : 0.5 * (2.0 - t / SCARP);
}

float cleft(vec2 p) {
  float layers = 1.5 * unevenness(p / vec2(41.0, 19.0), 31u) + 0.11 * unevenness(p / vec2(3.4, 1.4), 32u);
  return 1.0
    + 1.4 * dust(p)
    + 0.5 * scarp(layers)
    + 0.16 * unevenness(p / vec2(0.5, 0.36), 33u)
    + 0.2 * unevenness(p / vec2(0.13, 0.11), 34u);
}
#endif

#if MATERIAL == 4
// As in its twin: years and rows of pores in one; cells along the grain and how many have a pore; lengths and widths of pores.
const float YEAR_MM = 3.3;
const int PORE_ROWS = 9;
const int PORE_ROWS_FULL = 3;
const float PORE_CELL_MM = 4.2;
const float PORES_FULL = 0.9;
const float PORES_FEW = 0.22;
const float PORE_SHORT = 0.3;
const float PORE_LONG = 0.9;
const float PORE_THIN = 0.3;
const float PORE_WIDE = 0.75;
const float PORE_SHARE = (float(PORE_ROWS_FULL) * PORES_FULL + float(PORE_ROWS - PORE_ROWS_FULL) * PORES_FEW) / float(PORE_ROWS)
  * 0.5 * (PORE_SHORT + PORE_LONG) * 0.5 * (PORE_THIN + PORE_WIDE) * (4.0 / 9.0);

// 1 in the depth of a pore and 0 beside it, less its mean.
float pores(float x, float year) {
  float v = year * float(PORE_ROWS);
  float row = floor(v);
  uint h0 = hash(hash(44u) + uint(int(row)));
  float u = x / PORE_CELL_MM + toUnit(h0);
  float cell = floor(u);
  uint h = hash(h0 + uint(int(cell)));
  bool isFull = row - float(PORE_ROWS) * floor((row + 0.5) / float(PORE_ROWS)) < float(PORE_ROWS_FULL);
  if (toUnit(h) >= (isFull ? PORES_FULL : PORES_FEW)) return -PORE_SHARE;
  vec2 size = mix(vec2(PORE_SHORT, PORE_THIN), vec2(PORE_LONG, PORE_WIDE), vec2(toUnit(hash(h + 1u)), toUnit(hash(h + 2u))));
  vec2 low = (1.0 - size) * vec2(toUnit(hash(h + 3u)), toUnit(hash(h + 4u)));
  vec2 at = 2.0 * (vec2(u - cell, v - row) - low) / size - 1.0;
  vec2 deep = max(vec2(0.0), 1.0 - at * at);
  return deep.x * deep.y - PORE_SHARE;
}

float grain(vec2 p) {
  float year = p.y / YEAR_MM + 1.5 * unevenness(p / vec2(110.0, 31.0), 41u);
  float t = year - floor(year);
  return 1.0
    + 0.5 * dust(p)
    - 0.62 * pores(p.x, year)
    + 0.16 * (1.0 / 3.0 - t * t)
    + 0.07 * unevenness(p / vec2(45.0, 2.3), 42u)
    + 0.13 * unevenness(p / vec2(5.0, 0.17), 43u);
}
#endif

float patternAt(vec2 p) {
  if (!(max(abs(p.x), abs(p.y)) < EVEN_BEYOND_MM)) return 1.0;
#if MATERIAL == 1
  return 1.0 + 0.015 * unevenness(p / 2.5, 11u) + 0.02 * unevenness(p / 0.3, 12u);
#elif MATERIAL == 2
  return weave(p);
#elif MATERIAL == 3
  return cleft(p);
#elif MATERIAL == 4
  return grain(p);
#else
  return 1.0;
#endif
}
