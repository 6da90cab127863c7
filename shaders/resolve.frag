#version 300 es
// From the sums of a picture's two halves to what shows of it: their mean, and where they are to be smoothed without the noise.
precision highp float;
precision highp int;
precision highp sampler2D;

#define COUNTED 0
#include "halves.glsl"

// 1: both halves have as many samples, and are smoothed.
uniform int smooths;

out vec4 mean;

void main() {
  ivec2 pixel = ivec2(gl_FragCoord.xy);
  if (smooths == 1) {
    Halves halves = smoothed(pixel, textureSize(firstSum, 0) - 1);
    mean = 0.5 * (halves.first + halves.second);
    return;
  }
  mean = vec4(0.0);
  if (firstSamples > 0.0) mean += texelFetch(firstSum, pixel, 0);
  if (secondSamples > 0.0) mean += texelFetch(secondSum, pixel, 0);
  mean /= max(1.0, firstSamples + secondSamples);
}
