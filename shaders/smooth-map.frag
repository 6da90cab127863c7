#version 300 es
// From the sums of a light map's two halves to what is read of them: each smoothed, neither mixed with the other. Texels have sums of
// different numbers of samples, which are counted in alpha.
precision highp float;
precision highp int;
precision highp sampler2D;

#define COUNTED 1
#include "halves.glsl"

layout(location = 0) out vec4 first;
layout(location = 1) out vec4 second;

void main() {
  Halves halves = smoothed(ivec2(gl_FragCoord.xy), textureSize(firstSum, 0) - 1);
  first = halves.first;
  second = halves.second;
}
