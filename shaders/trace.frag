#version 300 es
// Adds one sample to every pixel: one camera path, followed until it is spent. Twin: src/core/optics/picture.ts.
precision highp float;
precision highp int;
precision highp sampler2D;

#include "gathered.glsl"

uniform vec3 eye;
// Columns: right and up, both times the tangent of half the field, and back.
uniform mat3 view;
// Radius of the aperture, 0 for a pinhole, and how far ahead all is sharp.
uniform vec2 lens;
// Of the whole picture; `origin` is the lower left pixel of the part that is drawn.
uniform vec2 resolution;
uniform vec2 origin;
// Which ray this is, its second Sobol number, and a seed for the whole picture.
uniform uint sampleIndex;
uniform uint sampleSobol;
uniform uint seed;
// What was gathered so far, and whether it stays (1) or was only a sketch (0).
uniform sampler2D sumSoFar;
uniform float keep;
// The only colour that is taken of this ray, in place of what the same ray had brought at another index; -1: all.
uniform int onlyColour;
// The same before this ray, and what it has to be divided by: it knows nothing of the ray's other wavelengths.
uniform sampler2D guessSum;
uniform float guessSamples;

out vec4 sum;

void main() {
  vec2 pixel = floor(gl_FragCoord.xy) + origin;
  uint pixelNumber = uint(pixel.x) + uint(pixel.y) * uint(resolution.x);
  uint scramble = hash(hash(seed) ^ pixelNumber);
  vec2 place = pixel + sobolPoint(sampleIndex, sampleSobol, scramble);
  vec3 d = normalize(view * vec3((2.0 * place - resolution) / resolution.y, -1.0));
  uint random = streamOf(pixelNumber, sampleIndex, seed);
  vec3 o = eye;
  if (lens.x > 0.0) {
    // through a point of the aperture towards where the ray through its middle is sharp
    float r = lens.x * sqrt(nextRandom(random));
    float turn = 2.0 * PI * nextRandom(random);
    vec3 aside = r * (cos(turn) * normalize(view[0]) + sin(turn) * normalize(view[1]));
    o += aside;
    d = normalize(lens.y / -dot(d, view[2]) * d - aside);
  }

#if CHANNELS == 3
  vec4 guess = vec4(0.0);
#else
  vec4 guess = texelFetch(guessSum, ivec2(gl_FragCoord.xy), 0) / guessSamples;
  guess.a = 1.0 - guess.a;
#endif
  sum = seenAlong(o, d, scramble, true, guess, random);
  sum.a = 1.0 - sum.a;
  if (keep > 0.0) sum += texelFetch(sumSoFar, ivec2(gl_FragCoord.xy), 0);
#if CHANNELS == 3
  if (onlyColour >= 0)
    sum = mix(texelFetch(sumSoFar, ivec2(gl_FragCoord.xy), 0), sum, equal(ivec4(0, 1, 2, 3), ivec4(onlyColour)));
#endif
}
