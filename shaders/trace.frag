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
// Which ray this is, its second Sobol number, its place in the order of wavelengths, and a seed for the whole picture.
uniform uint sampleIndex;
uniform uint sampleSobol;
uniform uint waveIndex;
uniform uint seed;
// What was gathered so far, and whether it stays (1) or was only a sketch (0).
uniform sampler2D sumSoFar;
uniform float keep;
// The same before this ray, and what it has to be divided by: it knows nothing of the ray's other wavelengths.
uniform sampler2D guessSum;
uniform float guessSamples;

out vec4 sum;

#if CHANNELS == 1
// As in src/render/pass.ts.
const uint WAVES_A_RAY = 4u;

// The samples that share a ray have strata a quarter of the spectrum apart; 64 samples have every stratum once. 0 <= u < 1.
float waveAt(uint index, uint scramble) {
  uint place = (index ^ scramble) & uint(STRATA - 1);
  uint stratum = (place % WAVES_A_RAY) * (uint(STRATA) / WAVES_A_RAY) + place / WAVES_A_RAY;
  return (float(stratum) + radicalInverse(index / uint(STRATA), scramble)) / float(STRATA);
}
#endif

void main() {
  vec2 pixel = floor(gl_FragCoord.xy) + origin;
  uint pixelNumber = uint(pixel.x) + uint(pixel.y) * uint(resolution.x);
  uint scramble = hash(hash(seed) ^ pixelNumber);
  vec2 place = pixel + sobolPoint(sampleIndex, sampleSobol, scramble);
  vec3 d = normalize(view * vec3((2.0 * place - resolution) / resolution.y, -1.0));
  uint random = streamOf(pixelNumber, sampleIndex, seed);

  // CHANNELS 3: all light at once. Where wavelengths part this is a sketch: a first picture without colour noise, and then
  // only a guess that samples at one wavelength measure their difference against.
#if CHANNELS == 3
  Gathered gathered = tracePath(eye, d, colourOfChannels(), scramble, random);
  vec3 rgb = gathered.tint * gathered.byWave + gathered.mirror;
#else
  float u = waveAt(waveIndex, hash(scramble + 2u));
  PathColour colour = colourOfStratum(u);
  Gathered gathered = tracePath(eye, d, colour, scramble, random);
  vec3 rgb = gathered.mirror;
  if (gathered.isPiece) {
    // The mean of weight * basis is the identity, so the guess cancels in the mean, whatever it is; it only takes away
    // the colour noise of what all wavelengths see alike.
    vec3 guess = texelFetch(guessSum, ivec2(gl_FragCoord.xy), 0).rgb / guessSamples - gathered.mirror;
    rgb += weightOfStratum(u) * (gathered.tint * gathered.byWave - dot(colour.basis, guess)) + guess;
  }
#endif
  sum = vec4(rgb, gathered.coverage);
  if (keep > 0.0) sum += texelFetch(sumSoFar, ivec2(gl_FragCoord.xy), 0);
}
