#version 300 es
// Adds one sample to every texel of the light map: one path up from a white table, from a place in the texel towards where the
// piece may stand, followed until it is spent. It brings back by how much that light differs from what would come if nothing
// stood there: ways past the piece bring nothing and have no noise. What it sees of the table is the map as it stood before.
precision highp float;
precision highp int;
precision highp sampler2D;

#include "gathered.glsl"

// Which ray this is, its second Sobol number, and a seed for the whole map.
uniform uint sampleIndex;
uniform uint sampleSobol;
uniform uint seed;
// What was gathered so far, and whether it stays (1) or was only a sketch (0).
uniform sampler2D sumSoFar;
uniform float keep;

out vec4 sum;

// A direction up from q, half of the chances as the guide has it and half even over the cone in which the ball stands that the
// piece was cut from (E. Veach and L. Guibas, SIGGRAPH 1995: the balance of both). `factor`: Lambert's cosine for each chance.
vec3 towardsPiece(vec3 q, vec2 pair, out float factor) {
  float distance_ = length(q);
  vec3 middle = -q / distance_;
  float square = min(1.0, 1.0 / (distance_ * distance_));
  float cosMost = sqrt(1.0 - square);
  // 1 - cosMost without cancellation: the cone's solid angle over 2 pi
  float wide = square / (1.0 + cosMost);
  vec3 d;
  if (pair.x < 0.5) {
    float off = 2.0 * pair.x * wide;
    float aside = sqrt(off * (2.0 - off));
    float phi = 2.0 * PI * pair.y;
    d = frameOf(middle) * vec3(aside * cos(phi), aside * sin(phi), 1.0 - off);
  } else {
    d = scatterOnTable(vec2(2.0 * pair.x - 1.0, pair.y), factor);
  }
  float level = dot(d, tableUp);
  float byCone = dot(d, middle) >= cosMost ? 0.5 / (wide * max(level, 1e-6)) : 0.0;
  factor = level > 0.0 ? 2.0 / (guideDensity(d) + byCone) : 0.0;
  return d;
}

void main() {
  vec2 texel = floor(gl_FragCoord.xy);
  vec2 size = vec2(textureSize(sumSoFar, 0));
  uint texelNumber = uint(texel.x) + uint(texel.y) * uint(size.x);
  uint scramble = hash(hash(seed) ^ texelNumber);
  vec2 place = (texel + sobolPoint(sampleIndex, sampleSobol, scramble)) / size;
  uint random = streamOf(texelNumber, sampleIndex, seed);
  vec3 q = pointOfMap(2.0 * place - 1.0);
  float factor;
  vec3 d = towardsPiece(q, firstScatterPair(scramble), factor);
  sum = vec4(0.0, 0.0, 0.0, 1.0);
  if (factor > 0.0) {
    vec3 open = lightFrom(q, d);
    sum.rgb = factor * (seenAlong(q, d, scramble, false, vec4(lightAround, 0.0), random).rgb - open);
  }
  if (keep > 0.0) sum += texelFetch(sumSoFar, ivec2(gl_FragCoord.xy), 0);
}
