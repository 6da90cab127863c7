// One path follows one wavelength and knows its stratum: `weight` turns its radiance into linear sRGB, `basis` turns a
// linear sRGB colour into its value at that wavelength. A path without dispersion carries red, green and blue at once.
// Twin: src/core/optics/spectrum.ts.

const int STRATA = 64;
// Tints are held above this, so that their absorption stays finite.
const float DARKEST = 1e-4;

// Texel j of each row belongs to stratum j. Rows: 0 (weight, absorption per radius), 1 (basis, 0), 2 (index at the
// shortest, middle and longest wavelength; half of the stratum's importance lies on either side of the middle).
uniform sampler2D spectrum;
// Index at the d line, and absorption per radius for red, green and blue: what a path without dispersion uses.
uniform float indexD;
uniform vec3 sigmaRgb;
// Index as red, green and blue see it on average: for a mirror image, which has a colour but no dispersion.
uniform vec3 indexRgb;

struct PathColour {
  bool isRgb;
  float index;
  vec3 weight;
  vec3 basis;
  // Absorption per radius; three equal values for one wavelength.
  vec3 sigma;
};

PathColour colourOfChannels() {
  return PathColour(true, indexD, vec3(1.0), vec3(1.0), sigmaRgb);
}

// 0 <= u < 1 runs through all strata by importance.
PathColour colourOfStratum(float u) {
  float place = u * float(STRATA);
  int j = min(int(place), STRATA - 1);
  float within = 2.0 * (place - float(j));
  vec4 weight = texelFetch(spectrum, ivec2(j, 0), 0);
  vec3 basis = texelFetch(spectrum, ivec2(j, 1), 0).rgb;
  vec3 ends = texelFetch(spectrum, ivec2(j, 2), 0).rgb;
  float index = within < 1.0 ? mix(ends.x, ends.y, within) : mix(ends.y, ends.z, within - 1.0);
  return PathColour(false, index, weight.rgb, basis, vec3(weight.w));
}

// What a linear sRGB colour (radiance, reflectance or transmittance) means to a path.
vec3 colourFor(vec3 rgb, PathColour colour) {
  return colour.isRgb ? rgb : vec3(dot(colour.basis, rgb));
}

// Absorption that gives a transmittance `through` over a length (Bouguer-Lambert).
vec3 absorptionOfTint(vec3 through, float over) {
  return -log(max(vec3(DARKEST), through)) / over;
}
