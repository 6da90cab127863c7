#version 300 es
// Adds one sample to every pixel: one camera path, followed until it is spent. Twin: src/core/optics/picture.ts.
precision highp float;
precision highp int;
precision highp sampler2D;

#include "path.glsl"

uniform vec3 eye;
// Columns: right and up, both times the tangent of half the field, and back.
uniform mat3 view;
// Radius of the aperture, 0 for a pinhole, and how far ahead all is sharp.
uniform vec2 lens;
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
  vec3 o = eye;
  if (lens.x > 0.0) {
    // through a point of the aperture towards where the ray through its middle is sharp
    float r = lens.x * sqrt(nextRandom(random));
    float turn = 2.0 * PI * nextRandom(random);
    vec3 aside = r * (cos(turn) * normalize(view[0]) + sin(turn) * normalize(view[1]));
    o += aside;
    d = normalize(lens.y / -dot(d, view[2]) * d - aside);
  }

  // CHANNELS 3: all light at once. Where wavelengths part this is a sketch: a first picture without colour noise, and then
  // only a guess that samples at one wavelength measure their difference against.
#if CHANNELS == 3
  Gathered gathered = tracePath(o, d, colourOfChannels(), scramble, random);
  vec3 rgb = gathered.tint * gathered.byWave + gathered.mirror;
  float page = gathered.plainPage + luminance(gathered.page);
#else
  float u = waveAt(waveIndex, hash(scramble + 2u));
  PathColour colour = colourOfStratum(u);
  Gathered gathered = tracePath(o, d, colour, scramble, random);
  vec3 rgb = gathered.mirror;
  float page = gathered.plainPage;
  if (gathered.isPiece) {
    // The mean of weight * basis is the identity, so the guess cancels in the mean, whatever it is; it only takes away
    // the colour noise of what all wavelengths see alike.
    vec4 guessed = texelFetch(guessSum, ivec2(gl_FragCoord.xy), 0) / guessSamples;
    vec3 guess = guessed.rgb - gathered.mirror;
    vec3 weight = weightOfStratum(u);
    rgb += weight * (gathered.tint * gathered.byWave - dot(colour.basis, guess)) + guess;
    float guessPage = 1.0 - guessed.a - gathered.plainPage;
    page += luminance(weight) * (gathered.page - guessPage) + guessPage;
  }
#endif
  sum = vec4(rgb, 1.0 - page);
  if (keep > 0.0) sum += texelFetch(sumSoFar, ivec2(gl_FragCoord.xy), 0);
}
