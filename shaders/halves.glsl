// Two halves of a picture, each smoothed where it is uncertain.
//
// The halves are two pictures of the same thing with different noise. What they differ by, around a pixel, is how uncertain the
// pixel is; a neighbour counts as far as it differs by no more than that. How far it counts in one half is judged by the other
// one, so that no pixel picks the neighbours that share its error. As samples gather the uncertainty goes, and the smoothing
// with it. Source of the two halves: F. Rousselle, C. Knaus, M. Zwicker, Adaptive Rendering with Non-Local Means Filtering,
// ACM TOG 31(6), 2012; here pixels are compared, not patches.

//
// Set from outside: COUNTED, 1 where each pixel counts its samples in alpha.

uniform sampler2D firstSum;
uniform sampler2D secondSum;
uniform float firstSamples;
uniform float secondSamples;
// Neighbours stand so many pixels apart.
uniform int apart;
// 1: all neighbours count alike, where the halves have yet to tell anything.
uniform int blind;
// Radiance that both are counted from.
uniform vec3 ground;

// Neighbours up to so many steps away; the uncertainty is that of the pixels next to it.
const int REACH = 2;
const int NEAR = 1;
// A neighbour counts for a third (1 / e) that differs by so many times what the halves differ by.
const float STRICTNESS = 0.85;
// No difference that an eye would see; keeps what is certain from being divided by nothing.
const float LEAST = 1e-4;

// Light is compared by a logarithm, nearly as the eye does; it is averaged as it is, so that none is lost.
vec4 squeezed(vec4 radiance) {
  return vec4(log(1.0 + max(ground + radiance.rgb, 0.0)), radiance.a);
}

vec4 meanOf(vec4 sum, float samples) {
#if COUNTED
  return sum / sum.a;
#else
  return sum / samples;
#endif
}

vec4 firstAt(ivec2 pixel) {
  return meanOf(texelFetch(firstSum, pixel, 0), firstSamples);
}

vec4 secondAt(ivec2 pixel) {
  return meanOf(texelFetch(secondSum, pixel, 0), secondSamples);
}

float squaredLength(vec4 v) {
  return dot(v, v);
}

// Mean squared difference between the halves around a pixel; four times the variance of their mean.
float unlikeness(ivec2 pixel, ivec2 last) {
  float sum = 0.0;
  for (int y = -NEAR; y <= NEAR; y++)
    for (int x = -NEAR; x <= NEAR; x++) {
      ivec2 at = clamp(pixel + ivec2(x, y), ivec2(0), last);
      sum += squaredLength(squeezed(firstAt(at)) - squeezed(secondAt(at)));
    }
  return sum / float((2 * NEAR + 1) * (2 * NEAR + 1));
}

// One half and the other where they are smoothed.
struct Halves {
  vec4 first;
  vec4 second;
};

Halves smoothed(ivec2 pixel, ivec2 last) {
  vec4 first = squeezed(firstAt(pixel));
  vec4 second = squeezed(secondAt(pixel));
  float sharpness = blind == 1 ? 0.0 : 1.0 / (LEAST + STRICTNESS * STRICTNESS * unlikeness(pixel, last));
  vec4 firstMean = vec4(0.0);
  vec4 secondMean = vec4(0.0);
  float firstWeight = 0.0;
  float secondWeight = 0.0;
  for (int y = -REACH; y <= REACH; y++)
    for (int x = -REACH; x <= REACH; x++) {
      ivec2 at = clamp(pixel + apart * ivec2(x, y), ivec2(0), last);
      vec4 a = firstAt(at);
      vec4 b = secondAt(at);
      float byFirst = exp(-squaredLength(squeezed(a) - first) * sharpness);
      float bySecond = exp(-squaredLength(squeezed(b) - second) * sharpness);
      firstMean += bySecond * a;
      firstWeight += bySecond;
      secondMean += byFirst * b;
      secondWeight += byFirst;
    }
  return Halves(firstMean / firstWeight, secondMean / secondWeight);
}
