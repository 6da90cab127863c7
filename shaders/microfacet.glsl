// A rough boundary between two clear media, as a random walk on a Smith microsurface with GGX slopes: no light is lost
// whatever the roughness (Heitz, Hanika, d'Eon, Dachsbacher, ACM Trans. Graph. 35(4), 2016; heights uniform in -1 .. 1).
// Local frame: z along the outward normal of the facet. Twin: src/core/optics/microfacet.ts, where the formulas are told.

#include "random.glsl"
#include "fresnel.glsl"

const int MOST_SCATTERINGS = 64;
const float TOP = 1.0;
// Directions this close to level or upright take the limit of the height formula.
const float LEVEL = 1e-4;
const float UPRIGHT = 0.9999;
// Stands for "never meets the surface again".
const float AWAY = 1e30;

// Which side of the microsurface a ray is on after it crossed, and where it goes.
struct Crossing {
  vec3 d;
  bool outside;
};

// Smith's Lambda for GGX, signed: -1 - Lambda below the horizon. Written without the difference of two nearly equal numbers.
float smithLambda(float cosTheta, float alpha) {
  float c = clamp(cosTheta, -1.0, 1.0);
  if (c > UPRIGHT) return 0.0;
  if (c < -UPRIGHT) return -1.0;
  float x = alpha * alpha * (1.0 - c * c) / (c * c);
  float lambda = 0.5 * x / (1.0 + sqrt(1.0 + x));
  return c > 0.0 ? lambda : -1.0 - lambda;
}

// A visible normal seen from `w`, any side of the horizon (Heitz, JCGT 7(4), 2018).
vec3 sampleVisibleNormal(vec3 w, float alpha, float u1, float u2) {
  vec3 v = normalize(vec3(alpha * w.xy, w.z));
  float level = dot(v.xy, v.xy);
  vec3 a = level > 0.0 ? vec3(-v.y, v.x, 0.0) * inversesqrt(level) : vec3(1.0, 0.0, 0.0);
  vec3 b = cross(v, a);
  float r = sqrt(u1);
  float phi = 6.283185307179586 * u2;
  float t1 = r * cos(phi);
  float s = 0.5 * (1.0 + v.z);
  float t2 = (1.0 - s) * sqrt(max(0.0, 1.0 - t1 * t1)) + s * r * sin(phi);
  float t3 = sqrt(max(0.0, 1.0 - t1 * t1 - t2 * t2));
  vec3 h = t1 * a + t2 * b + t3 * v;
  return normalize(vec3(alpha * h.xy, max(1e-7, h.z)));
}

float shareBelow(float h) {
  return clamp(0.5 * (h + 1.0), 0.0, 1.0);
}

float heightAt(float share) {
  return 2.0 * share - 1.0;
}

// Height at which a ray with `cosTheta` to the normal that starts at height h next meets the surface, or AWAY.
float nextHeight(float cosTheta, float h, float alpha, float u) {
  if (cosTheta > UPRIGHT) return AWAY;
  if (cosTheta < -UPRIGHT) return heightAt(u * shareBelow(h));
  if (abs(cosTheta) < LEVEL) return h;
  float lambda = smithLambda(cosTheta, alpha);
  float below = shareBelow(h);
  float away = cosTheta <= 0.0 ? 0.0 : pow(max(below, 1e-20), lambda);
  if (u > 1.0 - away) return AWAY;
  return heightAt(min(1.0, below / max(pow(1.0 - u, 1.0 / lambda), 1e-20)));
}

// Sends one ray across the rough boundary; its weight stays 1. `eta` = index outside / index inside.
Crossing walkMicrosurface(vec3 d, bool outside, float alpha, float eta, inout uint random) {
  // Below the surface everything is mirrored: heights and directions change sign.
  float side = outside ? 1.0 : -1.0;
  vec3 w = d;
  float h = TOP;
  for (int scattering = 0; scattering < MOST_SCATTERINGS; scattering++) {
    h = nextHeight(side * w.z, h, alpha, nextRandom(random));
    if (h == AWAY) return Crossing(w, side > 0.0);
    vec3 v = -side * w;
    float u1 = nextRandom(random);
    vec3 m = sampleVisibleNormal(v, alpha, u1, nextRandom(random));
    float cosI = dot(v, m);
    float etaHere = side > 0.0 ? eta : 1.0 / eta;
    // Mirror, or cross: on the other side the same height counts from the other end.
    if (nextRandom(random) < fresnel(cosI, etaHere)) {
      w = side * (2.0 * cosI * m - v);
    } else {
      float k = etaHere * cosI - cosRefracted(cosI, etaHere);
      w = side * (k * m - etaHere * v);
      side = -side;
      h = -h;
    }
  }
  return Crossing(vec3(w.xy, side * max(LEVEL, abs(w.z))), side > 0.0);
}
