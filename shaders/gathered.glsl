// From what a path has gathered to linear sRGB: which wavelength a sample has, and what takes the colour noise away.
// Twin: src/core/optics/picture.ts.

#include "path.glsl"

// Its place in the order of wavelengths.
uniform uint waveIndex;

#if CHANNELS == 1
// As in src/render/pass.ts.
const uint WAVES_A_RAY = 4u;

// The samples that share a ray have strata a quarter of the spectrum apart, each pair of them half a spectrum; 64 samples have
// every stratum once. 0 <= u < 1.
float waveAt(uint index, uint scramble) {
  uint place = (index ^ scramble) & uint(STRATA - 1);
  uint quarter = (place & 1u) << 1 | (place >> 1 & 1u);
  uint stratum = quarter * (uint(STRATA) / WAVES_A_RAY) + place / WAVES_A_RAY;
  return (float(stratum) + radicalInverse(index / uint(STRATA), scramble)) / float(STRATA);
}
#endif

// Follows a ray. Linear sRGB, and the share of it that sees the page.
// `guess`: the same as others have found it. At one wavelength it takes away the noise of what all wavelengths see alike: the mean
// of weight * basis is the identity, so it cancels in the mean, whatever it is.
vec4 seenAlong(vec3 o, vec3 d, uint scramble, bool isScatterEven, vec4 guess, inout uint random) {
  // CHANNELS 3: all light at once. Where wavelengths part this is a sketch: a first picture without colour noise, and then
  // only a guess that samples at one wavelength measure their difference against.
#if CHANNELS == 3
  Gathered gathered = tracePath(o, d, colourOfChannels(), scramble, isScatterEven, random);
  return vec4(gathered.byWave + gathered.mirror, gathered.plainPage + luminance(gathered.page));
#else
  float u = waveAt(waveIndex, hash(scramble + 2u));
  PathColour colour = colourOfStratum(u);
  Gathered gathered = tracePath(o, d, colour, scramble, isScatterEven, random);
  vec4 plain = vec4(gathered.mirror, gathered.plainPage);
  if (!gathered.isPiece) return plain;
  vec4 rest = guess - plain;
  vec3 weight = weightOfStratum(u);
  vec3 rgb = weight * (gathered.byWave - dot(colour.basis, rest.rgb));
  return guess + vec4(rgb, luminance(weight) * (gathered.page - rest.a));
#endif
}
