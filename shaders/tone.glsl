// From linear radiance to what a screen shows: the only place where tone and colour space are decided.

// What is below 0.8 is shown as it is; what is brighter is rolled off towards white as in Khronos PBR Neutral (Khronos Group 2024,
// "PBR Neutral Tone Mapper"), without its offset for what a plastic skin mirrors. Input linear sRGB >= 0, output linear sRGB 0..1.
// Twin: src/core/optics/tone-map.ts.
const float COMPRESSION_START = 0.8;
const float DESATURATION = 0.15;

vec3 toneNeutral(vec3 color) {
  float peak = max(color.r, max(color.g, color.b));
  if (peak < COMPRESSION_START) return color;
  float room = 1.0 - COMPRESSION_START;
  float newPeak = 1.0 - room * room / (peak + room - COMPRESSION_START);
  color *= newPeak / peak;
  float grey = 1.0 - 1.0 / (DESATURATION * (peak - newPeak) + 1.0);
  return mix(color, vec3(newPeak), grey);
}

// IEC 61966-2-1 (sRGB), linear 0..1 to encoded 0..1.
vec3 encodeSrgb(vec3 linear) {
  vec3 low = linear * 12.92;
  vec3 high = 1.055 * pow(max(linear, vec3(0.0031308)), vec3(1.0 / 2.4)) - 0.055;
  return mix(low, high, step(vec3(0.0031308), linear));
}
