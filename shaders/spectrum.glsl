// One path follows one wavelength and knows its stratum: `weight` turns its radiance into linear sRGB, `basis` turns a
// linear sRGB colour into its value at that wavelength. A path without dispersion carries red, green and blue at once.
// Twin: src/core/optics/spectrum.ts.
//
// Set from outside: CHANNELS, 1 or 3. All that a path carries is an Amount: one number, or red, green and blue.

#if CHANNELS == 1
#define Amount float
#else
#define Amount vec3
#endif

// Relative luminance of linear sRGB (IEC 61966-2-1).
float luminance(vec3 rgb) {
  return dot(rgb, vec3(0.2126, 0.7152, 0.0722));
}

const int STRATA = 64;
// Tints are held above this, so that their absorption stays finite.
const float DARKEST = 1e-4;

// Texel j of each row belongs to stratum j. Rows: 0 (weight, absorption per radius), 1 (basis, 0), 2 (index at the
// shortest, middle and longest wavelength; half of the stratum's importance lies on either side of the middle), and with
// CASINGS 3 (what each layer of the glass adds to its absorption, see casing.glsl).
uniform sampler2D spectrum;
// Index at the d line, and absorption per radius for red, green and blue: what a path without dispersion uses.
uniform float indexD;
uniform vec3 sigmaRgb;
// Index as red, green and blue see it on average: for a mirror image, which has a colour but no dispersion.
uniform vec3 indexRgb;

struct PathColour {
  float index;
  // Absorption per radius.
  Amount sigma;
#if CHANNELS == 1
  vec3 basis;
#if CASINGS > 0
  vec4 casings;
#endif
#endif
};

#if CHANNELS == 1

int stratumAt(float u) {
  return min(int(u * float(STRATA)), STRATA - 1);
}

// 0 <= u < 1 runs through all strata, each as likely as it is important.
PathColour colourOfStratum(float u) {
  int j = stratumAt(u);
  float within = 2.0 * (u * float(STRATA) - float(j));
  float sigma = texelFetch(spectrum, ivec2(j, 0), 0).w;
  vec3 basis = texelFetch(spectrum, ivec2(j, 1), 0).rgb;
  vec3 ends = texelFetch(spectrum, ivec2(j, 2), 0).rgb;
  float index = within < 1.0 ? mix(ends.x, ends.y, within) : mix(ends.y, ends.z, within - 1.0);
#if CASINGS > 0
  return PathColour(index, sigma, basis, texelFetch(spectrum, ivec2(j, 3), 0));
#else
  return PathColour(index, sigma, basis);
#endif
}

// Turns radiance at a path's wavelength into linear sRGB.
vec3 weightOfStratum(float u) {
  return texelFetch(spectrum, ivec2(stratumAt(u), 0), 0).rgb;
}

// What a linear sRGB colour (radiance, reflectance or transmittance) means to a path.
Amount colourFor(vec3 rgb, PathColour colour) {
  return dot(colour.basis, rgb);
}

float strongest(Amount amount) {
  return amount;
}

#else

PathColour colourOfChannels() {
  return PathColour(indexD, sigmaRgb);
}

Amount colourFor(vec3 rgb, PathColour colour) {
  return rgb;
}

float strongest(Amount amount) {
  return max(amount.r, max(amount.g, amount.b));
}

#endif

// Absorption that gives a transmittance `through` over a length (Bouguer-Lambert).
Amount absorptionOfTint(Amount through, float over) {
  return -log(max(Amount(DARKEST), through)) / over;
}
