#version 300 es
// Shows one or two pictures: exposure, tone, colour space, and where the picture ends.
precision highp float;
precision highp sampler2D;

#include "tone.glsl"

// Mean radiance times coverage, and coverage.
uniform sampler2D leftPicture;
uniform sampler2D rightPicture;
uniform vec2 resolution;
// Stops: radiance is multiplied by 2^exposure.
uniform float exposure;
// What red, green and blue are multiplied by besides.
uniform vec3 gain;
// Pixels left of it show `leftPicture`; `resolution.x` shows the left one alone.
uniform float dividerX;
// 0: divided picture, both sides share one frame. 1: side by side, each squeezed into its half.
uniform int sideBySide;

// Colour of the page behind the picture, linear, and 1 where it is to be seen through the piece on the screen itself, so that
// what the piece mirrors may be brighter than what it hides; 0 for colour and coverage as a file holds them.
uniform vec4 page;

out vec4 shown;

// Bilinear by hand: not every device filters float textures.
vec4 meanAt(sampler2D picture, vec2 place) {
  vec2 size = vec2(textureSize(picture, 0));
  vec2 at = clamp(place * size - 0.5, vec2(0.0), size - 1.0);
  ivec2 low = ivec2(at);
  ivec2 high = min(low + 1, ivec2(size) - 1);
  vec2 f = at - vec2(low);
  vec4 bottom = mix(texelFetch(picture, low, 0), texelFetch(picture, ivec2(high.x, low.y), 0), f.x);
  vec4 top = mix(texelFetch(picture, ivec2(low.x, high.y), 0), texelFetch(picture, high, 0), f.x);
  return mix(bottom, top, f.y);
}

// Interleaved gradient noise (Jimenez 2014) breaks up the steps of eight bits.
float dither(vec2 pixel) {
  return fract(52.9829189 * fract(dot(pixel, vec2(0.06711056, 0.00583715)))) - 0.5;
}

void main() {
  vec2 pixel = gl_FragCoord.xy;
  bool isRight = pixel.x >= dividerX;
  vec2 place = pixel / resolution;
  if (sideBySide == 1) {
    isRight = place.x >= 0.5;
    place.x = fract(place.x * 2.0);
  }
  vec4 mean = isRight ? meanAt(rightPicture, place) : meanAt(leftPicture, place);

  if (page.a > 0.5 && mean.a > 0.0) {
    vec3 light = toneNeutral(max(mean.rgb, 0.0) * gain * exp2(exposure));
    vec3 through = (1.0 - clamp(mean.a, 0.0, 1.0)) * page.rgb;
    shown = vec4(clamp(encodeSrgb(min(light + through, 1.0)) + dither(pixel) / 255.0, 0.0, 1.0), 1.0);
    return;
  }
  // Radiance was gathered times coverage, so tone is taken of what the covered part shows, then weighted again.
  float coverage = clamp(mean.a, 0.0, 1.0);
  vec3 radiance = max(mean.rgb, 0.0) * gain * exp2(exposure) / max(coverage, 1e-4);
  vec3 encoded = encodeSrgb(toneNeutral(radiance));
  encoded += dither(pixel) / 255.0;
  shown = vec4(clamp(encoded, 0.0, 1.0) * coverage, coverage);
}
