// An endless matt table under the piece: where it is met, how it scatters, and what it throws back as the light map has it.
// Light comes from above it only. Twin: src/core/optics/tabletop.ts and guide.ts; the map has none.
//
// Set from outside: NEAR_PANELS (see light.glsl); GUIDED, 0 where the light is the same all around, else 1; MATERIAL (see material.glsl).

#include "material.glsl"

// Unit normal, and how high the table lies along it.
uniform vec3 tableUp;
uniform float tableHeight;
// Unit directions along the table, from the first of which azimuths count; patterns run along them.
uniform vec3 tableAcross;
uniform vec3 tableAlong;
// Mean reflectance, linear sRGB, and mm in the piece's radius.
uniform vec3 tableRgb;
// What a white table throws back where nothing stands on it; where something glows near by, without that.
uniform vec3 tableBare;
uniform float radiusMm;

vec3 reflectanceAt(vec3 q) {
  return tableRgb * patternAt(radiusMm * vec2(dot(tableAcross, q), dot(tableAlong, q)));
}

bool goesDown(vec3 d) {
  return dot(tableUp, d) < 0.0;
}

// Where a way down from p meets the table.
vec3 pointOnTable(vec3 p, vec3 d) {
  vec3 q = p + max(0.0, (tableHeight - dot(tableUp, p)) / dot(tableUp, d)) * d;
  return q + (tableHeight - dot(tableUp, q)) * tableUp;
}

// A place among the texels of a square, close together in the middle and far apart at the rim (as sinh has it): how steeply they
// grow and their scale, so that half a side is scale * sinh(steepness). -1 .. 1 each way.
vec2 placeOn(vec2 spread, vec3 q) {
  vec2 at = vec2(dot(tableAcross, q), dot(tableAlong, q)) / spread.y;
  // asinh of what is not negative, free of cancellation
  return sign(at) * log(abs(at) + sqrt(at * at + 1.0)) / spread.x;
}

// From here to the rim, in halves of a side, what a square holds is faded out.
const float SQUARE_FADES = 0.8;

float fadeAt(vec2 place) {
  return 1.0 - smoothstep(SQUARE_FADES, 1.0, max(abs(place.x), abs(place.y)));
}

#if NEAR_PANELS > 0
// What a white table throws back of what glows near by.
uniform sampler2D nearLight;
uniform vec2 nearSpread;

// Between the texels of a square of floats, which not all devices read so by themselves.
vec3 texelsAt(sampler2D square, vec2 place) {
  ivec2 size = textureSize(square, 0);
  vec2 texel = clamp((0.5 * place + 0.5) * vec2(size) - 0.5, vec2(0.0), vec2(size - 1));
  ivec2 low = ivec2(texel);
  ivec2 high = min(low + 1, size - 1);
  vec2 f = texel - vec2(low);
  vec3 near = mix(texelFetch(square, low, 0).rgb, texelFetch(square, ivec2(high.x, low.y), 0).rgb, f.x);
  vec3 far = mix(texelFetch(square, ivec2(low.x, high.y), 0).rgb, texelFetch(square, high, 0).rgb, f.x);
  return mix(near, far, f.y);
}
#endif

// What a white table throws back at q where nothing stands on it.
vec3 bareAt(vec3 q) {
#if NEAR_PANELS > 0
  vec2 place = placeOn(nearSpread, q);
  float share = fadeAt(place);
  if (share > 0.0) return tableBare + share * texelsAt(nearLight, place);
#endif
  return tableBare;
}

// The light map: by how much what a white table throws back differs from `bareAt`, round where the piece rests, linear sRGB. It
// is read between its texels.
uniform sampler2D lightMap;
uniform vec2 mapSpread;

// A place on the table from one on the map, -1 .. 1 each way.
vec3 pointOfMap(vec2 place) {
  vec2 at = mapSpread.y * sinh(mapSpread.x * place);
  return at.x * tableAcross + at.y * tableAlong + tableHeight * tableUp;
}

// What a white table throws back at q, linear sRGB.
vec3 thrownBackAt(vec3 q) {
  vec2 place = placeOn(mapSpread, q);
  float share = fadeAt(place);
  if (!(share > 0.0)) return bareAt(q);
  return bareAt(q) + share * textureLod(lightMap, 0.5 * place + 0.5, 0.0).rgb;
}

#if GUIDED
// As in guide.ts.
const int GUIDE_ROWS = 64;
const int GUIDE_COLUMNS = 128;
// Texel k of a row holds where interval k of that row begins and ends; the last row has the rows' own intervals.
uniform sampler2D guide;

// Position of the interval that holds u, of `count` (a power of 2) in a row.
int intervalOf(int row, int count, float u) {
  int low = 0;
  for (int step = count / 2; step > 0; step /= 2)
    if (texelFetch(guide, ivec2(low + step, row), 0).x <= u) low += step;
  return low;
}

// From two even numbers a point of the square and its density there.
vec3 guided(vec2 pair) {
  int row = intervalOf(GUIDE_ROWS, GUIDE_ROWS, pair.x);
  vec2 across = texelFetch(guide, ivec2(row, GUIDE_ROWS), 0).xy;
  int column = intervalOf(row, GUIDE_COLUMNS, pair.y);
  vec2 along = texelFetch(guide, ivec2(column, row), 0).xy;
  vec2 share = vec2(across.y - across.x, along.y - along.x);
  vec2 size = vec2(GUIDE_ROWS, GUIDE_COLUMNS);
  vec2 place = (vec2(row, column) + (pair - vec2(across.x, along.x)) / share) / size;
  return vec3(clamp(place, 0.0, 1.0), share.x * size.x * share.y * size.y);
}
#endif

// How much more likely than by Lambert's cosine a unit direction up from the table is.
float guideDensity(vec3 d) {
#if GUIDED
  float level = dot(tableUp, d);
  float turn = atan(dot(tableAlong, d), dot(tableAcross, d)) / (2.0 * PI);
  int row = clamp(int((1.0 - level * level) * float(GUIDE_ROWS)), 0, GUIDE_ROWS - 1);
  int column = clamp(int((turn < 0.0 ? turn + 1.0 : turn) * float(GUIDE_COLUMNS)), 0, GUIDE_COLUMNS - 1);
  vec2 across = texelFetch(guide, ivec2(row, GUIDE_ROWS), 0).xy;
  vec2 along = texelFetch(guide, ivec2(column, row), 0).xy;
  return (across.y - across.x) * float(GUIDE_ROWS) * (along.y - along.x) * float(GUIDE_COLUMNS);
#else
  return 1.0;
#endif
}

// A direction up from the table by Lambert's cosine times the guide's density; `factor` makes up for the latter.
vec3 scatterOnTable(vec2 pair, out float factor) {
  factor = 1.0;
#if GUIDED
  vec3 place = guided(pair);
  factor = 1.0 / place.z;
  pair = place.xy;
#endif
  float phi = 2.0 * PI * pair.y;
  float r = sqrt(pair.x);
  return r * cos(phi) * tableAcross + r * sin(phi) * tableAlong + sqrt(1.0 - pair.x) * tableUp;
}
