#version 300 es
// Adds one sample to every pixel: one camera path, followed until it is spent. Twin: src/core/optics/picture.ts.
precision highp float;
precision highp int;
precision highp sampler2D;

#include "path.glsl"

uniform vec3 eye;
// Columns: right and up, both times the tangent of half the field, and back.
uniform mat3 view;
// Of the whole picture; `origin` is the lower left pixel of the part that is drawn.
uniform vec2 resolution;
uniform vec2 origin;
// Passes drawn before this one, and a seed for the whole picture.
uniform uint passIndex;
uniform uint seed;
uniform int hasDispersion;
uniform sampler2D sumSoFar;

out vec4 sum;

void main() {
  vec2 pixel = floor(gl_FragCoord.xy) + origin;
  uint pixelNumber = uint(pixel.x) + uint(pixel.y) * uint(resolution.x);
  vec4 before = texelFetch(sumSoFar, ivec2(gl_FragCoord.xy), 0);

  // Where wavelengths part, pass 0 is a sketch with all light at once: a first picture without colour noise, and then only
  // a guess that the following passes measure their difference against. The sum begins with pass 1.
  bool isSpectral = hasDispersion == 1 && passIndex > 0u;
  uint sampleIndex = isSpectral ? passIndex - 1u : passIndex;
  vec3 guess = before.rgb / float(max(sampleIndex, 1u));
  vec4 kept = sampleIndex == 0u ? vec4(0.0) : before;

  // Where in the pixel and which wavelength: even sequences, scrambled by pixel.
  uint scramble = hash(hash(seed) ^ pixelNumber);
  vec2 place = (2.0 * (pixel + sobolPoint(sampleIndex, scramble)) - resolution) / resolution.y;
  vec3 d = normalize(view * vec3(place, -1.0));
  PathColour colour = colourOfChannels();
  if (isSpectral) colour = colourOfStratum(radicalInverse(sampleIndex, hash(scramble)));

  uint random = streamOf(pixelNumber, sampleIndex, seed);
  Gathered gathered = tracePath(eye, d, colour, random);

  vec3 rgb = gathered.byWave;
  if (isSpectral && gathered.isPiece) {
    // The mean of weight * basis is the identity, so the guess cancels in the mean, whatever it is; it only takes away
    // the colour noise of what all wavelengths see alike.
    vec3 expected = guess - gathered.mirror;
    rgb = colour.weight * (gathered.byWave.x - dot(colour.basis, expected)) + expected;
  }
  sum = kept + vec4(rgb + gathered.mirror, gathered.coverage);
}
